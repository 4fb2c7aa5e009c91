// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The page's side of its service worker (sw.js): registers it, says when the page works without a network, and offers a
// newer version, which never comes without the cook's word while the page is open. Where there is no service worker (an
// old browser, a private window, plain http) nothing of this happens and nothing is said.
import { mention, offer, tell } from './elements.js';
import { trustedScript } from './trusted.js';

const kBetweenChecks = 60 * 60 * 1000;  // [ms]

const workers = navigator.serviceWorker;
let keepWork = null;    // resolves to whether the page's work is safe
let registration = null;
let lastCheck = 0;
let isLoading = false;

const ownVersion = () => document.documentElement.dataset.version;

/** The worker that answers for this page, if it is ours and not that of a folder above. */
function ownController() {
  const { controller } = workers;
  return controller?.scriptURL === new URL('sw.js', document.baseURI).href ? controller : null;
}

function askWorker(worker, question) {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => resolve(data);
    worker.postMessage(question, [port2]);
  });
}

async function loadAnew() {
  if (isLoading) return;
  isLoading = true;
  await keepWork();
  location.reload();
}

function tellNotKept() {
  tell('The newer version was not loaded, because this device cannot keep what you entered. Save the job as a file and ' +
    'close the page; the newer version comes when you open it again.');
}

/** With the cook's word. The worker sees to it that every tab keeps its work first. */
async function loadNewer() {
  const { waiting } = registration;
  if (!waiting) {  // no tab needed the old one any more, so it is in place already
    if (await keepWork()) await loadAnew();
    else tellNotKept();
    return;
  }
  // A page that came before there was any worker is not told that its worker changed.
  waiting.addEventListener('statechange', () => { if (waiting.state === 'activated') loadAnew(); });
  if (!await askWorker(waiting, 'take over')) tellNotKept();
}

function offerNewer() {
  offer('A newer version of this page is ready. Your work is kept; other tabs with this page load anew too.',
    [['Load it now', loadNewer], ['Later', () => {}]]);
}

/** A page that was there before its worker is answered by it from now on, for some of its parts are fetched later. */
async function joinWorker(worker) {
  return await askWorker(worker, 'version') === ownVersion() && askWorker(worker, 'claim');
}

/** Follows a worker that is coming in. */
function follow(worker) {
  if (!worker) return;
  const isFirst = !registration.active;
  worker.addEventListener('statechange', async () => {
    if (!isFirst && worker.state === 'installed') offerNewer();
    if (!isFirst || worker.state !== 'activated') return;
    if (await joinWorker(worker)) mention('From now on this page works without a network on this device.');
    else if (await askWorker(worker, 'version') !== ownVersion()) offerNewer();  // the host changed it a moment ago
  });
}

function check() {
  lastCheck = Date.now();
  registration.update().catch(() => {});  // no network: at another time then
}

/** Another tab may bring the newer version in, even while this page is loading; it must not go on with parts of both. */
async function loadAnewIfMixed() {
  const controller = ownController();
  if (controller && await askWorker(controller, 'version') !== ownVersion()) await loadAnew();
}

// What a worker may ask.
const answers = { keep: () => keepWork(), version: ownVersion };

function listen() {
  workers.addEventListener('message', async ({ data, ports: [port] }) => port.postMessage(await answers[data]()));
  workers.addEventListener('controllerchange', loadAnewIfMixed);
  document.addEventListener('visibilitychange', () => {
    if (!document.hidden && Date.now() - lastCheck > kBetweenChecks) check();
  });
}

export async function startOffline(itsKeepWork) {
  if (!workers) return;
  keepWork = itsKeepWork;
  try {
    registration = await workers.register(trustedScript('sw.js'), { updateViaCache: 'none' });
  } catch {
    return;
  }
  listen();
  follow(registration.installing);
  registration.addEventListener('updatefound', () => follow(registration.installing));
  if (registration.waiting) offerNewer();
  const { active } = registration;
  lastCheck = Date.now();
  if (!active) return;
  const [{ type } = {}] = performance.getEntriesByType('navigation');
  if (type !== 'reload') await loadAnewIfMixed();  // once; it may have a reason to stay so
  if (!ownController()) await joinWorker(active);
  check();
}
