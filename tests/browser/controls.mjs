// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Every control by mouse and keyboard, as a screen reader finds it, on the sampler.
import { devices, equal, holds } from './harness.mjs';

export async function run(t) {
  const page = await t.open('sampler', { viewport: { width: 1000, height: 800 } });
  const result = async () => {
    await t.settled(page);
    return page.getByRole('status', { name: 'Result' }).textContent();
  };
  const shows = async (wanted) => {
    const found = await result();
    holds(found.includes(wanted), `${found} lacks ${wanted}`);
  };
  const field = (name) => page.getByLabel(name, { exact: true });
  const button = (name) => page.getByRole('button', { name });
  const active = () => page.evaluate(() => document.activeElement.dataset.key ?? document.activeElement.tagName);
  await filling(t, { page, shows, field });
  await pressing(t, { page, shows, button });
  await choosing(t, { page, shows });
  await reading(t, { page, field, result });
  await moving(t, { page, field, button, active });
  await sliding(t);
  await t.check('nothing went wrong meanwhile', async () => {
    equal(page.wrongs, []);
    equal(await page.evaluate(() => window.seen.violations), []);
    equal(await page.evaluate(() => window.__tinwright.mirror.duplicates), 0);
  });
}

async function filling(t, { page, shows, field }) {
  await t.check('a field is found by its label and filled', async () => {
    await field('Diameter').fill('300');
    await shows('300 cm');
  });
  await t.check('fast typing loses nothing', async () => {
    for (const text of ['12.5', '1234567890.987', '9 1/2']) {
      await field('Diameter').fill('');
      await field('Diameter').pressSequentially(text, { delay: 0 });
      await shows(`${text} cm`);
      equal(await field('Diameter').inputValue(), text);
    }
  });
  await t.check('typing in the middle leaves the cursor there', async () => {
    await field('Diameter').fill('1234');
    await field('Diameter').evaluate((input) => input.setSelectionRange(2, 2));
    await page.keyboard.type('56');
    await t.settled(page);
    equal(await field('Diameter').evaluate((input) => [input.value, input.selectionStart]), ['125634', 4]);
  });
  await t.check('a number field brings up the number keyboard', async () => {
    equal(await field('Diameter').evaluate((input) => input.inputMode), 'decimal');
  });
  await t.check('a click on a label puts the cursor into its field', async () => {
    await page.getByText('Name of the pan').click();
    equal(await field('Name of the pan').evaluate((input) => input === document.activeElement), true);
  });
  await t.check('accents and fractions can be entered', async () => {
    await field('Name of the pan').fill('');
    await page.keyboard.insertText('crème brûlée ½');
    await t.settled(page);
    equal(await field('Name of the pan').inputValue(), 'crème brûlée ½');
  });
  await t.check('text is pasted from outside and copied out', async () => {
    await page.evaluate(() => navigator.clipboard.writeText('two cups – café'));
    await field('Name of the pan').focus();
    await page.keyboard.press('Control+A');
    await page.keyboard.press('Control+V');
    await t.settled(page);
    equal(await field('Name of the pan').inputValue(), 'two cups – café');
    await page.evaluate(() => navigator.clipboard.writeText(''));
    await page.keyboard.press('Control+A');
    await page.keyboard.press('Control+C');
    equal(await page.evaluate(() => navigator.clipboard.readText()), 'two cups – café');
  });
  await t.check('a wrong text stays, is marked, and is explained', async () => {
    const depth = field('Depth');
    equal([await depth.inputValue(), await depth.getAttribute('aria-invalid')], ['2 4', 'true']);
    const reason = await depth.evaluate((input) =>
      document.getElementById(input.getAttribute('aria-describedby')).textContent);
    holds(/write 24 or 2\.4/.test(reason), reason);
    await depth.fill('2.4');
    await t.settled(page);
    equal([await depth.getAttribute('aria-invalid'), await depth.getAttribute('aria-describedby')], [null, null]);
  });
  await t.check('a closed field takes nothing', async () => equal(await field('Not to be filled in').isDisabled(), true));
}

async function pressing(t, { page, shows, button }) {
  const press = button('Press the dough');
  await t.check('a click presses once', async () => { await press.click(); await shows('pressed 1'); });
  await t.check('Enter presses once', async () => {
    await press.focus();
    await page.keyboard.press('Enter');
    await shows('pressed 2');
  });
  await t.check('Space presses once', async () => { await page.keyboard.press('Space'); await shows('pressed 3'); });
  await t.check('a screen reader presses once', async () => {
    await press.evaluate((element) => element.click());
    await shows('pressed 4');
  });
  await t.check('two clicks in one frame are two', async () => {
    await press.evaluate((element) => { element.click(); element.click(); });
    await t.settled(page);
    await shows('pressed 6');
  });
  await t.check('a press that slides off does nothing', async () => {
    const box = await press.boundingBox();
    await page.mouse.move(box.x + 10, box.y + 10);
    await page.mouse.down();
    await page.mouse.move(box.x + 10, box.y - 200);
    await page.mouse.up();
    await shows('pressed 6');
  });
  await t.check('a disabled button is disabled', async () => equal(await button('Not possible yet').isDisabled(), true));
}

async function choosing(t, { page, shows }) {
  await t.check('a box is unticked, ticked, and toggled by Space', async () => {
    const box = page.getByRole('checkbox', { name: 'Line it with dough' });
    await box.uncheck();
    await shows('bare');
    await box.check();
    await shows('lined');
    await box.focus();
    await page.keyboard.press('Space');
    await shows('bare');
  });
  await t.check('a list opens as the device does it, in groups', async () => {
    const list = page.getByRole('combobox', { name: 'Pan', exact: true });
    equal(await list.evaluate((select) => [...select.querySelectorAll('optgroup')].map((group) => group.label)),
      ['Round', 'With corners']);
    await list.selectOption('Loaf pan');
    await shows('pan 2');
    await list.focus();
    await page.keyboard.press('ArrowDown');
    await shows('pan 3');
    await page.getByLabel('Unit').selectOption('inches');
    await shows(' in');
  });
  await t.check('a slider is moved by keys, by clicking and by dragging, and says where it stands', async () => {
    const slider = page.getByRole('slider', { name: 'Minutes in the oven' });
    await slider.focus();
    await page.keyboard.press('ArrowRight');
    await shows('minute 11');
    equal(await slider.getAttribute('aria-valuetext'), '11 min');
    await page.keyboard.press('End');
    await shows('minute 40');
    await page.keyboard.press('Home');
    await shows('minute 0');
    const box = await slider.boundingBox();
    await slider.click({ position: { x: box.width / 2, y: box.height / 2 } });
    await shows('minute 20');
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    for (let i = 1; i <= 10; ++i) await page.mouse.move(box.x + box.width * (0.5 + 0.05 * i), box.y + box.height / 2);
    await page.mouse.up();
    await shows('minute 40');
    await slider.fill('7');
    await shows('minute 7');
    equal(await slider.inputValue(), '7');
  });
  await t.check('a closed slider stays where it is', async () => {
    const slider = page.getByRole('slider', { name: 'Not to be moved' });
    equal([await slider.isDisabled(), await slider.inputValue(), await slider.getAttribute('max')], [true, '2', '4']);
  });
  await t.check('segments are one radio group, moved by arrows', async () => {
    equal(await page.getByRole('radiogroup', { name: 'Shape' }).getByRole('radio').count(), 5);
    await page.getByRole('radio', { name: 'oval' }).click();
    await shows('oval');
    await page.keyboard.press('ArrowRight');
    await shows('ring');
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('ArrowLeft');
    await shows('rectangle');
    equal(await page.getByRole('radio', { name: 'rectangle' }).isChecked(), true);
  });
}

async function sliding(t) {
  const page = await t.open('sampler', devices.phone);
  const session = await page.context().newCDPSession(page);
  const slider = page.getByRole('slider', { name: 'Minutes in the oven' });
  const drag = async (x, y, right, down) => {
    const touch = (type, touchPoints) => session.send('Input.dispatchTouchEvent', { type, touchPoints });
    await touch('touchStart', [{ x, y }]);
    for (let i = 1; i <= 10; ++i) {
      await touch('touchMove', [{ x: x + right * i / 10, y: y + down * i / 10 }]);
      await page.waitForTimeout(16);
    }
    await touch('touchEnd', []);
    await page.waitForTimeout(900);
    await t.settled(page);
  };
  const scrolled = () => page.evaluate(() => window.scrollY);
  await t.check('a finger along a slider moves it, down over it scrolls and leaves it where it was', async () => {
    await slider.scrollIntoViewIfNeeded();
    await t.settled(page);
    const box = await slider.boundingBox();
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const before = await scrolled();
    await drag(x, y, 120, 0);
    const moved = await slider.inputValue();
    holds(Number(moved) > 25, moved);
    equal(await scrolled(), before);
    await drag(x, y, 0, -150);
    holds(await scrolled() > before + 80, String(await scrolled()));
    equal(await slider.inputValue(), moved);
    holds((await page.getByRole('status', { name: 'Result' }).textContent()).includes(`minute ${moved}`), 'not taken back');
  });
  equal(page.wrongs, []);
  await page.context().close();
}

async function reading(t, { page, field, result }) {
  await t.check('headings, regions, notes, a table and a picture are there by role', async () => {
    equal(await page.getByRole('heading').allTextContents(), ['One of every control', 'Filling in', 'Showing', 'Words']);
    equal(await page.getByRole('region').count(), 3);
    equal(await page.getByRole('note').allTextContents(), ['Note: The dough may be rolled a day earlier.',
      'Careful: The filling comes to 4 mm below the rim. Carry it level.',
      'Mistake: This pan is smaller than the dough for its floor.']);
    const table = page.getByRole('table', { name: 'For the pressed base' });
    equal(await table.getByRole('columnheader').allTextContents(), ['Part', 'Grams', 'In the kitchen']);
    equal(await table.getByRole('row', { name: 'Sugar' }).getByRole('cell').allTextContents(), ['80', '⅜ cup']);
    equal(await page.getByRole('img', { name: /from the side/ }).count(), 1);
  });
  await t.check('a changed result is read out once, after a pause', async () => {
    await page.evaluate(() => {
      window.spoken = [];
      const announcer = document.getElementById('announcer');
      new MutationObserver(() => window.spoken.push(announcer.textContent)).observe(announcer, { childList: true });
    });
    await field('Diameter').fill('');
    await field('Diameter').pressSequentially('27.5', { delay: 60 });
    await page.waitForTimeout(1300);
    equal(await page.evaluate(() => window.spoken), ['Result: 27.5 in']);
  });
  await t.check('text can be selected and copied', async () => {
    const text = page.getByText('A paragraph that is long enough');
    await text.click({ clickCount: 3 });
    holds((await page.evaluate(() => String(getSelection()))).includes('crème brûlée'), 'nothing selected');
    await page.getByRole('status', { name: 'Result' }).locator('.value').dblclick({ position: { x: 12, y: 20 } });
    holds((await page.evaluate(() => String(getSelection()))).trim().length > 0, 'no answer selected');
  });
  await t.check('selected text lies on the drawn text', async () => {
    const apart = await page.$$eval('.n.words', (all) => all.filter((element) =>
      element.scrollHeight > element.getBoundingClientRect().height + 2).map((element) => element.dataset.key));
    equal(apart, []);
  });
  await result();
}

async function moving(t, { page, field, button, active }) {
  await t.check('Tab goes the way the eye goes', async () => {
    await field('Diameter').focus();
    const order = [];
    for (let i = 0; i < 12; ++i) {
      order.push(await active());
      await page.keyboard.press('Tab');
    }
    equal(order, ['diameter', 'unit', 'name', 'wrong', 'pan', 'shape/1', 'minute', 'lined', 'hidden', 'press', 'again', 'more']);
  });
  await t.check('the focus stays when a new control comes before it', async () => {
    await page.getByRole('checkbox', { name: 'Show one more field' }).check();
    await t.settled(page);
    equal(await active(), 'hidden');
    await button('More rows').focus();
    await page.getByRole('checkbox', { name: 'Show one more field' }).evaluate((box) => box.click());
    await t.settled(page);
    equal(await active(), 'more');
  });
  await t.check('keyboard focus is shown, a click alone shows none', async () => {
    const ringed = async () => {
      await t.settled(page);
      return (await page.screenshot()).toString('base64');
    };
    await button('More rows').focus();
    await page.keyboard.press('Shift+Tab');
    const one = await ringed();
    await page.keyboard.press('Shift+Tab');
    holds(one !== await ringed(), 'the ring did not move');
    await t.shoot(page, 'focus-ring');
  });
  await t.check('the focus scrolls what it reaches into view', async () => {
    await button('More rows').click();
    await t.settled(page);
    await button('Extra 9').focus();
    await t.settled(page);
    const box = await button('Extra 9').boundingBox();
    holds(box.y >= 0 && box.y + box.height <= 800, JSON.stringify(box));
  });
  await t.check('the wheel scrolls, and the drawing follows', async () => {
    const before = await page.screenshot();
    await page.mouse.move(500, 400);
    await page.mouse.wheel(0, -300);
    await page.waitForTimeout(300);
    await t.settled(page);
    holds(!before.equals(await page.screenshot()), 'same picture');
  });
  await t.check('keys scroll the page without a click first', async () => {
    await page.evaluate(() => { document.activeElement.blur(); window.scrollTo(0, 0); });
    await page.keyboard.press('PageDown');
    await page.waitForTimeout(400);
    const down = await page.evaluate(() => window.scrollY);
    holds(down > 300, String(down));
    await page.keyboard.press('Home');
    await page.waitForTimeout(400);
    equal(await page.evaluate(() => window.scrollY), 0);
    await t.settled(page);
  });
  await t.check('Start again sets every field back', async () => {
    await button('Start again').click();
    await t.settled(page);
    equal(await field('Diameter').inputValue(), '24');
    equal(await page.getByRole('radio', { name: 'round' }).isChecked(), true);
    equal(await page.getByRole('checkbox', { name: 'Line it with dough' }).isChecked(), true);
  });
}
