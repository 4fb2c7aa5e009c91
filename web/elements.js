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

/** Says a sentence at the foot of the page, until it is closed or the next one comes. It is read out too. */
export function tell(sentence) {
  const box = document.getElementById('message');
  const close = () => { box.hidden = true; };
  box.replaceChildren(make('p', {}, sentence), make('button', { type: 'button', click: close }, 'Close'));
  box.hidden = false;
  say(sentence);
}

export function untell() {
  document.getElementById('message').hidden = true;
}
