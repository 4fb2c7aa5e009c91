// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Grips on drawings: how far a finger or the mouse has moved since it came down on one, and the keys. What that means for the
// size they stand on is decided in C++. While one is moved, whatever grows or shrinks above it must not carry it away.
import { hold, letGo } from './anchor.js';
import { kDrag, kEdit, kFocus, kPress } from './mirror.js';

const kStill = 4;     // [css px] a finger that only taps may stray
const kTenths = 10;   // drags are told in tenths of a css px
const kAPage = 10;    // steps of the Page keys
const kAfter = 300;   // [ms] in which the answers to the last movement come

let drag = null;      // {grip, id, x, y, moved}
function stepFor(key, value, first, last) {
  switch (key) {
    case 'ArrowUp': case 'ArrowRight': return value + 1;
    case 'ArrowDown': case 'ArrowLeft': return value - 1;
    case 'PageUp': return value + kAPage;
    case 'PageDown': return value - kAPage;
    case 'Home': return first;
    case 'End': return last;
    default: return null;
  }
}

/** `layer` holds the elements; `send(id, kind, text)` takes what the cook did. */
export function startGrips(layer, send) {
  const gripOf = (event) => event.target.closest?.('.grip');
  const tell = (x, y) => send(drag.id, kDrag, `${Math.round(x * kTenths)} ${Math.round(y * kTenths)}`);
  const end = () => {
    drag = null;
    letGo(kAfter);
  };

  layer.addEventListener('pointerdown', (event) => {
    const grip = gripOf(event);
    if (!grip || !event.isPrimary || event.button !== 0) return;
    event.preventDefault();
    grip.focus({ preventScroll: true });
    grip.setPointerCapture(event.pointerId);
    drag = { grip, id: Number(grip.dataset.id), x: event.clientX, y: event.clientY, moved: false };
    hold(grip.closest('section'));
    send(drag.id, kPress, '');
  });
  layer.addEventListener('pointermove', (event) => {
    if (!drag || gripOf(event) !== drag.grip) return;
    const x = event.clientX - drag.x, y = event.clientY - drag.y;
    drag.moved ||= Math.hypot(x, y) > kStill;
    if (drag.moved) tell(x, y);
  });
  layer.addEventListener('pointerup', (event) => { if (drag && gripOf(event) === drag.grip) end(); });
  // The finger scrolls or pinches after all: that was not meant.
  layer.addEventListener('pointercancel', (event) => {
    if (!drag || gripOf(event) !== drag.grip) return;
    tell(0, 0);
    end();
  });
  // The element's own dragging goes by its width, which means nothing here.
  layer.addEventListener('mousedown', (event) => { if (gripOf(event)) event.preventDefault(); });
  layer.addEventListener('input', (event) => { if (drag && gripOf(event)) event.stopImmediatePropagation(); });

  layer.addEventListener('keydown', (event) => {
    const grip = gripOf(event);
    if (!grip || event.altKey || event.ctrlKey || event.metaKey) return;
    const first = Number(grip.min), last = Number(grip.max);
    const step = stepFor(event.key, Number(grip.value), first, last);
    if (step === null) return;
    event.preventDefault();
    hold(grip.closest('section'));
    grip.value = String(Math.min(Math.max(step, first), last));
    send(Number(grip.dataset.id), kFocus, 'visible');  // also where the mouse brought the keyboard to it
    send(Number(grip.dataset.id), kEdit, grip.value);
    letGo(kAfter);
  });
}
