// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Mirror elements that hold more than one line of text. The separators are those of app/view/mirror.h.

const kBetweenCells = '\x1f', kBetweenRows = '\x1e', kGroupMark = '\x1d';

function child(parent, tag, text, className = '') {
  const element = document.createElement(tag);
  if (text !== undefined) element.textContent = text;
  if (className) element.className = className;
  parent.append(element);
  return element;
}

/** Options numbered from 0; an option marked as a title opens a group. */
export function fillChoice(select, node) {
  select.replaceChildren();
  let into = select;
  let number = 0;
  for (const text of node.extra.split(kBetweenRows)) {
    if (text.startsWith(kGroupMark)) {
      into = child(select, 'optgroup');
      into.label = text.slice(1);
    } else {
      child(into, 'option', text).value = String(number);
      number += 1;
    }
  }
}

export function fillAnswer(output, node) {
  output.replaceChildren();
  child(output, 'span', node.label, 'aside');
  child(output, 'span', node.value, 'value');
  if (node.extra) child(output, 'span', node.extra, 'aside');
}

/** `extra` holds the last step's number, where it stands in words, and the first step where that is not 0. */
export function fillSlider(input, node) {
  const [last, words, first = '0'] = node.extra.split(kBetweenCells);
  input.min = first;
  input.max = last;
  input.setAttribute('aria-label', node.label);
  input.setAttribute('aria-valuetext', words);
}

/** `extra` holds each column's width and side ("<" or ">"), then the heights of the caption and of each row, in css px. */
export function fillTable(table, node) {
  const [captionText, titles, ...rows] = node.value.split(kBetweenRows);
  const [widths, heights] = node.extra.split(kBetweenRows).map((list) => list.split(kBetweenCells));
  const sides = widths.map((width) => (width.endsWith('>') ? 'right' : ''));
  const size = (element, side, text) => { element.style[side] = `${parseFloat(text)}px`; };
  table.replaceChildren();
  const caption = child(table, 'caption', captionText);
  size(caption, 'height', heights[0]);
  const columns = child(table, 'colgroup');
  for (const width of widths) size(child(columns, 'col'), 'width', width);
  const head = child(child(table, 'thead'), 'tr');
  size(head, 'height', heights[1]);
  titles.split(kBetweenCells).forEach((title, i) => { child(head, 'th', title, sides[i]).scope = 'col'; });
  const body = child(table, 'tbody');
  rows.forEach((row, r) => {
    const line = child(body, 'tr');
    size(line, 'height', heights[r + 2]);
    row.split(kBetweenCells).forEach((text, i) => {
      const cell = child(line, i === 0 ? 'th' : 'td', text, sides[i]);
      if (i === 0) cell.scope = 'row';
    });
  });
}

const builders = {
  region: () => build('section', 'group'),
  heading: (node) => build(`h${Math.min(Math.max(node.level, 1), 6)}`, 'words'),
  text: () => build('p', 'words'),
  note: () => build('p', 'words', { role: 'note' }),
  label: () => build('label', ''),
  button: () => build('button', 'press', { type: 'button' }),
  field: () => build('input', 'edit', { type: 'text', autocomplete: 'off', autocapitalize: 'off', spellcheck: 'false',
    enterkeyhint: 'done' }),
  choice: () => build('select', 'press'),
  toggle: () => build('input', 'press', { type: 'checkbox' }),
  radiogroup: () => build('div', 'group', { role: 'radiogroup' }),
  radio: (node) => build('input', 'press', { type: 'radio', name: `group${node.parent}` }),
  answer: () => build('output', 'words', { 'aria-live': 'off' }),  // announcer.js reads changes out, at a calm pace
  table: () => build('table', 'words'),
  picture: () => build('div', '', { role: 'img' }),
  progress: () => build('div', '', { role: 'progressbar', 'aria-valuemin': '0', 'aria-valuemax': '100' }),
  slider: () => build('input', 'press slide', { type: 'range', min: '0', step: '1' }),
  grip: () => build('input', 'press grip', { type: 'range', step: '1' }),
};

function build(tag, classes, attributes = {}) {
  const element = document.createElement(tag);
  element.className = `n ${classes}`;
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  return element;
}

/** An empty element for a node. */
export const buildElement = (node) => builders[node.role](node);
