// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The page on a device: without a network after one visit, in any folder, beside copies of itself, on the home screen.
import { mkdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { message, messageSays, press, wentWell } from './desk_parts.mjs';
import { devices, equal, holds } from './harness.mjs';
import { cacheName, caches, hasCaches, Host, isKept, isOffered, isWhole, reload, version } from './host.mjs';

const kPatience = 15000;  // [ms] on a busy machine
const kSaid = 'works without a network on this device';

/** Until it says something else; frames come late on a busy machine. */
async function changes(page, answer, before) {
  for (let tries = 0; tries < 100 && await answer.textContent() === before; ++tries) await page.waitForTimeout(50);
}

/** Half of 430 g at ¼ in and 1.2 g/ml is a slab of 215 / 1.2 / 0.635 = 282 cm². */
async function answers(t, page) {
  await t.show(page, 'pan');
  await page.getByRole('button', { name: 'Cookie dough on a tray' }).click();
  await t.rested(page);
  const dough = page.getByRole('region', { name: 'Dough', exact: true });
  const reaches = dough.getByRole('status', { name: 'Reaches', exact: true });
  const before = await reaches.textContent();
  await dough.getByLabel('Dough there is').fill('215 g');
  await changes(page, reaches, before);
  const said = (await reaches.textContent()).replace(/\s+/g, ' ');
  const [, length, width] = /rectangle of ([\d.]+) cm.* by ([\d.]+) cm/.exec(said) ?? [];
  holds(Math.abs(length * width - 215 / 1.2 / 0.635) < 3, said);
}

/** The oven is worked out in a worker, with a module of its own. */
async function bakes(t, page) {
  await t.rested(page);
  const answer = page.getByRole('region', { name: 'In the oven', exact: true }).getByRole('status').first();
  const before = await answer.textContent();
  await page.getByLabel('Air temperature').first().fill('225 C');
  await changes(page, answer, before);
  await t.rested(page);
  const after = await answer.textContent();
  holds(/min/.test(after) && after !== before, after);
}

async function oneVisit(t) {
  const host = new Host(t, 'visit');
  host.put(1);
  await host.start();
  const page = await t.open('page', devices.phone, { view: '', worker: true, at: host.address });
  await t.check('a first visit says, once, that the page works without a network', async () => {
    await messageSays(page, new RegExp(kSaid));
    await page.getByRole('log', { name: 'Changes' }).filter({ hasText: kSaid }).waitFor();
    await t.shoot(page, 'offline-phone');
    await press(page, 'Close');
    equal(await message(page).isVisible(), false);
  });
  await t.check('then that holds at once, for parts that are fetched later too', async () => {
    host.stop();
    const sizes = await page.evaluate(() => Promise.all(['worker.js', 'worker.wasm'].map(async (name) =>
      (await (await fetch(name)).arrayBuffer()).byteLength)));
    equal(sizes, ['worker.js', 'worker.wasm'].map((name) => statSync(join(host.folder, name)).size));
    await host.start();
    await reload(t, page);
    await page.waitForTimeout(400);
    equal(await message(page).isVisible(), false);
  });
  await t.check('nothing was asked for from outside the folder', () =>
    equal(host.asked.filter((path) => !path.startsWith('/some/deep/folder/')), []));
  await t.check('after one visit the page comes and answers without its host', async () => {
    host.stop();
    await reload(t, page);
    await isWhole(page, 1);
    await answers(t, page);
    await page.getByRole('button', { name: 'A shell filled to three quarters' }).click();
    await bakes(t, page);
  });
  await t.check('it comes by its folder, by its file, and with what others hang on to an address', async () => {
    for (const path of ['', 'index.html', '?from=mail', 'index.html?a=b', '#job=']) {
      await page.goto('about:blank');
      await page.goto(host.address + path);
      await t.ready(page);
      await isWhole(page, 1);
    }
  });
  await t.check('what comes from the device has the headers that the host sent', async () => {
    const headers = await page.evaluate(async () => Object.fromEntries((await fetch('./index.html')).headers));
    for (const [name, part] of [['content-type', 'text/html'], ['content-security-policy', "frame-ancestors 'none'"],
      ['x-content-type-options', 'nosniff'], ['referrer-policy', 'no-referrer']]) {
      holds(headers[name]?.includes(part), `${name}: ${headers[name]}`);
    }
  });
  await t.check('nothing went wrong without its host', async () => {
    equal(page.wrongs, []);
    equal(await page.evaluate(() => window.seen.violations), []);
  });
  await t.check('the licences come too', async () => {
    const response = await page.goto(`${host.address}licences.txt`);
    equal([response.fromServiceWorker(), response.status()], [true, 200]);
    holds((await response.text()).includes('MIT License'), 'no licences');
    await page.goto(host.address);
    await t.ready(page);
  });
  await t.check('no other address is answered', async () => {
    for (const path of ['../', '../other.txt', 'nothing.txt', 'app.js?x=1', 'sub/app.js', '/']) {
      equal(await page.evaluate((url) => fetch(url).then(() => 'answered', () => 'not'), path), 'not');
    }
    await page.context().close();
  });
}

async function neighbours(t) {
  const host = new Host(t, 'neighbours', 'outer/');
  const outerVersion = host.put(1);
  host.move('outer/inner/');
  const innerVersion = host.put(2);
  mkdirSync(join(host.root, 'other'), { recursive: true });
  writeFileSync(join(host.root, 'other/note.txt'), 'one');
  await host.start();
  const inner = host.address, outer = inner.replace('inner/', '');
  const page = await t.open('page', devices.desktop, { view: '', worker: true, at: outer });
  await t.check('a copy in a folder inside a copy keeps its own version', async () => {
    await isKept(page);
    await page.goto(inner);
    await t.ready(page);
    await isWhole(page, 2);
    await isKept(page);
    await hasCaches(page, cacheName(outer, outerVersion), cacheName(inner, innerVersion));
  });
  await t.check('a newer version of one leaves the other alone', async () => {
    const newer = host.put(3);
    await reload(t, page);
    await isOffered(page);
    await press(page, 'Load it now');
    await page.waitForFunction(() => window.made === 3);
    await t.ready(page);
    await hasCaches(page, cacheName(outer, outerVersion), cacheName(inner, newer));
  });
  await t.check('both come without their host', async () => {
    host.stop();
    for (const [address, n] of [[outer, 1], [inner, 3]]) {
      await page.goto(address);
      await t.ready(page);
      await isWhole(page, n);
    }
  });
  await t.check('nothing went wrong with copies beside each other', () => equal(page.wrongs, []));
  await t.check('other addresses of the origin are left alone', async () => {
    await host.start();
    const note = () => page.evaluate(async () => (await fetch('/other/note.txt')).text());
    equal(await note(), 'one');
    writeFileSync(join(host.root, 'other/note.txt'), 'two');
    equal(await note(), 'two');
    host.stop();
    await page.context().close();
  });
}

async function lossAndRefusal(t) {
  const host = new Host(t, 'loss');
  const first = host.put(1);
  await host.start();
  const page = await t.open('page', devices.desktop, { view: '', worker: true, at: host.address });
  await t.check('a cache that the browser cleared is filled again', async () => {
    await isKept(page);
    await page.evaluate((name) => window.caches.delete(name), cacheName(host.address, first));
    await reload(t, page);
    await isWhole(page, 1);
    await hasCaches(page, cacheName(host.address, first));
    host.stop();
    await page.waitForTimeout(300);
    await reload(t, page);
    await isWhole(page, 1);
    await host.start();
  });
  await wentWell(t, page, 'a cleared cache');

  for (const [what, how] of [
    ['refuses service workers', () => {
      ServiceWorkerContainer.prototype.register = () => Promise.reject(new DOMException('no', 'SecurityError'));
    }],
    ['has none', () => { delete Navigator.prototype.serviceWorker; }]]) {
    await t.check(`a browser that ${what} shows the page and says nothing of it`, async () => {
      const plain = await t.open('page', devices.desktop, { view: '', worker: true, at: host.address,
        before: (fresh) => fresh.addInitScript(how) });
      await answers(t, plain);
      await plain.waitForTimeout(500);
      equal(await message(plain).isVisible(), false);
      equal(plain.wrongs, []);
      await plain.context().close();
    });
  }
  await t.check('a device without room for it shows the page all the same, and promises nothing', async () => {
    const plain = await t.open('page', devices.desktop, { view: '', worker: true, at: host.address, before: async (fresh) => {
      const session = await fresh.context().newCDPSession(fresh);
      await session.send('Storage.overrideQuotaForOrigin', { origin: new URL(host.address).origin, quotaSize: 200000 });
    } });
    await answers(t, plain);
    await plain.waitForFunction(async () => !(await navigator.serviceWorker.getRegistration()), null,
      { polling: 100, timeout: kPatience });
    equal(await caches(plain), []);
    // With so little room the page may well say that it cannot keep the job.
    holds(!/without a network/.test(await plain.locator('#message').textContent()), 'a promise');
    await plain.context().close();
  });
  host.stop();
}

async function homeScreen(t) {
  const host = new Host(t, 'home');
  host.put(1);
  await host.start();
  const page = await t.open('page', devices.phone, { view: '', worker: true, at: host.address });
  const session = await page.context().newCDPSession(page);
  await t.check('the browser finds nothing wrong with putting it on the home screen', async () => {
    await isKept(page);
    const { errors, url } = await session.send('Page.getAppManifest');
    equal([errors, url], [[], `${host.address}manifest.webmanifest`]);
    // A window without a trace cannot install; nothing else may be missing.
    const { installabilityErrors } = await session.send('Page.getInstallabilityErrors');
    equal(installabilityErrors.map(({ errorId }) => errorId).filter((id) => id !== 'in-incognito'), []);
  });
  await t.check('each folder is an app of its own', async () =>
    equal((await session.send('Page.getAppId')).appId, host.address));
  await t.check('the icons are as large as the manifest says', async () => {
    const wrong = await page.evaluate(async () => {
      const link = document.querySelector('link[rel=manifest]').href;
      const { icons } = await (await fetch(link)).json();
      const sizes = await Promise.all(icons.map(async ({ src, sizes: said }) => {
        const image = new Image();
        image.src = new URL(src, link);
        await image.decode();
        return said === 'any' || said === `${image.naturalWidth}x${image.naturalHeight}` ? '' : src;
      }));
      return sizes.filter(Boolean);
    });
    equal(wrong, []);
  });
  await t.check('the colours round the page are those of its style sheet, by day and by night', async () => {
    for (const colorScheme of ['light', 'dark']) {
      await page.emulateMedia({ colorScheme });
      await t.settled(page);
      const [said, shown] = await page.evaluate(() => {
        const wanted = [...document.querySelectorAll('meta[name=theme-color]')].find(({ media }) => matchMedia(media).matches);
        document.documentElement.removeAttribute('style');
        return [wanted.content, getComputedStyle(document.documentElement).getPropertyValue('--page').trim()];
      });
      equal(said, shown);
    }
  });
  await t.check('the page says which version it is', async () => holds(/^[0-9a-f]{12}$/.test(await version(page)), 'no'));
  await wentWell(t, page, 'the home screen');
  host.stop();
}

export async function run(t) {
  await oneVisit(t);
  await neighbours(t);
  await lossAndRefusal(t);
  await homeScreen(t);
}
