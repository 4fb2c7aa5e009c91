// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What the browser checks share: the browser, pages that notice every wrong, and the count. A suite is a module that
// exports `async function run(t)`; see the Tester below for what `t` offers.
import { createRequire } from 'node:module';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';

/** The devices of the screenshots and of most checks. */
export const devices = {
  phone: { viewport: { width: 390, height: 844 }, deviceScaleFactor: 3, hasTouch: true, isMobile: true },
  tablet: { viewport: { width: 820, height: 1180 }, deviceScaleFactor: 2, hasTouch: true, isMobile: true },
  desktop: { viewport: { width: 1440, height: 900 }, deviceScaleFactor: 1 },
};

const kArguments = ['--no-sandbox', '--use-angle=swiftshader', '--enable-unsafe-swiftshader',
  '--disable-background-networking', '--disable-component-update', '--disable-sync', '--no-first-run', '--disable-quic'];
const kPatience = 15000;  // [ms]
const kTallestCanvas = 8000;  // [device px]

export function launch(nodeFolder, extra = []) {
  const { chromium } = createRequire(join(nodeFolder, 'package.json'))('playwright-core');
  return chromium.launch({ executablePath: '/usr/bin/chromium', args: [...kArguments, ...extra] });
}

export class Tester {
  passed = 0;
  failed = 0;

  /** `addresses` holds the page's and the sampler's; `shots` is the folder for screenshots, `build` that of the program. */
  constructor(browser, addresses, shots, build) {
    this.browser = browser;
    this.addresses = addresses;
    this.shots = shots;
    this.build = build;
    mkdirSync(shots, { recursive: true });
  }

  /** One claim; it holds unless `body` throws or returns false. */
  async check(claim, body) {
    try {
      if (await body() === false) throw new Error('not so');
      this.passed += 1;
      console.log(`ok   ${claim}`);
    } catch (error) {
      this.failed += 1;
      console.log(`FAIL ${claim}: ${String(error.message).split('\n').slice(0, 4).join(' | ')}`);
    }
  }

  /**
   * Opens the page or the sampler on a device. The page gets `wrongs`: every console message, script error, policy
   * violation, and request that leaves the origin. `before(page)` runs before it loads; `wait: false` does not wait for it.
   * The page is switched to `view`: 'pan', 'job' (what a first visit shows), or '' to leave it as it comes. `inside` is a
   * browser context to open it in, for a second visit or tab; `fragment` goes behind the address. Without `worker` there is
   * no service worker, as in a private window: what a check sees has then come from the server. `at` is another address.
   */
  async open(which, device, { before, wait = true, view = 'pan', inside, fragment = '', worker = false,
    at: address = this.addresses[which], ...context } = {}) {
    const permissions = ['clipboard-read', 'clipboard-write'];
    const opened = inside ?? await this.browser.newContext({ ...device, permissions, ...context });
    const page = await opened.newPage();
    page.setDefaultTimeout(4000);
    page.wrongs = [];
    page.on('console', (message) => {
      if (['error', 'warning'].includes(message.type())) page.wrongs.push(`console: ${message.text()}`);
    });
    page.on('pageerror', (error) => page.wrongs.push(`script: ${error.message}`));
    page.on('request', (request) => {
      const url = request.url();
      if (!url.startsWith(address) && !/^(data|blob):/.test(url)) page.wrongs.push(`left the origin: ${url}`);
    });
    if (!worker) await page.addInitScript(() => { delete Navigator.prototype.serviceWorker; });
    await page.addInitScript(() => {
      window.seen = { violations: [], animationFrames: 0 };
      document.addEventListener('securitypolicyviolation', (event) => {
        seen.violations.push(`${event.violatedDirective} ${event.blockedURI}`);
      });
      const ask = window.requestAnimationFrame;
      window.requestAnimationFrame = (call) => ask.call(window, (time) => { seen.animationFrames += 1; call(time); });
    });
    if (before) await before(page);
    await page.goto(address + fragment);
    if (wait) await this.ready(page);
    if (wait && which === 'page') await this.show(page, view);
    return page;
  }

  async show(page, view) {
    const names = { pan: 'One pan', job: 'A whole recipe' };
    if (view) await page.getByRole('radio', { name: names[view] }).check();
    await this.settled(page);
  }

  async ready(page) {
    await page.waitForFunction(() => window.__tinwright?.ready, null, { timeout: kPatience });
    await this.settled(page);
  }

  /** Waits until no frame has been drawn for a tenth of a second. */
  async settled(page) {
    await page.evaluate(() => new Promise((resolve) => {
      let last = window.__tinwright.frames, calm = 0;
      const timer = setInterval(() => {
        calm = window.__tinwright.frames === last ? calm + 1 : 0;
        last = window.__tinwright.frames;
        if (calm >= 4) { clearInterval(timer); resolve(); }
      }, 25);
    }));
  }

  /** Waits until what was put off is worked out too, and nothing is drawn any more. */
  async rested(page, patience = 30000) {
    await this.settled(page);  // what was just done has come through
    const isBusy = () => page.evaluate(() => window.__tinwright.waiting || window.__tinwright.errands.open > 0);
    for (const end = Date.now() + patience; await isBusy() && Date.now() < end;) {
      await page.waitForTimeout(20);
      await this.settled(page);
    }
    holds(!await isBusy(), 'it is never worked out');
  }

  async shoot(page, name) {
    await page.screenshot({ path: join(this.shots, `${name}.png`), timeout: kPatience });
  }

  /** The whole length of the page, in as few tall pieces as the graphics card can draw. */
  async shootWhole(page, name) {
    await this.rested(page);
    const size = page.viewportSize();
    const { height, ratio } = await page.evaluate(() => ({
      height: Math.ceil(document.getElementById('mirror').getBoundingClientRect().height), ratio: window.devicePixelRatio }));
    const piece = Math.min(Math.max(height, size.height), Math.floor(kTallestCanvas / ratio));
    await page.setViewportSize({ width: size.width, height: piece });
    for (let top = 0, part = 1; top < height; top += piece, part += 1) {
      await page.evaluate((y) => window.scrollTo(0, y), top);
      await this.settled(page);
      await this.shoot(page, part === 1 ? name : `${name}-${part}`);
    }
    await page.setViewportSize(size);
    await page.evaluate(() => window.scrollTo(0, 0));
    await this.settled(page);
  }
}

export function equal(found, wanted) {
  const [a, b] = [JSON.stringify(found), JSON.stringify(wanted)];
  if (a !== b) throw new Error(`found ${a}, wanted ${b}`);
}

export function holds(condition, otherwise) {
  if (!condition) throw new Error(otherwise);
}
