// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The sampler under a finger: taps act once, drags scroll and act on nothing.
import { devices, equal, holds } from './harness.mjs';

export async function run(t) {
  const page = await t.open('sampler', devices.phone);
  const session = await page.context().newCDPSession(page);
  const result = async () => {
    await t.settled(page);
    return page.getByRole('status', { name: 'Result' }).textContent();
  };
  const scrolled = () => page.evaluate(() => window.scrollY);
  const drag = async (x, y, distance) => {
    const touch = (type, points) => session.send('Input.dispatchTouchEvent', { type, touchPoints: points });
    await touch('touchStart', [{ x, y }]);
    for (let i = 1; i <= 10; ++i) {
      await touch('touchMove', [{ x, y: y + distance * i / 10 }]);
      await page.waitForTimeout(16);
    }
    await touch('touchEnd', []);
    await page.waitForTimeout(900);
    await t.settled(page);
  };
  const middle = async (locator) => {
    await locator.scrollIntoViewIfNeeded();
    await t.settled(page);
    const box = await locator.boundingBox();
    return [box.x + box.width / 2, box.y + box.height / 2];
  };
  const press = page.getByRole('button', { name: 'Press the dough' });

  await t.check('a tap presses once', async () => {
    await press.tap();
    holds((await result()).includes('pressed 1'), await result());
  });
  await t.check('a tap ticks once', async () => {
    await page.getByRole('checkbox', { name: 'Line it with dough' }).tap();
    holds((await result()).includes('bare'), await result());
  });
  await t.check('a tap on a field puts the cursor into the real input', async () => {
    await page.getByLabel('Diameter').tap();
    equal(await page.evaluate(() => document.activeElement.dataset.key), 'diameter');
    await t.shoot(page, 'phone-typing');
  });
  await t.check('the keyboard\'s done key puts it away', async () => {
    await page.keyboard.press('Enter');
    equal(await page.evaluate(() => document.activeElement === document.body), true);
  });
  await t.check('a tap on a list focuses the device\'s own', async () => {
    await page.getByLabel('Unit').tap();
    equal(await page.evaluate(() => document.activeElement.tagName), 'SELECT');
    await page.keyboard.press('Escape');
    await page.evaluate(() => document.activeElement.blur());
  });
  await t.check('a drag that starts on a button scrolls and presses nothing', async () => {
    const [x, y] = await middle(press);
    const before = await scrolled(), was = await result();
    await drag(x, y, -200);
    holds(await scrolled() > before + 100, `${before} to ${await scrolled()}`);
    equal(await result(), was);
  });
  await t.check('a drag that starts on a field scrolls and does not open it', async () => {
    await page.evaluate(() => { window.scrollTo(0, 0); });
    const [x, y] = await middle(page.getByLabel('Name of the pan'));
    await drag(x, y, -150);
    holds(await scrolled() > 80, String(await scrolled()));
    equal(await page.evaluate(() => document.activeElement === document.body), true);
  });
  await t.check('after the scroll, the drawing and the elements agree and nothing moves', async () => {
    const before = await page.evaluate(() => window.__tinwright.frames);
    await page.waitForTimeout(1000);
    equal(await page.evaluate(() => window.__tinwright.frames), before);
    await t.shoot(page, 'phone-scrolled');
  });
  await t.check('no button looks hovered after a tap', async () => {
    const calm = await page.screenshot();
    await page.touchscreen.tap(5, 400);
    await t.settled(page);
    holds(calm.equals(await page.screenshot()), 'another picture');
  });
  await t.check('nothing went wrong meanwhile', () => equal(page.wrongs, []));
}
