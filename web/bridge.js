// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Starts the wasm module and runs it: one frame when something happened, none while nothing does. Bytes and events only;
// what they mean is decided in C++.
import { hold, keepInPlace, letGo } from './anchor.js';
import { startAnnouncing } from './announcer.js';
import { grant, keepNow, noteChanges, startDesk } from './desk.js';
import { errandCounters, sendErrand, startErrands } from './errands.js';
import { elementInSight, fitCanvas, heightInSight, watchZoom } from './lens.js';
import { fetchFont, fetchModule, hideCover, showNoGraphics, showNotLoaded, showStopped, showTrouble } from './loading.js';
import { mirrorCounters, startMirror, syncMirror } from './mirror.js';
import { startOffline } from './offline.js';
import { startPointers } from './pointers.js';
import { startTurning } from './turning.js';

const kBodyText = 18 / 16;  // of the browser's own text size, so that a larger setting there is honoured
const kLongestStep = 0.1;   // [s]
const kWaitForGraphics = 4000;  // [ms] until a lost context is called lost
const kTextSizes = ['--text', '--small', '--big'];
const kColours = ['--page', '--ink', '--soft', '--well', '--accent'];

const root = document.documentElement;
const canvas = document.getElementById('canvas');
const layer = document.getElementById('mirror');
const night = matchMedia('(prefers-color-scheme: dark)');
const lessMotion = matchMedia('(prefers-reduced-motion: reduce)');
const finger = matchMedia('(pointer: coarse)');
const encoder = new TextEncoder(), decoder = new TextDecoder();
const status = { ready: false, frames: 0, waiting: false, mirror: mirrorCounters, errands: errandCounters, contextLost: 0,
  shownAt: 0 };
window.__tinwright = status;

let module = null;
let scale = 1;      // device px per css px, pinched or not
let ratio = 1;      // the same without pinching
const textSizes = [];  // [css px] as drawn
let asked = 0;     // the pending animation frame
let due = 0;       // frames still to draw
let lastTime = 0;
let later = 0;     // the timer of a frame the page asked for
let contentHeight = -1;
let lost = false;
let lostTimer = 0;
let hasDesk = false;  // the page keeps something

/** Asks for frames; the second one shows what the first one changed. */
function wake(frames = 1) {
  due = Math.max(due, frames);
  if (!asked && status.ready && !lost && !document.hidden) asked = requestAnimationFrame(drawFrame);
}

/** Calls C++. Should it ever fail, the page says so rather than standing still. */
function guarded(call) {
  try {
    return call();
  } catch (error) {
    status.ready = status.waiting = false;
    showStopped(error.message);
    throw error;
  }
}

/** The page may want a frame at some later time although nothing happens: what it puts off, or plays. */
function wakeAsWished() {
  clearTimeout(later);
  const seconds = module._page_frame_wish();
  status.waiting = seconds >= 0;
  if (status.waiting) later = setTimeout(wake, 1000 * seconds);
}

function drawFrame(time) {
  asked = 0;
  due -= 1;
  if ((window.devicePixelRatio || 1) !== ratio) measure();  // should a browser not have told
  const seconds = lastTime ? Math.min(Math.max((time - lastTime) / 1000, 1e-3), kLongestStep) : 1 / 60;
  lastTime = time;
  let more = drawOnce(seconds, time);
  if (followPage()) more = drawOnce(1e-3, time) || more;  // before the browser shows it where it was
  wakeAsWished();
  if (hasDesk) noteChanges();
  if (more) due = Math.max(due, 1);
  if (due > 0) wake(due);
  else lastTime = 0;
}

function drawOnce(seconds, time) {
  // A phone's keyboard leaves no room for a bar.
  const isTyping = finger.matches && document.activeElement?.matches('.edit');
  module._page_foot(isTyping ? 0 : Math.round(heightInSight() * scale));
  status.frames += 1;
  return guarded(() => module._page_frame(seconds, time / 1000)) !== 0;
}

/** Gives the page its length, and scrolls as it wishes; true when it did. */
function followPage() {
  const height = Math.ceil(module._page_height());
  if (height !== contentHeight) {
    contentHeight = height;
    layer.style.height = `${height}px`;
    due = Math.max(due, 1);  // the scroll bar may have come or gone, or the page may have become shorter
  }
  kTextSizes.forEach((name, i) => {
    const size = module._page_text_size(i);
    if (textSizes[i] !== size) layer.style.setProperty(name, `${textSizes[i] = size}px`);
  });
  const top = module._page_scroll_wish();
  if (top >= 0) window.scrollTo({ top, behavior: 'instant' });
  if (!keepInPlace() && top < 0) return false;
  onScroll();
  return true;
}

function onScroll() {
  module._page_scroll(Math.round(window.scrollY * scale));
}

/** Fits the canvas to the window, in device pixels. */
function measure(entries) {
  const fit = fitCanvas(canvas, entries?.[0]?.devicePixelContentBoxSize?.[0]);
  ({ scale, ratio } = fit);
  const text = parseFloat(getComputedStyle(root).fontSize) * kBodyText;
  module._page_resize(fit.window.width, fit.window.height, ratio, fit.zoom, text);
  module._page_part(fit.shown.x, fit.shown.y, fit.shown.width, fit.shown.height);
  onScroll();
}

function onResize(entries) {
  measure(entries);
  // Setting a canvas's size empties it, so draw before the browser shows it.
  if (status.ready && !lost) {
    due = Math.max(due, 2);
    if (asked) cancelAnimationFrame(asked);
    drawFrame(performance.now());
  }
}

/** The page was pinched larger or smaller. Rounding may move what lies above by some pixels; what is in sight stays. */
function onZoom() {
  hold(elementInSight());
  onResize();
  letGo(0);
}

function onScheme() {
  module._page_night(night.matches ? 1 : 0);
  kColours.forEach((name, i) => {
    const colour = module._page_colour(i).toString(16).padStart(6, '0');
    root.style.setProperty(name, `#${colour}`);
  });
  wake();
}

function onMotion() {
  module._page_less_motion(lessMotion.matches ? 1 : 0);
  wake();
}

function copyIn(bytes) {
  const place = module._page_alloc(bytes.length + 1);
  module.HEAPU8.set(bytes, place);
  module.HEAPU8[place + bytes.length] = 0;
  return place;
}

function post(id, kind, text) {
  const place = copyIn(encoder.encode(text));
  module._page_action(id, kind, place);
  module._page_free(place);
  wake(2);
}

/** What the desk needs of the page. Texts are bytes of UTF-8. */
const page = {
  edition: () => module._page_edition(),
  kept: () => module.HEAPU8.slice(module._page_kept(), module._page_kept() + module._page_kept_size()),
  isRefusal: () => module._page_is_refusal() !== 0,
  /** False when the text was refused; the page says why. */
  takeIn(source, text) {
    const place = copyIn(text);
    const isTaken = guarded(() => module._page_take_in(source, place, text.length)) !== 0;
    module._page_free(place);
    wake(2);
    return isTaken;
  },
};

/** Wishes come in the middle of a frame and are granted after it. */
function onWish(kind, name, type, text, size) {
  const heap = module.HEAPU8;
  const words = (place) => decoder.decode(heap.subarray(place, heap.indexOf(0, place)));
  const wish = { kind, name: words(name), type: words(type), text: heap.slice(text, text + size) };
  queueMicrotask(() => grant(wish));
}

/** Errands leave in the middle of a frame as well. Their bytes are copied, for they go to another thread. */
function onErrand(bytes, size, replaces) {
  const copy = module.HEAPU8.slice(bytes, bytes + size);
  queueMicrotask(() => sendErrand(copy, replaces !== 0));
}

const errandListener = {
  outcome(bytes) {
    const place = copyIn(bytes);
    guarded(() => module._page_outcome(place, bytes.length));
    module._page_free(place);
    wake(2);
  },
  progress(done) {
    module._page_progress(done);
    wake();
  },
  failed() {
    module._page_errands_failed();
    wake(2);
  },
};

function watchGraphics() {
  canvas.addEventListener('webglcontextlost', (event) => {
    event.preventDefault();  // otherwise it never comes back
    lost = true;
    status.contextLost += 1;
    lostTimer = setTimeout(() => showTrouble('The device took the drawing away',
      'This happens when a phone or a graphics driver runs short. What you entered is gone only if you load the page ' +
      'again; closing other pages and coming back here may bring it back by itself.'), kWaitForGraphics);
  });
  canvas.addEventListener('webglcontextrestored', () => {
    clearTimeout(lostTimer);
    lost = false;
    hideCover();
    module._page_restore();
    wake(2);
  });
}

/** Moving the window to another screen changes the ratio but not the size, so no resize event tells of it. */
function watchRatio() {
  matchMedia(`(resolution: ${window.devicePixelRatio}dppx)`).addEventListener('change', () => {
    onResize();
    watchRatio();
  }, { once: true });
}

function watch() {
  new ResizeObserver(() => onResize()).observe(canvas);
  try {
    new ResizeObserver(onResize).observe(canvas, { box: 'device-pixel-content-box' });
  } catch {
    // This browser does not tell exact sizes; the product is close enough.
  }
  window.addEventListener('resize', () => onResize());
  watchRatio();
  night.addEventListener('change', onScheme);
  lessMotion.addEventListener('change', onMotion);
  watchZoom(onZoom);
  document.addEventListener('scroll', () => {
    onScroll();
    wake();
  }, { passive: true });
  document.addEventListener('visibilitychange', () => wake(2));
  startPointers(root, (x, y, down) => {
    module._page_pointer(x * scale, y * scale, down ? 1 : 0);
    wake();
  });
  startMirror(post);
  startTurning(root, post);
  watchGraphics();
}

async function start(fonts) {
  fonts.forEach((font, which) => {
    const place = copyIn(font);
    module._page_font(which, place, font.length);
    module._page_free(place);
  });
  if (!module._page_start()) return showNoGraphics();
  hasDesk = module._page_edition() >= 0;
  if (hasDesk) {
    startErrands(errandListener);
    await startDesk(page);
  }
  measure();
  onScheme();
  onMotion();
  watch();
  status.ready = true;
  due = 2;
  drawFrame(performance.now());
  status.shownAt = performance.now();  // [ms] after the visit began
  startAnnouncing();
  hideCover();
  // Once nothing more urgent is to be done; what it fetches must not hold up the first answer.
  (window.requestIdleCallback ?? setTimeout)(() => startOffline(hasDesk ? keepNow : () => true));
}

// A script that does not arrive raises an error on its element, which only a listener in the capturing phase hears.
window.addEventListener('error', (event) => {
  if (event.target instanceof HTMLScriptElement) showNotLoaded(event.target.getAttribute('src'));
}, true);

const fontsFetched = Promise.all(['regular.otf', 'strong.otf', 'signs.ttf'].map(fetchFont));
const moduleFetched = fetchModule();
// Both are awaited below; this only keeps an early failure from being reported as unhandled.
fontsFetched.catch(() => {});
moduleFetched.catch(() => {});

window.Module = {
  instantiateWasm(imports, done) {
    moduleFetched.then((bytes) => WebAssembly.instantiate(bytes, imports))
      .then(({ instance }) => done(instance), (error) => fail(document.body.dataset.wasm, error));
    return {};
  },
  onMirror: (nodes, count, strings) => syncMirror(module.HEAPU8, nodes, count, strings),
  onWish,
  onErrand,
  onRuntimeInitialized() {
    // main() runs after this returns; the page is set once the fonts have come, in a later turn.
    module = window.Module;
    fontsFetched.then(start).catch((error) => fail('fonts', error));
  },
  onAbort: showStopped,
};

function fail(what, error) {
  console.warn(`${what}: ${error.message}`);
  showNotLoaded(what);
}
