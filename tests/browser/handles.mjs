// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The single pan's drawings under mouse, finger and keys: sizes are dragged on them, the forms and answers follow; the
// drawings are saved; the foot bar and large letters.
import { readFileSync } from 'node:fs';
import { devices, equal, holds } from './harness.mjs';

const grip = (page, name) => page.getByRole('slider', { name, exact: true });
const words = (locator) => locator.getAttribute('aria-valuetext');

/** Waits until it holds; a busy machine may take its time for a frame. */
async function soon(claim) {
  for (let i = 0; i < 40; ++i) {
    if (await claim()) return true;
    await new Promise((done) => { setTimeout(done, 50); });
  }
  return false;
}

async function middle(t, locator) {
  await locator.scrollIntoViewIfNeeded();
  // Clear of the window's edges, where the page would scroll under the finger.
  await locator.evaluate((element) => element.scrollIntoView({ block: 'center' }));
  await t.settled(locator.page());
  const box = await locator.boundingBox();
  return [box.x + box.width / 2, box.y + box.height / 2];
}

async function byMouse(t) {
  const page = await t.open('page', devices.desktop);
  const card = page.getByRole('region', { name: 'In my pan', exact: true });
  const line = grip(page, 'The fill line');
  await page.getByRole('button', { name: 'A shell filled to three quarters' }).click();
  await t.settled(page);
  const mine = page.getByRole('region', { name: 'My pan', exact: true });

  await t.check('each grip has a name, its size in words, and lies on its picture, large enough for a finger', async () => {
    for (const name of ['The fill line', 'My pan\'s depth', 'My pan\'s size across', 'My pan\'s size across, from above']) {
      holds(/\d (mm|cm)/.test(await words(grip(card, name))), name);
      const box = await grip(card, name).boundingBox();
      holds(box.width >= 44 && box.height >= 44, `${name}: ${box.width} × ${box.height}`);
    }
    equal(await line.getAttribute('aria-orientation'), 'vertical');
    equal(await card.locator('.grip').count(), 4);
  });
  await t.check('the fill line follows the mouse, in whole millimetres, and form and answer follow it', async () => {
    const [x, y] = await middle(t, line);
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y + 30, { steps: 6 });
    await t.settled(page);
    const box = await line.boundingBox();
    const went = box.y + box.height / 2 - y;
    holds(Math.abs(went - 30) < 5, `the line went ${went} px for 30`);
    const figure = await words(line);
    holds(/^\d+(\.\d)? (mm|cm) .* below the crust's top$/.test(figure), figure);
    const level = await page.getByLabel('Fill to').inputValue();
    holds(/^\d+(\.\d+)? %$/.test(level) && parseFloat(level) < 75, level);
    const answer = page.getByRole('status', { name: 'Stop pouring' });
    const said = (await answer.textContent()).replace(/\s+/g, ' ');
    holds(said.includes(figure), `${figure}: ${said}`);
    await t.shoot(page, 'grip-level');
    await page.mouse.up();
    await t.settled(page);
    equal(await words(line), figure);
  });
  await t.check('a drag is one step to take back', async () => {
    await page.getByRole('button', { name: 'Take back' }).click();
    await t.settled(page);
    equal(await page.getByLabel('Fill to').inputValue(), '3/4');
  });
  await t.check('a dragged catalogue pan gets sizes of its own, and stays under the mouse meanwhile', async () => {
    const across = grip(page, 'My pan\'s size across');
    const [x, y] = await middle(t, across);
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x - 24, y, { steps: 6 });
    await t.settled(page);
    const box = await across.boundingBox();
    holds(Math.abs(box.x + box.width / 2 - x + 24) < 3 && Math.abs(box.y + box.height / 2 - y) < 2,
      `${box.x + box.width / 2 - x}, ${box.y + box.height / 2 - y}`);
    const size = (await words(across)).split(' (')[0];
    equal(await mine.getByLabel('Inside diameter at the rim').inputValue(), size);
    holds(parseFloat(size) < 23, size);
    await page.mouse.move(x, y, { steps: 4 });
    await t.settled(page);
    equal(await mine.getByLabel('Inside diameter at the rim').count(), 0);  // the catalogue's again
    await page.mouse.move(x - 12, y, { steps: 4 });
    await page.mouse.up();
    await t.settled(page);
    await page.getByRole('button', { name: 'Take back' }).click();
    await t.settled(page);
    equal(await mine.getByLabel('Inside diameter at the rim').count(), 0);
  });
  await t.check('a size in the amount alone is moved by the line too', async () => {
    await page.getByLabel('Fill to').fill('');
    const before = await page.getByLabel('Filling there is').inputValue();
    await line.focus();
    await page.keyboard.press('ArrowDown');
    const amount = () => page.getByLabel('Filling there is').inputValue();
    holds(await soon(async () => await amount() !== before), 'it stays as it was');
    holds(/^1\.\d+ kg$/.test(await amount()), await amount());
    equal(await page.getByLabel('Fill to').inputValue(), '');
  });
  await t.check('arrow keys move one millimetre, page keys ten, and the ring is drawn', async () => {
    const depth = grip(page, 'My pan\'s depth');
    await depth.focus();
    const start = Number(await depth.inputValue());
    for (const [key, wanted] of [['ArrowUp', 1], ['ArrowRight', 2], ['ArrowDown', 1], ['PageUp', 11], ['PageDown', 1],
      ['ArrowLeft', 0]]) {
      const calm = await page.screenshot();
      await page.keyboard.press(key);
      await t.settled(page);
      equal(Number(await depth.inputValue()) - start, wanted);
      holds(!calm.equals(await page.screenshot()), 'nothing was drawn');
    }
    await t.shoot(page, 'grip-ring');
  });
  await t.check('with US measures a step is a sixteenth of an inch', async () => {
    await page.getByRole('radio', { name: 'US', exact: true }).check();
    const depth = grip(page, 'My pan\'s depth');
    await depth.focus();
    await page.keyboard.press('ArrowUp');
    await t.settled(page);
    const text = await mine.getByLabel('Depth', { exact: true }).inputValue();
    holds(/ in$/.test(text), text);
    await page.getByRole('radio', { name: 'Metric', exact: true }).check();
  });
  await t.check('nothing went wrong with the mouse', () => equal(page.wrongs, []));
  await page.context().close();
}

async function byFinger(t) {
  const page = await t.open('page', devices.phone);
  const session = await page.context().newCDPSession(page);
  const line = grip(page, 'The fill line'), across = grip(page, 'My pan\'s size across');
  const touch = (type, points) => session.send('Input.dispatchTouchEvent', { type, touchPoints: points });
  const drag = async ([x, y], right, down, end = 'touchEnd') => {
    await touch('touchStart', [{ x, y }]);
    for (let i = 1; i <= 10; ++i) {
      await touch('touchMove', [{ x: x + right * i / 10, y: y + down * i / 10 }]);
      await page.waitForTimeout(16);
    }
    await t.settled(page);
    await touch(end, []);
    await page.waitForTimeout(600);
    await t.settled(page);
  };
  const scrolled = () => page.evaluate(() => window.scrollY);

  await t.check('a finger drags the fill line and does not scroll', async () => {
    const at = await middle(t, line), before = await words(line), y = await scrolled();
    await drag(at, 0, 40);
    holds(await words(line) !== before, before);
    equal(await scrolled(), y);
  });
  await t.check('what the system takes the finger away from is as it was', async () => {
    const at = await middle(t, line), before = await words(line);
    await drag(at, 0, -30, 'touchCancel');
    equal(await words(line), before);
  });
  await t.check('a finger that comes down on the rim\'s grip and scrolls moves the page, not the rim', async () => {
    const at = await middle(t, across), before = await words(across), y = await scrolled();
    await drag(at, 0, -200);
    holds(await scrolled() > y + 100, `${y} to ${await scrolled()}`);
    equal(await words(across), before);
  });
  await t.check('a finger pulls the rim, and the drawing stays though the form above grows', async () => {
    const at = await middle(t, across), before = await words(across);
    await drag(at, -30, 0);
    holds(await words(across) !== before, before);
    const box = await across.boundingBox();
    holds(Math.abs(box.y + box.height / 2 - at[1]) < 2, `${box.y + box.height / 2 - at[1]}`);
  });
  await t.check('a tap on a grip changes nothing', async () => {
    const before = await words(line);
    await line.tap();
    await t.settled(page);
    equal(await words(line), before);
  });
  await t.check('nothing under a finger keeps it from scrolling', async () => {
    for (const role of ['img', 'table', 'slider', 'combobox', 'heading', 'status']) {
      const all = page.getByRole(role);
      const first = role === 'slider' ? page.getByRole('slider', { name: 'Moment shown' }) : all.first();
      if (await first.count() === 0) continue;
      await page.evaluate(() => document.activeElement?.blur());
      const at = await middle(t, first), y = await scrolled();
      const down = y > 400 ? 150 : -150;
      await drag(at, 0, down);
      holds(Math.abs(await scrolled() - y) > 60, `${role}: ${y} to ${await scrolled()}`);
    }
  });
  await t.check('nothing went wrong with the finger', () => equal(page.wrongs, []));
  await page.context().close();
}

async function files(t) {
  const page = await t.open('page', devices.desktop);
  await page.waitForFunction(() => !window.__tinwright.waiting);
  const save = async (key) => {
    const coming = page.waitForEvent('download');
    await page.locator(`[data-key="${key}"]`).click();
    const file = await coming;
    return { name: file.suggestedFilename(), bytes: readFileSync(await file.path()) };
  };
  for (const [key, name] of [['section', 'my-pan-cut'], ['above', 'my-pan-from-above'], ['curve', 'temperatures']]) {
    await t.check(`${name} is saved as SVG, and as PNG as the browser draws that`, async () => {
      const svg = await save(`${key}/title/svg`);
      equal(svg.name, `${name}.svg`);
      const text = svg.bytes.toString('utf8');
      const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(text).map(Number);
      const png = await save(`${key}/title/png`);
      equal(png.name, `${name}.png`);
      equal([...png.bytes.subarray(0, 8)], [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
      const pixels = [png.bytes.readUInt32BE(16), png.bytes.readUInt32BE(20)];
      holds(pixels[0] > 1200 && Math.abs(pixels[0] / pixels[1] - width / height) < 0.01, `${pixels} for ${width} × ${height}`);
      const colours = await page.evaluate(async (data) => {
        const image = new Image();
        image.src = `data:image/png;base64,${data}`;
        await image.decode();
        const copy = document.createElement('canvas');
        copy.width = image.width;
        copy.height = image.height;
        const context = copy.getContext('2d', { willReadFrequently: true });
        context.drawImage(image, 0, 0);
        const words = new Uint32Array(context.getImageData(0, 0, copy.width, copy.height).data.buffer);
        return new Set(words).size;
      }, png.bytes.toString('base64'));
      holds(colours > 20, `${colours} colours`);
    });
  }
  await t.check('the buttons that save are told apart by what they describe', async () => {
    equal(await page.locator('[data-key="above/title/svg"]').evaluate((button) =>
      document.getElementById(button.getAttribute('aria-describedby')).textContent), 'From above');
  });
  await t.check('nothing went wrong with files of drawings', async () => {
    equal(page.wrongs, []);
    equal(await page.evaluate(() => window.seen.violations), []);
  });
  await page.context().close();
}

async function foot(t) {
  const page = await t.open('page', devices.phone, { view: 'job' });
  const bar = page.getByRole('radiogroup', { name: 'Show', exact: true });
  const place = () => bar.evaluate((element) => {
    const { bottom, height } = element.getBoundingClientRect();
    return { below: Math.round(window.innerHeight - bottom), height };
  });
  await t.check('on a phone the parts of a job are chosen at the foot of the window, wherever the page is', async () => {
    for (const y of [0, 700]) {
      await page.evaluate((top) => window.scrollTo(0, top), y);
      await t.settled(page);
      equal((await place()).below, 0);
    }
    holds((await place()).height < 80, `${(await place()).height} px high`);
    await t.shoot(page, 'foot-bar');
  });
  await t.check('another part begins where the thumb\'s choice can be seen', async () => {
    await page.evaluate(() => window.scrollTo(0, 3000));
    await t.settled(page);
    await page.getByRole('radio', { name: 'My cupboard' }).tap();
    await t.settled(page);
    const top = await page.getByRole('heading', { name: 'My cupboard' }).evaluate((element) =>
      element.getBoundingClientRect().top);
    holds(top >= 0 && top < 200, `${top}`);
  });
  await t.check('a press on the bar reaches nothing beneath it', async () => {
    for (const name of ['The plan', 'The recipe', 'My cupboard', 'The scale']) {
      const hit = await page.getByRole('radio', { name, exact: true }).evaluate((element) => {
        const { left, top, width, height } = element.getBoundingClientRect();
        return document.elementFromPoint(left + width / 2, top + height / 2) === element;
      });
      holds(hit, name);
    }
  });
  await t.check('the end of the page can be scrolled clear of the bar', async () => {
    await page.evaluate(() => window.scrollTo(0, document.documentElement.scrollHeight));
    await t.settled(page);
    const { lowest, top } = await page.evaluate(() => ({
      lowest: Math.max(...[...document.querySelectorAll('#mirror .n:not(.foot, .foot *)')].map((element) =>
        element.getBoundingClientRect().bottom)),
      top: document.querySelector('#mirror .foot').getBoundingClientRect().top }));
    holds(lowest <= top, `${lowest} under ${top}`);
  });
  await t.check('while a field is typed into, the bar makes room for the keyboard', async () => {
    await page.locator('input.edit').first().tap();
    holds(await soon(async () => await bar.count() === 0), 'it is still there');
    await page.keyboard.press('Enter');
    holds(await soon(async () => await bar.count() === 1), 'it does not come back');
  });
  await t.check('on a wide page there is no bar', async () => {
    const wide = await t.open('page', devices.desktop, { view: 'job' });
    equal(await wide.getByRole('radiogroup', { name: 'Show', exact: true }).count(), 0);
    await wide.context().close();
  });
  await t.check('nothing went wrong with the bar', () => equal(page.wrongs, []));
  await page.context().close();
}

async function large(t) {
  for (const [name, device] of Object.entries(devices)) {
    const page = await t.open('page', device, { view: 'job' });
    const size = () => page.evaluate(() => parseFloat(getComputedStyle(document.getElementById('mirror')).fontSize));
    await t.check(`${name}: large letters are 1.7 times as large, drawn, and kept in the job`, async () => {
      const before = await size();
      await page.getByLabel('Large, for reading from a metre away').check();
      await t.settled(page);
      holds(Math.abs(await size() / before - 1.7) < 0.03, `${before} to ${await size()}`);
      const drawn = await page.evaluate(() => {
        const copy = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
        const canvas = document.getElementById('canvas');
        copy.canvas.width = canvas.width;
        copy.canvas.height = 300;
        copy.drawImage(canvas, 0, 0);
        const words = new Uint32Array(copy.getImageData(0, 0, canvas.width, 300).data.buffer);
        return new Set(words).size;
      });
      holds(drawn > 50, `${drawn} colours: no letters`);
      equal(JSON.parse(await page.evaluate(() => new TextDecoder().decode(window.Module.HEAPU8.slice(
        window.Module._page_kept(), window.Module._page_kept() + window.Module._page_kept_size())))).page.size, 'large');
    });
    await t.check(`${name}: nothing large is wider than the page`, async () => {
      const wide = await page.$$eval('#mirror .n', (all) => all.filter((element) => {
        const { left, right } = element.getBoundingClientRect();
        return left < 0 || right > document.documentElement.clientWidth + 0.5;
      }).map((element) => element.dataset.key));
      equal(wide, []);
      await t.shootWhole(page, `large-${name}`);
      equal(page.wrongs, []);
    });
    await page.context().close();
  }
}

export async function run(t) {
  await byMouse(t);
  await byFinger(t);
  await files(t);
  await foot(t);
  await large(t);
}
