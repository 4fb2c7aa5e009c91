// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A host of its own for the checks of the service worker: versions of the shipped page, told apart in five of their files,
// put into a subfolder, taken off the network and back again at the same address, and damaged.
import { appendFileSync, cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { startServer } from '../../web/serve.mjs';
import { stamp } from '../../web/stamp.mjs';
import { message } from './desk_parts.mjs';
import { equal, holds } from './harness.mjs';

export class Host {
  asked = [];     // every path asked for
  breaksAt = '';  // the file in the middle of which the line breaks

  constructor(t, name, at = 'some/deep/folder/') {
    this.shipped = join(t.build, 'page');
    this.root = join(t.build, 'offline', name);
    rmSync(this.root, { recursive: true, force: true });
    this.move(at);
    mkdirSync(this.folder, { recursive: true });
  }

  /** What is put and damaged from now on is in another folder. */
  move(at) {
    this.at = at;
    this.folder = join(this.root, at);
  }

  get address() {
    return this.origin + this.at;
  }

  /** Puts version n of the page where the last one was. */
  put(n) {
    rmSync(this.folder, { recursive: true, force: true });
    cpSync(this.shipped, this.folder, { recursive: true });
    this.change('index.html', (html) => html.toString().replace(/<title>.*<\/title>/, `<title>Version ${n}</title>`));
    appendFileSync(join(this.folder, 'bridge.js'), `;window.made=${n};`);
    appendFileSync(join(this.folder, 'page.css'), `:root{--made:${n}}`);
    appendFileSync(join(this.folder, 'licences.txt'), `made ${n}`);
    appendFileSync(join(this.folder, 'app.wasm'), Buffer.from([0, 6, 4, ...Buffer.from('made'), n]));  // a custom section
    return stamp(this.folder);
  }

  change(name, changed) {
    const path = join(this.folder, name);
    writeFileSync(path, changed(readFileSync(path)));
  }

  lose(name) {
    rmSync(join(this.folder, name));
  }

  async start() {
    const { server, address } = await startServer(this.root, this.port);
    this.server = server;
    this.origin = address;
    const port = server.address().port;
    if (this.port) equal(port, this.port);
    this.port = port;
    server.prependListener('request', (request, response) => {
      this.asked.push(request.url);
      if (!this.breaksAt || !request.url.endsWith(this.breaksAt)) return;
      const whole = readFileSync(join(this.folder, this.breaksAt));
      response.writeHead(200, { 'Content-Type': 'application/wasm', 'Content-Length': whole.length });
      response.write(whole.subarray(0, whole.length / 2), () => response.destroy());
    });
  }

  stop() {
    this.server.close();
    this.server.closeAllConnections();
  }
}

/** Which version each of four files is of, and what the page calls itself. */
export async function isWhole(page, n) {
  equal(await page.evaluate(async () => ({
    html: document.title,
    script: String(window.made),
    style: getComputedStyle(document.documentElement).getPropertyValue('--made'),
    text: /made (\d+)$/.exec(await (await fetch('licences.txt')).text())?.[1],
  })), { html: `Version ${n}`, script: String(n), style: String(n), text: String(n) });
}

export const version = (page) => page.evaluate(() => document.documentElement.dataset.version);

export async function reload(t, page) {
  await page.reload();
  await t.ready(page);
}

/** Until a worker stands behind the page's folder. */
export async function isKept(page) {
  await page.evaluate(() => navigator.serviceWorker.ready.then(({ active }) => active.state === 'activated' ||
    new Promise((resolve) => { active.onstatechange = () => active.state === 'activated' && resolve(true); })));
}

/** Asks for a newer version; resolves to what became of it: 'installed', 'redundant', or 'none'. */
export const askForNewer = (page) => page.evaluate(async () => {
  const registration = await navigator.serviceWorker.getRegistration();
  const outcome = (worker) => worker && new Promise((resolve) => {
    worker.onstatechange = () => worker.state !== 'installing' && resolve(worker.state);
  });
  await outcome(registration.installing);  // what the page itself asked for when it was loaded
  await registration.update();
  return await outcome(registration.installing) ?? (registration.waiting ? 'installed' : 'none');
});

const kPatience = 15000;  // [ms] for a version to come in, on a busy machine

export async function isOffered(page) {
  await message(page).filter({ hasText: /A newer version of this page is ready\./ }).waitFor({ timeout: kPatience });
}

/** The versions in the caches of this origin, by folder. */
export const caches = (page) => page.evaluate(async () => (await window.caches.keys()).sort());

export async function hasCaches(page, ...wanted) {
  let found = [];
  for (let tries = 0; tries < 60; ++tries) {
    found = await caches(page);
    if (JSON.stringify(found) === JSON.stringify([...wanted].sort())) return;
    await page.waitForTimeout(50);
  }
  holds(false, `caches ${found.join()}, wanted ${wanted.join()}`);
}

export const cacheName = (address, ofVersion) => `tinwright ${address} ${ofVersion}`;
