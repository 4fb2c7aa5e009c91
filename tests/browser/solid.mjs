// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The pan in three dimensions: drawn, turned by slider, mouse and finger, there again after the graphics were lost, and
// told in words where it cannot be drawn.
import { devices, equal, holds } from './harness.mjs';

const kFewestColours = 40;  // of a drawing with light on it; a blank one has a single colour

const pictureOf = (page) => page.getByRole('img', { name: /in three dimensions/ });
const slider = (page, name) => page.getByRole('region', { name: 'In my pan' }).getByRole('slider', { name });

/** Waits until the picture says that it is seen so. */
const isSeen = (page, words) => page.getByRole('img', { name: words }).waitFor();

/** Brings the picture into the window and says where it is there. */
async function bring(t, page) {
  await pictureOf(page).evaluate((element) => element.scrollIntoView({ block: 'center' }));
  await t.settled(page);
  return pictureOf(page).boundingBox();
}

/** What the canvas shows at the picture: its pixels as a text, and how many colours there are. */
async function look(t, page) {
  const box = await bring(t, page);
  return page.evaluate(({ x, y, width, height }) => {
    const canvas = document.getElementById('canvas');
    const ratio = window.devicePixelRatio;
    const copy = document.createElement('canvas');
    copy.width = Math.floor(width);
    copy.height = Math.floor(height);
    const pen = copy.getContext('2d');
    pen.drawImage(canvas, x * ratio, y * ratio, width * ratio, height * ratio, 0, 0, copy.width, copy.height);
    const pixels = new Uint32Array(pen.getImageData(0, 0, copy.width, copy.height).data.buffer);
    return { pixels: pixels.join(), colours: new Set(pixels).size };
  }, box);
}

async function drawn(t, name, device, colorScheme) {
  const page = await t.open('page', device, { colorScheme });
  const what = `${name}, ${colorScheme}`;
  await t.check(`${what}: the pan stands there in three dimensions, with its words`, async () => {
    holds((await look(t, page)).colours > kFewestColours, 'blank');
    const label = await pictureOf(page).getAttribute('aria-label');
    holds(/with its dough and its filling; turned by 25°, seen from above by 30°; its front half/.test(label), label);
  });
  await t.shoot(page, `solid-${name}-${colorScheme}`);
  await t.check(`${what}: closed, from above and from the other side it looks otherwise`, async () => {
    const seen = [(await look(t, page)).pixels];
    await page.getByRole('checkbox', { name: 'Cut open' }).uncheck();
    await isSeen(page, /from above by 30°$/);
    seen.push((await look(t, page)).pixels);
    await slider(page, 'Turned by').fill('40');
    await isSeen(page, /turned by 200°/);
    seen.push((await look(t, page)).pixels);
    await slider(page, 'Seen from above by').fill('18');
    await isSeen(page, /from above by 90°/);
    seen.push((await look(t, page)).pixels);
    equal(new Set(seen).size, seen.length);
  });
  await t.shoot(page, `solid-above-${name}-${colorScheme}`);
  await t.check(`${what}: nothing went wrong`, () => equal(page.wrongs, []));
  await page.context().close();
}

async function byMouse(t) {
  const page = await t.open('page', devices.desktop);
  await t.check('arrow keys on the slider turn it', async () => {
    const before = await look(t, page);
    await slider(page, 'Turned by').focus();
    await page.keyboard.press('ArrowRight');
    await isSeen(page, /turned by 30°/);
    holds(before.pixels !== (await look(t, page)).pixels, 'the same picture');
    equal(await slider(page, 'Turned by').inputValue(), '6');
  });
  await t.check('a drag turns it as far as it went, and sets the sliders', async () => {
    const { x, y, width, height } = await bring(t, page);
    const before = await look(t, page);
    await page.mouse.move(x + width / 2, y + height / 2);
    await page.mouse.down();
    await page.mouse.move(x + width / 2 + 100, y + height / 2 + 40, { steps: 7 });
    await page.mouse.up();
    await isSeen(page, /turned by 80°, seen from above by 50°/);
    equal(await slider(page, 'Turned by').inputValue(), '16');  // 30° and half of 100
    equal(await slider(page, 'Seen from above by').inputValue(), '10');
    holds(before.pixels !== (await look(t, page)).pixels, 'the same picture');
  });
  await t.check('a mouse that only passes over it turns nothing, and nothing is drawn while nothing happens', async () => {
    const before = await look(t, page);
    const { x, y } = await bring(t, page);
    await page.mouse.move(x + 30, y + 60, { steps: 3 });
    await t.settled(page);
    const frames = await page.evaluate(() => window.__tinwright.frames);
    await page.waitForTimeout(800);
    equal(await page.evaluate(() => window.__tinwright.frames), frames);
    equal(before.pixels === (await look(t, page)).pixels, true);
  });
  await t.check('after the graphics were lost and came back it is there again', async () => {
    const before = await look(t, page);
    await page.evaluate(() => {
      window.lose = document.getElementById('canvas').getContext('webgl2').getExtension('WEBGL_lose_context');
      window.lose.loseContext();
    });
    await page.waitForFunction(() => window.__tinwright.contextLost === 1);
    await page.evaluate(() => window.lose.restoreContext());
    await page.waitForTimeout(300);
    const after = await look(t, page);
    holds(after.colours > kFewestColours, 'blank');
    holds(before.pixels === after.pixels, 'another picture');
    await slider(page, 'Turned by').fill('30');
    await isSeen(page, /turned by 150°/);
    holds((await look(t, page)).pixels !== after.pixels, 'it does not turn any more');
  });
  await t.check('a turn of the picture takes a few milliseconds', async () => {
    await bring(t, page);
    const each = await page.evaluate(() => {
      const start = performance.now();
      const control = document.querySelector('[data-key="solid/round"]');
      for (let i = 0; i < 20; ++i) {
        control.value = String(i);
        control.dispatchEvent(new Event('input', { bubbles: true }));
        window.Module._page_frame(0.016, performance.now() / 1000);
      }
      return (performance.now() - start) / 20;
    });
    console.log(`     ${each.toFixed(1)} ms for a frame that turns it (without the graphics card)`);
    holds(each < 100, `${each} ms`);
  });
  await t.check('with the mouse nothing went wrong', () => equal(page.wrongs, []));
  await page.context().close();
}

async function byFinger(t) {
  const page = await t.open('page', devices.phone);
  const session = await page.context().newCDPSession(page);
  const drag = async (right, down) => {
    const { x, y, width, height } = await bring(t, page);
    const [fromX, fromY] = [x + width / 2, y + height / 2];
    const touch = (type, touchPoints) => session.send('Input.dispatchTouchEvent', { type, touchPoints });
    await touch('touchStart', [{ x: fromX, y: fromY }]);
    for (let i = 1; i <= 10; ++i) {
      await touch('touchMove', [{ x: fromX + right * i / 10, y: fromY + down * i / 10 }]);
      await page.waitForTimeout(16);
    }
    await touch('touchEnd', []);
    await page.waitForTimeout(600);
    await t.settled(page);
  };
  const scrolled = () => page.evaluate(() => window.scrollY);
  await t.check('a finger drawn sideways turns it and scrolls nothing', async () => {
    await bring(t, page);
    const before = await scrolled();
    await drag(120, 6);
    holds(Number(await slider(page, 'Turned by').inputValue()) > 12, await slider(page, 'Turned by').inputValue());
    equal(await slider(page, 'Seen from above by').inputValue(), '6');
    equal(await scrolled(), before);
  });
  await t.check('a finger drawn upwards over it scrolls and turns nothing', async () => {
    await bring(t, page);
    const before = await scrolled(), label = await pictureOf(page).getAttribute('aria-label');
    await drag(4, -150);
    holds(await scrolled() > before + 80, `${before} to ${await scrolled()}`);
    equal(await pictureOf(page).getAttribute('aria-label'), label);
  });
  await t.check('with the finger nothing went wrong', () => equal(page.wrongs, []));
  await page.context().close();
}

async function inThePlan(t) {
  const page = await t.open('page', devices.tablet, { view: 'job' });
  await t.check('in a plan it is drawn once it is asked for', async () => {
    equal(await pictureOf(page).count(), 0);
    await page.getByRole('checkbox', { name: 'Show it in three dimensions' }).first().check();
    await pictureOf(page).waitFor();
    holds((await look(t, page)).colours > kFewestColours, 'blank');
  });
  await t.shoot(page, 'solid-plan');
  await t.check('in a plan nothing went wrong', () => equal(page.wrongs, []));
  await page.context().close();
}

async function refused(t) {
  const page = await t.open('page', devices.desktop, { before: (fresh) => fresh.addInitScript(() => {
    WebGL2RenderingContext.prototype.checkFramebufferStatus = () => 0x8cd6;  // incomplete attachment
  }) });
  await t.check('a device that cannot draw it says so in words', async () => {
    await bring(t, page);
    const note = page.getByRole('region', { name: 'In my pan' }).getByRole('note');
    holds(/cannot draw the pan in three dimensions/.test(await note.textContent()), await note.textContent());
  });
  await t.shoot(page, 'solid-refused');
  await page.context().close();
}

export async function run(t) {
  for (const [name, device] of Object.entries(devices)) {
    for (const scheme of ['light', 'dark']) await drawn(t, name, device, scheme);
  }
  await byMouse(t);
  await byFinger(t);
  await inThePlan(t);
  await refused(t);
}
