// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The mirror's elements: for each node that the wasm module recorded, a real element over the canvas, kept in the module's
// order. Roles, flags and the layout of a node are those of app/view/mirror.h.
import { announce } from './announcer.js';
import { buildElement, fillAnswer, fillChoice, fillSlider, fillTable } from './contents.js';
import { startGrips } from './grips.js';

export const kPress = 1, kEdit = 2, kFocus = 3, kBlur = 4, kDrag = 5;
const kWordsInNode = 17, kHash = 16;
const kMostSpent = 40;
const kDisabled = 1, kChecked = 2, kInvalid = 4, kDecimal = 8, kLive = 16, kStrong = 32, kUpright = 64, kAtFoot = 128,
  kTurns = 256;
const kRoles = ['region', 'heading', 'text', 'note', 'label', 'button', 'field', 'choice', 'toggle', 'radiogroup', 'radio',
  'answer', 'table', 'picture', 'slider', 'progress', 'grip'];
const kClear = 16;  // [css px] between the bar at the foot and what is scrolled to

const decoder = new TextDecoder();
const layer = () => document.getElementById('mirror');
const entries = new Map();
let lastWords = new Uint32Array();
const counters = { duplicates: 0, syncs: 0, nodes: 0, spent: [] };  // [ms] by the last changes
let send = () => {};

export const mirrorCounters = counters;

/** Starts listening; `post(id, kind, text)` takes what the cook did. */
export function startMirror(post) {
  send = post;
  const root = layer();
  const entryOf = (event) => entries.get(Number(event.target.dataset?.id));
  startGrips(root, post);  // first, for it keeps some events to itself
  root.addEventListener('click', (event) => {
    const button = event.target.closest?.('button[data-id]');
    if (button) send(Number(button.dataset.id), kPress, '');
  });
  root.addEventListener('input', (event) => {
    const entry = entryOf(event);
    if (['field', 'slider', 'grip'].includes(entry?.role)) send(entry.id, kEdit, event.target.value);
  });
  root.addEventListener('change', (event) => {
    const entry = entryOf(event);
    if (entry?.role === 'choice') send(entry.id, kEdit, event.target.value);
    if (entry?.role === 'toggle' || entry?.role === 'radio') send(entry.id, kPress, '');
  });
  root.addEventListener('focusin', (event) => {
    const entry = entryOf(event);
    if (entry) send(entry.id, kFocus, event.target.matches(':focus-visible') ? 'visible' : '');
  });
  root.addEventListener('focusout', (event) => {
    const entry = entryOf(event);
    if (entry) send(entry.id, kBlur, '');
  });
  // A finger that comes down on a slider moves it at once; when it then scrolls instead, that was not meant.
  let touched = null;
  root.addEventListener('pointerdown', (event) => {
    touched = entryOf(event)?.role === 'slider' ? { element: event.target, value: event.target.value } : null;
  });
  root.addEventListener('pointercancel', () => {
    if (touched && touched.element.value !== touched.value) {
      touched.element.value = touched.value;
      send(Number(touched.element.dataset.id), kEdit, touched.value);
    }
    touched = null;
  });
  root.addEventListener('compositionstart', (event) => { event.target.dataset.composing = '1'; });
  root.addEventListener('compositionend', (event) => { delete event.target.dataset.composing; });
  root.addEventListener('keydown', (event) => {
    // The "done" key of a phone's keyboard puts it away.
    if (event.key === 'Enter' && event.target.matches('.edit') && matchMedia('(pointer: coarse)').matches) {
      event.target.blur();
    }
  });
}

/** A view of the nodes as they lie in memory. */
function viewOf(heap, address, count, strings) {
  const words = new Uint32Array(heap.buffer, address, count * kWordsInNode);
  const floats = new Float32Array(heap.buffer, address, count * kWordsInNode);
  const text = (place) => {
    if (place === 0) return '';
    const start = strings + place;
    return decoder.decode(heap.subarray(start, heap.indexOf(0, start)));
  };
  const node = (i) => ({
    id: words[i], parent: words[i + 1], role: kRoles[words[i + 2]], flags: words[i + 3],
    x: floats[i + 4], y: floats[i + 5], width: floats[i + 6], height: floats[i + 7], textSize: floats[i + 8],
    level: words[i + 9], key: text(words[i + 10]), label: text(words[i + 11]), value: text(words[i + 12]),
    extra: text(words[i + 13]), help: words[i + 14], problem: words[i + 15],
  });
  return { words, node };
}

/** Whether the same elements stand there in the same order as the last time. */
function isSameOrder(words) {
  if (words.length !== lastWords.length) return false;
  for (let i = 0; i < words.length; i += kWordsInNode) {
    if (words[i] !== lastWords[i] || words[i + 1] !== lastWords[i + 1] || words[i + 2] !== lastWords[i + 2] ||
      words[i + 9] !== lastWords[i + 9]) return false;
  }
  return true;
}

/** Most of the time a few nodes have changed and nothing else: only their words are read. */
function refresh(view) {
  const { words } = view;
  const moved = new Set();
  const differs = (i, from, to) => {
    for (let k = from; k < to; k += 1) if (words[i + k] !== lastWords[i + k]) return true;
    return false;
  };
  for (let i = 0; i < words.length; i += kWordsInNode) {
    if (differs(i, 4, 6)) moved.add(words[i]);
    const isChanged = words[i + kHash] !== lastWords[i + kHash] || differs(i, 4, 9) || moved.has(words[i + 1]);
    if (!isChanged) continue;
    const entry = entries.get(words[i]);
    entry.node = view.node(i);
    update(entry, entries.get(words[i + 1])?.node);
  }
}

/** Makes, moves and takes away elements. */
function rebuild(view) {
  const present = new Map();
  for (let i = 0; i < view.words.length; i += kWordsInNode) {
    const node = view.node(i);
    if (present.has(node.id)) {
      counters.duplicates += 1;
      console.error(`two controls have the key "${node.key}"`);
    }
    present.set(node.id, node);
  }
  // What is gone goes first: then new elements come before old ones without moving them, and the focus stays.
  for (const [id, entry] of entries) {
    const node = present.get(id);
    if (node && node.role === entry.role && node.parent === entry.parent && node.level === entry.level) continue;
    entry.element.remove();
    entries.delete(id);
  }
  const last = new Map();
  for (const node of present.values()) {
    let entry = entries.get(node.id);
    if (!entry) {
      const element = buildElement(node);
      element.id = `n${node.id}`;
      element.dataset.id = node.id;
      element.dataset.key = node.key;
      entry = { id: node.id, role: node.role, parent: node.parent, level: node.level, element, shown: {} };
      entries.set(node.id, entry);
    }
    const parent = entries.get(node.parent)?.element ?? layer();
    const before = last.has(parent) ? last.get(parent).nextSibling : parent.firstChild;
    if (before !== entry.element) parent.insertBefore(entry.element, before);
    last.set(parent, entry.element);
    entry.node = node;
    update(entry, present.get(node.parent));
  }
}

/** Brings the elements in line with the nodes. */
export function syncMirror(heap, address, count, strings) {
  const start = performance.now();
  const view = viewOf(heap, address, count, strings);
  if (isSameOrder(view.words)) refresh(view);
  else rebuild(view);
  lastWords = view.words.slice();
  for (const entry of entries.values()) settle(entry);
  counters.syncs += 1;
  counters.nodes = count;
  counters.spent.push(performance.now() - start);
  if (counters.spent.length > kMostSpent) counters.spent.shift();
}

function update(entry, parent) {
  const { element, shown, node } = entry;
  const differs = (name, value) => {
    if (shown[name] === value) return false;
    shown[name] = value;
    return true;
  };
  const x = node.x - (parent?.x ?? 0), y = node.y - (parent?.y ?? 0);
  const isBar = (node.flags & kAtFoot) !== 0 && !parent;
  if (differs('place', `${x} ${y} ${node.width} ${node.height} ${node.textSize} ${isBar}`)) {
    // The bar hangs from the foot of the window, and what is scrolled to must not end up under it.
    element.style.transform = `translate(${x}px, ${isBar ? y + node.height : y}px)`;
    element.classList.toggle('foot', isBar);
    if (isBar) document.documentElement.style.scrollPaddingBottom = `${node.height + kClear}px`;
    element.style.width = `${node.width}px`;
    element.style.height = `${node.height}px`;
    if (node.textSize > 0) element.style.fontSize = `${node.textSize}em`;
  }
  if (differs('flags', node.flags)) {
    element.classList.toggle('strong', (node.flags & kStrong) !== 0);
    element.classList.toggle('turns', (node.flags & kTurns) !== 0);
    if ('disabled' in element) element.disabled = (node.flags & kDisabled) !== 0;
    if (node.role === 'radiogroup') element.setAttribute('aria-disabled', String((node.flags & kDisabled) !== 0));
    if (node.role === 'grip') setOrRemove(element, 'aria-orientation', node.flags & kUpright ? 'vertical' : '');
    if (node.role === 'field') element.inputMode = node.flags & kDecimal ? 'decimal' : 'text';
  }
  const links = [node.problem, node.help].filter(Boolean).map((id) => `n${id}`).join(' ');
  if (node.role !== 'label' && differs('links', links)) {
    setOrRemove(element, 'aria-describedby', links);
    setOrRemove(element, 'aria-invalid', node.flags & kInvalid ? 'true' : '');
  }
  const words = `${node.label}\n${node.value}\n${node.extra}`;
  const first = shown.words === undefined;
  const changed = differs('words', words);
  if (changed) fill(element, node);
  if (changed && node.flags & kLive) announce(node, first);
}

function setOrRemove(element, name, value) {
  if (value) element.setAttribute(name, value);
  else element.removeAttribute(name);
}

function fill(element, node) {
  switch (node.role) {
    case 'heading': case 'text': case 'button': element.textContent = node.label; break;
    case 'label': element.textContent = node.label; element.htmlFor = `n${node.help}`; break;
    case 'note': {
      const kind = document.createElement('span');
      kind.className = 'unseen';
      kind.textContent = node.value;
      element.replaceChildren(kind, node.label);
      break;
    }
    case 'field': element.placeholder = node.extra; break;
    case 'choice': fillChoice(element, node); break;
    case 'answer': element.setAttribute('aria-label', node.label); fillAnswer(element, node); break;
    case 'table': fillTable(element, node); break;
    case 'slider': case 'grip': fillSlider(element, node); break;
    case 'progress':
      element.setAttribute('aria-label', node.label);
      element.setAttribute('aria-valuenow', node.value);
      break;
    default: element.setAttribute('aria-label', node.label);
  }
}

/** An element the cook has changed shows again what the application holds. While words are being composed, hands off. */
function settle({ role, element, node }) {
  if (role === 'toggle' || role === 'radio') {
    const checked = (node.flags & kChecked) !== 0;
    if (element.checked !== checked) element.checked = checked;
  } else if (role === 'field' || role === 'choice' || role === 'slider' || role === 'grip') {
    if (element.value !== node.value && !element.dataset.composing) element.value = node.value;
  }
}
