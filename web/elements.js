// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Small builders for what the page shows outside its canvas: elements, dialogs, and the message at its foot.
import { say } from './announcer.js';

/** An element with attributes and children; an attribute that is a function listens instead. */
export function make(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === 'function') element.addEventListener(name, value);
    else element.setAttribute(name, value);
  }
  element.append(...children);
  return element;
}

/**
 * Asks in a dialog. `content` stands under the title; `answers` are [value, label] pairs, the last one the plainest.
 * Resolves to the value of the button pressed; to '' when the dialog was left by Esc. `opened(close)` may close it.
 */
export function ask(title, content, answers, opened = () => {}) {
  return new Promise((resolve) => {
    const buttons = answers.map(([value, label], i) => make('button', {
      type: 'button', class: i === 0 ? 'primary' : '', click: () => dialog.close(value) }, label));
    const dialog = make('dialog', { 'aria-labelledby': 'dialog-title' }, make('h2', { id: 'dialog-title' }, title),
      ...content, make('div', { class: 'answers' }, ...buttons));
    // The canvas under it is not pointed at.
    for (const kind of ['pointermove', 'pointerdown', 'pointerup']) {
      dialog.addEventListener(kind, (event) => event.stopPropagation());
    }
    dialog.addEventListener('close', () => {
      dialog.remove();
      resolve(dialog.returnValue);
    });
    document.body.append(dialog);
    dialog.showModal();
    opened((value) => dialog.close(value), buttons);
  });
}

let isPassing = false;  // a message that is closed by itself or by hand
let standing = null;  // what stands at the foot while nothing else is told

function show(sentence, answers) {
  const box = document.getElementById('message');
  box.replaceChildren(make('p', {}, sentence),
    ...answers.map(([label, click]) => make('button', { type: 'button', click }, label)));
  box.hidden = false;
}

/** Says a sentence at the foot of the page, until it is closed or the next one comes. It is read out too. */
export function tell(sentence) {
  isPassing = true;
  show(sentence, [['Close', untell]]);
  say(sentence);
}

/** The same for what is good to know: it takes no other message's place, and gives way to every other. */
export function mention(sentence) {
  if (document.getElementById('message').hidden) show(sentence, [['Close', untell]]);
  say(sentence);
}

/** Offers something at the foot, [label, call] each, until one is taken. Passing messages stand before it meanwhile. */
export function offer(sentence, answers) {
  const taken = (call) => () => {
    standing = null;
    untell();
    call();
  };
  standing = [sentence, answers.map(([label, call]) => [label, taken(call)])];
  if (!isPassing) show(...standing);
  say(sentence);
}

export function untell() {
  if (standing && isPassing) show(...standing);
  if (!standing) document.getElementById('message').hidden = true;
  isPassing = false;
}
