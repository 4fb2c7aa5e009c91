// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Slow lines, missing files, no WebGL 2, no JavaScript, and graphics that go away: each ends in words that help.
import { devices, equal, holds } from './harness.mjs';

const kSlow = 120 * 1024;  // [bytes/s]

async function tellsTrouble(t, claim, wanted, before) {
  await t.check(claim, async () => {
    const page = await t.open('page', devices.phone, { before, wait: false });
    const alert = page.getByRole('alert');
    await alert.waitFor();
    const text = await alert.textContent();
    holds(wanted.test(text), text);
    holds(await page.getByRole('button', { name: 'Load again' }).isVisible(), 'no button');
    await t.shoot(page, `trouble-${claim.replace(/\W+/g, '-')}`);
    await page.context().close();
  });
}

export async function run(t) {
  await tellsTrouble(t, 'no WebGL 2 is told, with what to do', /WebGL 2.*hardware acceleration/, (page) =>
    page.addInitScript(() => {
      const get = HTMLCanvasElement.prototype.getContext;
      HTMLCanvasElement.prototype.getContext = function (kind, ...rest) {
        return kind === 'webgl2' ? null : get.call(this, kind, ...rest);
      };
    }));
  for (const file of ['app.wasm', 'app.js', 'strong.otf']) {
    await tellsTrouble(t, `a missing ${file} is told`, /could not be fetched.*load the page again/, (page) =>
      page.route(`**/${file}`, (route) => route.fulfill({ status: 404, body: '' })));
  }
  await tellsTrouble(t, 'a line that breaks is told', /could not be fetched/, (page) =>
    page.route('**/app.wasm', (route) => route.abort()));

  await t.check('without JavaScript the page says so', async () => {
    const page = await t.open('page', devices.phone, { javaScriptEnabled: false, wait: false });
    holds(await page.locator('noscript p').isVisible(), 'not told');
    await page.context().close();
  });

  await t.check('loading shows how much has come', async () => {
    const page = await t.open('page', devices.phone, { wait: false, before: async (fresh) => {
      const session = await fresh.context().newCDPSession(fresh);
      await session.send('Network.enable');
      await session.send('Network.emulateNetworkConditions', { offline: false, latency: 5, downloadThroughput: kSlow,
        uploadThroughput: kSlow });
    } });
    const seen = new Set();
    for (let i = 0; i < 100 && !(await page.evaluate(() => window.__tinwright?.ready)); ++i) {
      seen.add(await page.evaluate(() => document.getElementById('bar').position));
      if (seen.size === 4) await t.shoot(page, 'loading');
      await page.waitForTimeout(60);
    }
    const steps = [...seen].filter((value) => value >= 0);
    holds(steps.length >= 4 && steps.every((value, i) => i === 0 || value > steps[i - 1]), JSON.stringify(steps));
    await t.ready(page);
    equal(await page.locator('#cover').isVisible(), false);
    await page.context().close();
  });

  await t.check('a failure inside the page is told', async () => {
    const page = await t.open('page', devices.desktop);
    await page.evaluate(() => { window.Module._page_frame = () => { throw new Error('made up'); }; });
    await page.mouse.move(200, 200);
    holds(/made up/.test(await page.getByRole('alert').textContent({ timeout: 3000 })), 'not told');
    await page.context().close();
  });

  const page = await t.open('page', devices.desktop);
  await t.check('graphics that are lost and come back show the same page', async () => {
    const before = await page.screenshot();
    await page.evaluate(() => {
      window.lose = document.getElementById('canvas').getContext('webgl2').getExtension('WEBGL_lose_context');
      window.lose.loseContext();
    });
    await page.waitForFunction(() => window.__tinwright.contextLost === 1);
    await page.evaluate(() => window.lose.restoreContext());
    await page.waitForTimeout(300);
    await t.settled(page);
    holds(before.equals(await page.screenshot()), 'another picture');
  });
  await t.check('graphics that stay away are told', async () => {
    await page.evaluate(() => window.lose.loseContext());
    await page.getByRole('alert').waitFor({ timeout: 6000 });
  });
  await page.context().close();
}
