// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A newer version of the page: offered and never forced, put off, taken, damaged on its way, and with several tabs open.
// Never is there a page with parts of two versions.
import { message, messageSays, nameField, nameOf, press, wentWell } from './desk_parts.mjs';
import { devices, equal, holds } from './harness.mjs';
import { askForNewer, cacheName, hasCaches, Host, isKept, isOffered, isWhole, reload, version } from './host.mjs';

const kOffer = /A newer version of this page is ready\./;
const kPatience = 15000;  // [ms] on a busy machine
const kPause = 300;  // [ms] kCalm in web/keeping.js
const kHour = 60 * 60 * 1000;

/** A device that has version 1 and has it open from there. */
async function opened(t, name, device = devices.desktop) {
  const host = new Host(t, name);
  const first = host.put(1);
  await host.start();
  const page = await t.open('page', device, { view: 'job', worker: true, at: host.address });
  await isKept(page);
  await reload(t, page);
  return { host, page, first };
}

const anotherTab = (t, host, page, more = {}) =>
  t.open('page', devices.desktop, { view: 'job', worker: true, at: host.address, inside: page.context(), ...more });

async function becomes(t, page, n) {
  await page.waitForFunction((made) => window.made === made && window.__tinwright.ready, n,
    { timeout: kPatience });
  await t.settled(page);
  await isWhole(page, n);
}

async function laterAndNow(t) {
  const { host, page, first } = await opened(t, 'now');
  const second = host.put(2);
  await t.check('versions of different files have different names', () => holds(first !== second, first));
  await t.check('a newer version is offered on a visit, and read out', async () => {
    await reload(t, page);
    await isOffered(page);
    await page.getByRole('log', { name: 'Changes' }).filter({ hasText: kOffer }).waitFor();
    await t.shoot(page, 'newer-desktop');
    await isWhole(page, 1);
  });
  await t.check('on a phone the offer leaves most of the page to be seen', async () => {
    const { viewport } = devices.phone, { viewport: before } = devices.desktop;
    await page.setViewportSize(viewport);
    await t.settled(page);
    await t.shoot(page, 'newer-phone');
    const { height } = await message(page).boundingBox();
    for (const name of ['Load it now', 'Later']) {
      await page.getByRole('button', { name, exact: true }).click({ trial: true });  // nothing lies over it
    }
    await page.setViewportSize(before);
    await t.settled(page);
    holds(height < viewport.height / 4, `${height} of ${viewport.height}`);
  });
  await t.check('put off, the old one stays as a whole, also after the page is loaded again', async () => {
    await press(page, 'Later');
    equal(await message(page).isVisible(), false);
    await isWhole(page, 1);
    await reload(t, page);
    await isWhole(page, 1);
    equal(await version(page), first);
    host.stop();
    await reload(t, page);
    await isWhole(page, 1);
    await host.start();
    await reload(t, page);
  });
  await t.check('the offer outlives other messages', async () => {
    await isOffered(page);
    await press(page, 'Share by link');
    await messageSays(page, /copied|passed on/);
    await press(page, 'Close');
    await isOffered(page);
  });
  await t.check('taken, everything is of the newer one, and what was typed a moment before is still there', async () => {
    await nameField(page).fill('Pie across versions');
    await press(page, 'Load it now');
    await becomes(t, page, 2);
    equal(await version(page), second);
    equal(await nameOf(t, page), 'Pie across versions');
    equal(await message(page).isVisible(), false);
  });
  await t.check('nothing is left of the old one', () => hasCaches(page, cacheName(host.address, second)));
  await t.check('the newer one works without its host', async () => {
    host.stop();
    await reload(t, page);
    await isWhole(page, 2);
    equal(await nameOf(t, page), 'Pie across versions');
  });
  await wentWell(t, page, 'a newer version');
}

async function damaged(t) {
  const { host, page, first } = await opened(t, 'damaged');
  let n = 1;  // each try is a version of its own, for one that is put right meanwhile may well be taken
  const stays = async () => {
    equal(await askForNewer(page), 'redundant');
    await hasCaches(page, cacheName(host.address, first));
    await reload(t, page);
    await isWhole(page, 1);
    equal(await message(page).isVisible(), false);
  };
  for (const [what, name, change] of [
    ['cut short', 'app.wasm', (bytes) => bytes.subarray(0, bytes.length - 1)],
    ['with one letter changed', 'page.css', (bytes) => Buffer.from(bytes.toString().replace(`--made:${n}`, '--made:0'))],
    ['of the version before', 'licences.txt', (bytes) => Buffer.from(bytes.toString().replace(`made ${n}`, 'made 1'))],
    ['empty', 'bridge.js', () => Buffer.alloc(0)]]) {
    await t.check(`a newer version with a file ${what} is not taken, and the old one goes on`, async () => {
      host.put(n += 1);
      host.change(name, change);
      await stays();
    });
  }
  await t.check('a line that breaks in the middle of a newer version leaves the old one', async () => {
    host.put(n += 1);
    host.breaksAt = 'app.wasm';
    await stays();
    host.breaksAt = '';
  });
  await t.check('a newer version that lost a file leaves the old one', async () => {
    host.put(n += 1);
    host.lose('page.css');
    await stays();
  });
  await t.check('a worker that cannot be read leaves the old one', async () => {
    host.put(n += 1);
    host.change('sw.js', (bytes) => bytes.subarray(0, 500));
    equal(await askForNewer(page).catch(() => 'refused'), 'refused');
    await reload(t, page);
    await isWhole(page, 1);
  });
  await t.check('after that the old one still comes without its host', async () => {
    host.stop();
    await reload(t, page);
    await isWhole(page, 1);
    await host.start();
  });
  await t.check('once it is whole the newer version is offered and taken', async () => {
    const second = host.put(n += 1);
    await reload(t, page);
    await isOffered(page);
    await press(page, 'Load it now');
    await becomes(t, page, n);
    await hasCaches(page, cacheName(host.address, second));
  });
  host.stop();
  await page.context().close();
}

async function firstInstall(t) {
  const host = new Host(t, 'first');
  const first = host.put(1);
  await host.start();
  const page = await t.open('page', devices.desktop, { view: '', worker: true, at: host.address, before: (fresh) =>
    // The page itself gets the file; the line breaks when the worker fetches it.
    fresh.addInitScript(() => { window.requestIdleCallback = (call) => { window.startsOffline = call; }; }) });
  await t.check('a first install that breaks off leaves a page that works, and none that promises', async () => {
    host.breaksAt = 'app.wasm';
    host.asked = [];
    await page.evaluate(() => window.startsOffline());
    for (const end = Date.now() + kPatience; !host.asked.some((path) => path.endsWith('app.wasm')) && Date.now() < end;) {
      await page.waitForTimeout(50);
    }
    holds(host.asked.some((path) => path.endsWith('app.wasm')), 'it was not asked for');
    await page.waitForFunction(async () => !(await navigator.serviceWorker.getRegistration()), null,
      { polling: 100, timeout: kPatience });
    equal(await message(page).isVisible(), false);
    await hasCaches(page);
  });
  await t.check('the next visit installs it', async () => {
    host.breaksAt = '';
    await reload(t, page);
    await page.evaluate(() => window.startsOffline());
    await isKept(page);
    await hasCaches(page, cacheName(host.address, first));
  });
  await t.check('a page from before any worker is offered the newer version too, an hour later, and takes it', async () => {
    host.put(2);
    const checks = () => host.asked.filter((path) => path.endsWith('sw.js')).length;
    const before = checks();
    const seenAgain = () => page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
    await seenAgain();
    await page.waitForTimeout(200);
    equal(checks(), before);
    await page.evaluate((hour) => {
      const now = Date.now;
      Date.now = () => now() + hour + 1000;
    }, kHour);
    await seenAgain();
    await isOffered(page);
    equal(checks(), before + 1);
    await seenAgain();
    await page.waitForTimeout(200);
    equal(checks(), before + 1);
    await press(page, 'Load it now');
    await becomes(t, page, 2);
  });
  host.stop();
  await page.context().close();
}

async function tabs(t) {
  const { host, page, first } = await opened(t, 'tabs');
  // It is in no hurry to keep what is typed: only the newer version makes it.
  const other = await anotherTab(t, host, page, { before: (fresh) => fresh.addInitScript((pause) => {
    const set = window.setTimeout;
    window.setTimeout = (call, wait, ...rest) => set(call, wait === pause ? 60000 : wait, ...rest);
  }, kPause) });
  await t.check('a tab that cannot keep its work holds the newer version back, and the other one says so', async () => {
    await other.evaluate(() => {
      window.itsPut = IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = function () { this.transaction.abort(); };
    });
    await nameField(other).fill('Not to be lost');
    host.put(2);
    equal(await askForNewer(page), 'installed');
    await isOffered(page);
    await press(page, 'Load it now');
    await messageSays(page, /newer version was not loaded.*Save the job as a file/);
    for (const tab of [page, other]) await isWhole(tab, 1);
    equal([await nameOf(t, other), await version(page)], ['Not to be lost', first]);
  });
  await t.check('with both able to, both change over, and what was typed in the other one is kept', async () => {
    await other.evaluate(() => { IDBObjectStore.prototype.put = window.itsPut; });
    await reload(t, page);
    await isOffered(page);
    await nameField(other).fill('Typed next door');
    await t.settled(other);
    await press(page, 'Load it now');
    for (const tab of [page, other]) {
      await becomes(t, tab, 2);
      equal(await nameOf(t, tab), 'Typed next door');
    }
  });
  await t.check('each tab loads anew once', async () => {
    await page.waitForTimeout(500);
    for (const tab of [page, other]) {
      equal(await tab.evaluate(() => performance.getEntriesByType('navigation').length), 1);
      await isWhole(tab, 2);
    }
  });
  await t.check('an offer put off is taken at the next visit, when no tab uses the old one', async () => {
    const third = host.put(3);
    equal(await askForNewer(page), 'installed');
    for (const tab of [page, other]) {
      await isOffered(tab);
      await press(tab, 'Later');
    }
    await other.close();
    await page.goto('about:blank');
    await page.waitForTimeout(500);
    await page.goto(host.address);
    await becomes(t, page, 3);
    await hasCaches(page, cacheName(host.address, third));
  });
  await t.check('a tab that was loading while the versions changed does not stay with parts of both', async () => {
    // What the page came with is told to be another version than that of its worker.
    await page.goto('about:blank');
    await page.addInitScript(() => {
      if (sessionStorage.getItem('told')) return;
      sessionStorage.setItem('told', 'yes');
      window.addEventListener('DOMContentLoaded', () => { document.documentElement.dataset.version = 'another'; });
    });
    await page.goto(host.address);
    await page.waitForFunction(() => performance.getEntriesByType('navigation')[0].type === 'reload', null,
      { timeout: kPatience });
    await becomes(t, page, 3);
  });
  equal(page.wrongs, []);
  host.stop();
  await page.context().close();
}

export async function run(t) {
  await laterAndNow(t);
  await damaged(t);
  await firstInstall(t);
  await tabs(t);
}
