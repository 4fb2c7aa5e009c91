// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The service worker: keeps one whole version of the page on the device and answers from it alone. A version comes in as a
// whole or not at all, waits until the cook says so or no tab uses the one before, and then takes its place as a whole.
// stamp.mjs writes a line before this: kVersion, and kFiles, a Map from each file's name to its hash. offline.js is the
// page's side of it.

const kScope = self.registration.scope;    // the address of the page's folder
const kCaches = `tinwright ${kScope} `;    // an origin may hold several copies of the page; addresses have no spaces
const kCache = kCaches + kVersion;
const kPatience = 3000;  // [ms] for a tab to answer; one that says nothing sleeps, and has kept its work before

/** The file of ours that is asked for; undefined for all that is not ours. */
function nameOf(url, isNavigation) {
  const { origin, pathname, search } = new URL(url);
  const path = origin + pathname;
  if (!path.startsWith(kScope) || (search && !isNavigation)) return undefined;
  const name = path.slice(kScope.length) || 'index.html';
  return kFiles.has(name) ? name : undefined;
}

/** A file from the host, which has to be the very one of this version. Headers that tell of its way here are left out. */
async function fetchFile([name, integrity]) {
  const url = kScope + name;
  const from = (cache) => fetch(url, { cache, integrity, mode: 'same-origin' });
  const response = await from('no-cache').catch(() => from('reload'));  // some cache on the way may have held an old one
  if (!response.ok) throw new Error(`${name}: status ${response.status}`);
  const headers = new Headers(response.headers);
  for (const header of ['Content-Encoding', 'Content-Length', 'Vary']) headers.delete(header);
  return [url, new Response(await response.arrayBuffer(), { headers })];
}

/** Nothing is kept before everything has come. */
async function fill() {
  const files = await Promise.all([...kFiles].map(fetchFile));
  const cache = await caches.open(kCache);
  try {
    await Promise.all(files.map(([url, response]) => cache.put(url, response)));
  } catch (error) {
    await caches.delete(kCache);
    throw error;
  }
}

async function forgetOthers() {
  const others = (await caches.keys()).filter((name) => name.startsWith(kCaches) && name !== kCache);
  await Promise.all(others.map((name) => caches.delete(name)));
}

async function answer(event, name) {
  const kept = await caches.match(kScope + name, { cacheName: kCache });
  if (kept) return kept;
  // A browser that clears a cache clears all of it. The host answers then, as if there were no worker; meanwhile what was
  // cleared is fetched again, if the host still has it.
  if (event.request.mode === 'navigate') event.waitUntil(fill().catch(() => {}));
  return fetch(event.request);
}

/** What every open tab of this page answers; undefined for one that says nothing. */
async function askTabs(question) {
  const windows = await self.clients.matchAll({ includeUncontrolled: true, type: 'window' });
  const tabs = windows.filter(({ url }) => nameOf(url, true) === 'index.html');
  return Promise.all(tabs.map((tab) => new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => resolve(data);
    setTimeout(resolve, kPatience);
    tab.postMessage(question, [port2]);
  })));
}

// What a page may ask, with a port for the answer.
const requests = {
  version: async (port) => port.postMessage(kVersion),
  /** Answers for tabs that were there before it, too, unless one of them is of another version. */
  async claim(port) {
    const isAlike = (await askTabs('version')).every((version) => version === undefined || version === kVersion);
    if (isAlike) await self.clients.claim();
    port.postMessage(isAlike);
  },
  /** Takes the place of the version before once every tab has kept its work. */
  async 'take over'(port) {
    const isKept = (await askTabs('keep')).every((isSafe) => isSafe !== false);
    port.postMessage(isKept);
    if (isKept) await self.skipWaiting();
  },
};

self.addEventListener('install', (event) => event.waitUntil(fill()));
self.addEventListener('activate', (event) => event.waitUntil(forgetOthers()));
self.addEventListener('fetch', (event) => {
  const { method, mode, url } = event.request;
  const name = method === 'GET' ? nameOf(url, mode === 'navigate') : undefined;
  if (name) event.respondWith(answer(event, name));
});
self.addEventListener('message', (event) => event.waitUntil(requests[event.data](event.ports[0])));
