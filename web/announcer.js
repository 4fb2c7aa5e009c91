// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Reads changed results out to a screen reader, but only once the cook has paused: a result that follows every keystroke
// would otherwise talk without end.

const kPause = 900;  // [ms] after the last change
const waiting = new Map();
let timer = 0;
let started = false;

/** Reads a sentence out in its turn. */
export function say(sentence) {
  waiting.set('', sentence);
  clearTimeout(timer);
  timer = setTimeout(speak, kPause);
}

/** Notes that a live node changed. What is there when the page opens is not news. */
export function announce(node, first) {
  if (first && !started) return;
  waiting.set(node.id, node.role === 'answer' ? `${node.label}: ${node.value}` : `${node.value}${node.label}`);
  clearTimeout(timer);
  timer = setTimeout(speak, kPause);
}

/** From now on, new nodes are news too. */
export function startAnnouncing() {
  started = true;
}

function speak() {
  document.getElementById('announcer').textContent = [...waiting.values()].join('. ');
  waiting.clear();
}
