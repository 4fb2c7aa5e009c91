// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Tells the drawing where the pointer is, so that controls can look hovered and pressed. Pressing itself is the mirror's
// elements' business (their click and change events), so a finger that scrolls over a button never presses it.

const kAway = -1e6;

/** `point(x, y, down)` takes css px in the window. */
export function startPointers(root, point) {
  let down = false;
  const report = (event) => point(event.clientX, event.clientY, down);
  const leave = () => {
    down = false;
    point(kAway, kAway, false);
  };
  root.addEventListener('pointerdown', (event) => {
    if (!event.isPrimary || event.button !== 0) return;
    down = true;
    report(event);
  });
  root.addEventListener('pointermove', (event) => {
    if (event.pointerType === 'mouse') report(event);
  });
  root.addEventListener('pointerup', (event) => {
    if (event.pointerType !== 'mouse') return leave();
    down = false;
    report(event);
  });
  root.addEventListener('pointercancel', leave);
  root.addEventListener('pointerleave', leave);
  window.addEventListener('blur', leave);
}
