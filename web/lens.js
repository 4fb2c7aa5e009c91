// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Which part of the window the canvas shows, and with how many pixels. That is all of it, until the cook pinches the page
// larger: then the canvas shrinks to what is in sight and a margin, with as many pixels as the device has there, so that
// letters are sharp again. While fingers move, the browser stretches what is drawn already.

const kMargin = 0.25;  // of what is in sight, on each side: so far it can be moved before the edge comes into view
const kCalm = 120;     // [ms]
const kZoomed = 1.01;  // less is a slip of the fingers
const kSides = ['left', 'top', 'width', 'height'];

const view = window.visualViewport;
const zoomNow = () => (view?.scale > kZoomed ? view.scale : 1);
let zoom = 1;      // that the canvas was fitted for
let part = null;   // what it shows then [css px in the window]

const place = (canvas, sides) => kSides.forEach((side) => {
  canvas.style[side] = sides ? `${sides[side]}px` : '';
});

/** What is in sight with its margin, within `css`, the window: in whole css px, where no browser moves a box's edges. */
function partInSight(css) {
  const cut = (start, length, end) => {
    const from = Math.max(0, Math.floor(start - kMargin * length));
    return [from, Math.max(1, Math.min(Math.ceil(start + (1 + kMargin) * length), Math.ceil(end)) - from)];
  };
  const [left, width] = cut(view.offsetLeft, view.width, css.width);
  const [top, height] = cut(view.offsetTop, view.height, css.height);
  return { left, top, width, height };
}

/** Fits the canvas; `exact` is its size in device px where the browser tells it. All but the ratio in device px. */
export function fitCanvas(canvas, exact) {
  place(canvas, null);
  const ratio = window.devicePixelRatio || 1;
  zoom = zoomNow();
  const scale = ratio * zoom;
  const css = canvas.getBoundingClientRect();
  const all = { width: Math.round(css.width * scale), height: Math.round(css.height * scale) };
  let shown = { x: 0, y: 0, ...all };
  part = null;
  if (zoom > 1) {
    part = partInSight(css);
    const pixels = (length) => Math.round(length * scale);
    shown = { x: pixels(part.left), y: pixels(part.top), width: pixels(part.width), height: pixels(part.height) };
    place(canvas, part);
  } else if (exact && Math.abs(exact.inlineSize - all.width) < 2 && Math.abs(exact.blockSize - all.height) < 2) {
    // It may differ by one from the product, and then the canvas would blur.
    all.width = shown.width = exact.inlineSize;
    all.height = shown.height = exact.blockSize;
  }
  if (canvas.width !== shown.width) canvas.width = shown.width;
  if (canvas.height !== shown.height) canvas.height = shown.height;
  return { ratio, zoom, scale, window: all, shown };
}

/** How much of the window's height can be seen [css px]; a phone's bars may cover its end. */
export const heightInSight = () => (view ? view.height * view.scale : window.innerHeight);

/** An element near the middle of what is in sight. */
export function elementInSight() {
  if (!view) return null;
  for (const down of [0.5, 0.4, 0.6, 0.3, 0.7]) {
    for (const right of [0.5, 0.3, 0.7]) {
      const at = [view.offsetLeft + right * view.width, view.offsetTop + down * view.height];
      const found = document.elementFromPoint(...at)?.closest('.n:not(.foot, .foot *)');
      if (found) return found;
    }
  }
  return null;
}

function leavesPart() {
  return part && (view.offsetLeft < part.left || view.offsetTop < part.top ||
    view.offsetLeft + view.width > part.left + part.width + 1 || view.offsetTop + view.height > part.top + part.height + 1);
}

/** `refit` is called once fingers are calm, or at once when what is drawn no longer covers what is in sight. */
export function watchZoom(refit) {
  let timer = 0;
  const changed = () => {
    clearTimeout(timer);
    if (zoom === 1 && zoomNow() === 1) return;
    if (zoom === zoomNow() && leavesPart()) refit();
    else timer = setTimeout(refit, kCalm);
  };
  view?.addEventListener('resize', changed);
  view?.addEventListener('scroll', changed);
}
