// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What holds whatever the page shows: its policy, its sharpness, its rest, its colours.
import { connect } from 'node:net';
import { devices, equal, holds } from './harness.mjs';

const kIdle = 10000;  // [ms]
const kFirstAnswer = 1000, kVisits = 5;  // [ms], and how many visits the quickest is taken of, for others use the machine too

/** Asks for a path exactly as written; a browser would tidy it first. */
function askRaw(address, path) {
  const { hostname, port } = new URL(address);
  return new Promise((resolve, reject) => {
    const socket = connect(Number(port), hostname, () => {
      socket.write(`GET ${path} HTTP/1.1\r\nHost: ${hostname}\r\nConnection: close\r\n\r\n`);
    });
    let text = '';
    socket.on('data', (data) => { text += data; });
    socket.on('end', () => resolve(text));
    socket.on('error', reject);
  });
}

async function canvasMatches(page) {
  const { width, height, cssWidth, cssHeight, ratio } = await page.evaluate(() => {
    const canvas = document.getElementById('canvas'), shown = document.documentElement;
    return { width: canvas.width, height: canvas.height, cssWidth: shown.clientWidth, cssHeight: shown.clientHeight,
      ratio: window.devicePixelRatio };
  });
  holds(Math.abs(width - cssWidth * ratio) <= 1 && Math.abs(height - cssHeight * ratio) <= 1,
    `${width} × ${height} for ${cssWidth} × ${cssHeight} at ${ratio}`);
}

/** Colour of the drawn page's first pixel. */
const cornerColour = (page) => page.evaluate(() => {
  const copy = document.createElement('canvas').getContext('2d');
  copy.drawImage(document.getElementById('canvas'), 0, 0);
  return [...copy.getImageData(2, 2, 1, 1).data].slice(0, 3);
});

async function policy(t) {
  const response = await fetch(t.addresses.page);
  const header = response.headers.get('content-security-policy') ?? '';
  await t.check('the server sends a policy that allows no foreign, inline or evaluated script', () => {
    for (const part of ["default-src 'none'", "script-src 'self' 'wasm-unsafe-eval'", "frame-ancestors 'none'",
      "require-trusted-types-for 'script'"]) holds(header.includes(part), `no ${part} in ${header}`);
    holds(!/unsafe-inline|unsafe-eval'(?<!wasm-unsafe-eval')/.test(header), header);
  });
  const html = await response.text();
  await t.check('the page carries the same policy for hosts that send none', () => {
    const meta = /Content-Security-Policy" content="([^"]+)"/.exec(html)?.[1];
    equal(`${meta}; frame-ancestors 'none'`, header);
  });
  await t.check('every file comes with its own type', async () => {
    for (const [name, type] of [['', 'text/html'], ['bridge.js', 'text/javascript'], ['app.wasm', 'application/wasm'],
      ['page.css', 'text/css'], ['regular.otf', 'font/otf'], ['sw.js', 'text/javascript'], ['icon.svg', 'image/svg+xml'],
      ['icon-192.png', 'image/png'], ['manifest.webmanifest', 'application/manifest+json']]) {
      const answer = await fetch(t.addresses.page + name);
      holds(answer.ok && answer.headers.get('content-type').startsWith(type), `${name}: ${answer.status}`);
      holds(answer.headers.get('x-content-type-options') === 'nosniff', name);
    }
  });
  await t.check('the server gives nothing from outside its folder', async () => {
    for (const path of ['/../../web/serve.mjs', '/..%2f..%2fweb/serve.mjs', '/%2e%2e/%2e%2e/CMakeLists.txt', '/%00', '/%',
      '//etc/passwd', '/..\\..\\web\\serve.mjs']) {
      const answer = await askRaw(t.addresses.page, path);
      holds(/^HTTP\/1\.1 404/.test(answer), `${path}: ${answer.split('\r\n')[0]}`);
    }
  });
}

async function onEveryDevice(t, what) {
  const which = what === 'sampler' ? what : 'page';
  for (const [name, device] of Object.entries(devices)) {
    const page = await t.open(which, device, { view: what === 'job' ? 'job' : 'pan' });
    await t.check(`${what}, ${name}: the canvas has one pixel for each of the device's`, () => canvasMatches(page));
    await t.check(`${what}, ${name}: no key is used twice`, async () => {
      equal(await page.evaluate(() => window.__tinwright.mirror.duplicates), 0);
      const ids = await page.$$eval('#mirror [id]', (all) => all.map((element) => element.id));
      equal(ids.length, new Set(ids).size);
    });
    await t.check(`${what}, ${name}: no control is wider than the page`, async () => {
      const wide = await page.$$eval('#mirror .n', (all) => all.filter((element) => {
        const { left, right } = element.getBoundingClientRect();
        return left < 0 || right > document.documentElement.clientWidth + 0.5;
      }).map((element) => element.dataset.key));
      equal(wide, []);
    });
    await t.check(`${what}, ${name}: whatever is pressed is high enough for a finger`, async () => {
      const low = await page.$$eval('button.n, input.n, select.n', (all) => all.filter((element) =>
        element.getBoundingClientRect().height < 43.9).map((element) => element.dataset.key));
      equal(low, []);
    });
    await t.shootWhole(page, `${what}-${name}`);
    await t.check(`${what}, ${name}: nothing went wrong meanwhile`, async () => {
      equal(page.wrongs, []);
      equal(await page.evaluate(() => window.seen.violations), []);
    });
    await page.context().close();
  }
}

async function resting(t) {
  const page = await t.open('page', devices.desktop);
  const rests = async () => {
    const counts = () => page.evaluate(() => [window.__tinwright.frames, window.seen.animationFrames]);
    await t.settled(page);
    const before = await counts();
    await page.waitForTimeout(kIdle);
    equal(await counts(), before);
  };
  await t.check('a page at rest draws nothing', rests);
  await t.check('a page that waits for typing draws nothing', async () => {
    await page.locator('input.edit').first().click();
    await rests();
  });
  await t.check('it wakes after the rest', async () => {
    const before = await page.evaluate(() => window.__tinwright.frames);
    await page.mouse.move(300, 300);
    await page.mouse.move(340, 300);
    await t.settled(page);
    holds(await page.evaluate(() => window.__tinwright.frames) > before, 'no frame');
  });
  await t.check('the canvas follows the window', async () => {
    for (const size of [{ width: 500, height: 640 }, { width: 1200, height: 700 }]) {
      await page.setViewportSize(size);
      await t.settled(page);
      await canvasMatches(page);
    }
  });
  await t.check('the canvas follows a change of the device pixel ratio', async () => {
    const session = await page.context().newCDPSession(page);
    for (const ratio of [2, 1.25, 1]) {
      await session.send('Emulation.setDeviceMetricsOverride', { width: 900, height: 700, deviceScaleFactor: ratio,
        mobile: false });
      await page.waitForTimeout(200);
      await page.mouse.move(300 + ratio, 300);  // an emulated change sends no event of its own
      await t.settled(page);
      equal(await page.evaluate(() => window.devicePixelRatio), ratio);
      await canvasMatches(page);
    }
  });
  await t.check('nothing went wrong meanwhile', () => equal(page.wrongs, []));
  await page.context().close();
}

async function looks(t) {
  for (const colorScheme of ['light', 'dark']) {
    const page = await t.open('page', devices.desktop, { colorScheme });
    await t.check(`${colorScheme}: canvas and style sheet agree on the page's colour`, async () => {
      const css = await page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
      equal(`rgb(${(await cornerColour(page)).join(', ')})`, css);
      await page.evaluate(() => document.documentElement.removeAttribute('style'));
      equal(await page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor), css);
    });
    if (colorScheme === 'dark') await t.shootWhole(page, 'page-dark');
    await page.context().close();
  }
  const page = await t.open('page', { ...devices.phone, deviceScaleFactor: 2.625 });
  await t.check('an odd device pixel ratio is sharp too', () => canvasMatches(page));
  await t.check('it follows a switch between day and night', async () => {
    const before = await cornerColour(page);
    await page.emulateMedia({ colorScheme: 'dark' });
    await t.settled(page);
    holds(String(await cornerColour(page)) !== String(before), 'same colour');
  });
  await page.context().close();
}

async function firstAnswer(t) {
  await t.check(`the first answer is on the screen within ${kFirstAnswer} ms, nothing being there from before`, async () => {
    const took = [];
    for (let i = 0; i < kVisits; i += 1) {
      const page = await t.open('page', devices.tablet, { view: '' });
      const { shownAt, said } = await page.evaluate(() => ({ shownAt: Math.round(window.__tinwright.shownAt),
        said: document.getElementById('mirror').textContent }));
      holds(/Stop pouring/.test(said), 'no answer');
      took.push(shownAt);
      await page.context().close();
    }
    console.log(`     ${took.join(', ')} ms`);
    holds(Math.min(...took) <= kFirstAnswer, `${took.join(', ')} ms`);
  });
}

export async function run(t) {
  await policy(t);
  await firstAnswer(t);
  await onEveryDevice(t, 'page');
  await onEveryDevice(t, 'job');
  await onEveryDevice(t, 'sampler');
  await resting(t);
  await looks(t);
}
