// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Pictures that a drag turns. Each edit holds the number of the drag and how far it is from where it began, right and down
// [css px]: of edits that wait for a frame only the last counts. A finger turns sideways only, for up and down scrolls.
import { kEdit } from './mirror.js';

/** `post(id, kind, text)` takes what the cook did. */
export function startTurning(root, post) {
  let number = 0;
  let drag = null;
  const tell = (right, down) => post(drag.id, kEdit, `${drag.number} ${Math.round(right)} ${Math.round(down)}`);
  root.addEventListener('pointerdown', (event) => {
    if (!event.isPrimary || event.button !== 0 || !event.target.matches?.('.turns')) return;
    number += 1;
    drag = { number, id: Number(event.target.dataset.id), x: event.clientX, y: event.clientY };
    event.target.setPointerCapture(event.pointerId);
  });
  root.addEventListener('pointermove', (event) => {
    if (!drag || !event.isPrimary) return;
    tell(event.clientX - drag.x, event.pointerType === 'touch' ? 0 : event.clientY - drag.y);
  });
  root.addEventListener('pointerup', (event) => {
    if (event.isPrimary) drag = null;
  });
  // It scrolls instead, so turning was not meant.
  root.addEventListener('pointercancel', () => {
    if (drag) tell(0, 0);
    drag = null;
  });
}
