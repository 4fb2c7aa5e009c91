// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Keeps what the cook is looking at where it is, while what stands above it grows or shrinks.

let anchor = null;  // {element, top}
let timer = 0;

/** From now on this element stays where it is, until letGo(). */
export function hold(element) {
  clearTimeout(timer);
  anchor = element && { element, top: element.getBoundingClientRect().top };
}

/** Lets it go after `delay` [ms], in which the answers to what the cook did last may come. */
export function letGo(delay) {
  clearTimeout(timer);
  timer = setTimeout(() => { anchor = null; }, delay);
}

/** After a frame: scrolls by what came or went above it. True when it did. */
export function keepInPlace() {
  if (!anchor?.element.isConnected) return false;
  const gone = anchor.element.getBoundingClientRect().top - anchor.top;
  if (Math.abs(gone) < 1) return false;
  const before = window.scrollY;
  window.scrollBy({ top: gone, behavior: 'instant' });
  return window.scrollY !== before;
}
