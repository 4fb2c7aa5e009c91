// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The oven on the shipped page, by roles and labels only: the answer, the stages, mistakes, the pictures that play, and
// the rest afterwards.
import { devices, equal, holds } from './harness.mjs';

const kPlayed = 25000;  // [ms] at the longest, on a machine without a graphics card
const kIdle = 2000;     // [ms]

const region = (page, name) => page.getByRole('region', { name, exact: true });
const stage = (page, number) => region(page, `Stage ${number}`);
const sentence = (page) => region(page, 'In the oven').getByRole('status', { name: 'How long', exact: true });
const slider = (page) => page.getByRole('slider', { name: 'Moment shown' });
const text = async (locator) => (await locator.textContent()).replace(/\s+/g, ' ');
const moment = async (page) => Number(await slider(page).inputValue());
const minutes = (said) => {
  const found = /about (\d+ h)? ?(\d+ min)?/.exec(said);
  return 60 * parseInt(found?.[1] ?? 0, 10) + parseInt(found?.[2] ?? 0, 10);
};

async function said(t, page) {
  await t.rested(page);
  return text(sentence(page));
}

async function firstVisit(t, name, device) {
  const page = await t.open('page', device);
  await t.check(`${name}: a first visit says how many minutes, from when to look, and shows both pictures`, async () => {
    const found = await said(t, page);
    holds(minutes(found) > 5 && minutes(found) < 120, found);
    const inside = region(page, 'Inside, as time goes by');
    equal(await inside.getByRole('img', { name: /Temperatures against time.*core is at \d+ °C/ }).count(), 1);
    equal(await inside.getByRole('img', { name: /food cut through.*coldest place/ }).count(), 1);
    holds(/in the oven/.test(await slider(page).getAttribute('aria-valuetext')), 'not at the end of the oven');
  });
  await t.check(`${name}: what the pictures show does not reach beyond them`, async () => {
    const wide = await page.$$eval('#mirror .n', (all) => all.filter((element) => {
      const { left, right } = element.getBoundingClientRect();
      return left < 0 || right > document.documentElement.clientWidth + 0.5;
    }).map((element) => element.dataset.key));
    equal(wide, []);
  });
  await t.shootWhole(page, `oven-${name}`);
  await t.check(`${name}: nothing went wrong with the oven`, () => equal(page.wrongs, []));
  await page.context().close();
}

async function editing(t) {
  const page = await t.open('page', devices.desktop);
  const first = await said(t, page);
  const number = await page.getByRole('region', { name: /^Stage \d$/ }).count();
  await t.check('the answer waits until the cook has stopped typing, and says so', async () => {
    await stage(page, 1).getByLabel('Air temperature').pressSequentially(' ', { delay: 0 });
    await region(page, 'In the oven').getByText('This is from before the last change.').waitFor();
    await t.rested(page);
    equal(await region(page, 'In the oven').getByText('This is from before the last change.').count(), 0);
  });
  await t.check('a stage at another temperature changes the answer', async () => {
    await stage(page, 1).getByLabel('Air temperature').fill('230 C');
    const hotter = await said(t, page);
    holds(hotter !== first, `still ${hotter}`);
    await stage(page, 1).getByLabel('Air temperature').fill('200 C');
    equal(await said(t, page), first);
  });
  await t.check('a mistake in a time stands beside its field, and the answer is withdrawn', async () => {
    const field = stage(page, 1).getByLabel('For');
    await field.fill('abc');
    await t.rested(page);
    equal(await field.getAttribute('aria-invalid'), 'true');
    const ids = await field.getAttribute('aria-describedby');
    const problem = await page.evaluate((id) => document.getElementById(id.split(' ')[0]).textContent, ids);
    holds(problem.length > 10, problem);
    equal(await sentence(page).count(), 0);
    await field.fill('15 min');
    equal(await said(t, page), first);
    equal(await field.getAttribute('aria-invalid'), null);
  });
  await t.check('a ramp, water round the pan and an oven switched off ask for what they need and change the answer', async () => {
    const shown = stage(page, 2);
    await shown.getByLabel('Its air').selectOption('Goes evenly to another temperature');
    await t.rested(page);
    equal(await shown.getByLabel('From').getAttribute('aria-invalid'), 'true');
    await shown.getByLabel('From').fill('200 C');
    const ramped = await said(t, page);
    holds(minutes(ramped) > 0 && ramped !== first, ramped);
    await shown.getByLabel('Its air').selectOption('Stays at one temperature');
    await shown.getByRole('checkbox', { name: 'The pan stands in water' }).click();
    await shown.getByLabel('Water round the pan at').fill('90 C');
    const bathed = await said(t, page);
    holds(minutes(bathed) > 0 && bathed !== first, bathed);
    await shown.getByRole('checkbox', { name: 'The pan stands in water' }).click();
    await shown.getByLabel('Its air').selectOption('Oven off, door shut');
    await t.rested(page);
    equal(await shown.getByLabel('Air temperature').count(), 0);
    const off = await said(t, page);
    holds(minutes(off) > 0 && off !== first, off);
    await shown.getByLabel('Its air').selectOption('Stays at one temperature');
    equal(await said(t, page), first);
  });
  await t.check('a stage added has the last one\'s place and air, and none of its time', async () => {
    await stage(page, number).getByLabel(`Stage ${number} in the`).selectOption('Fan oven');
    await page.getByRole('button', { name: 'Add a stage' }).click();
    await t.rested(page);
    const added = stage(page, number + 1);
    equal(await added.getByRole('combobox').first().evaluate((list) => list.selectedOptions[0].textContent), 'Fan oven');
    equal(await added.getByLabel('Air temperature').inputValue(),
      await stage(page, number).getByLabel('Air temperature').inputValue());
    equal(await added.getByLabel('For').inputValue(), '');
  });
  await t.check('there are at most eight stages', async () => {
    for (let i = number + 1; i < 8; ++i) await page.getByRole('button', { name: 'Add a stage' }).click();
    await t.rested(page);
    equal(await page.getByRole('button', { name: 'Add a stage' }).isDisabled(), true);
    equal(await page.getByRole('region', { name: /^Stage \d$/ }).count(), 8);
  });
  await t.check('without any stage the oven is not asked about', async () => {
    for (let i = 0; i < 8; ++i) {
      await page.getByRole('button', { name: 'Take stage 1 out' }).click();
      await t.rested(page);
    }
    equal(await region(page, 'In the oven').count(), 0);
    equal(await region(page, 'Inside, as time goes by').count(), 0);
    holds(/Add the recipe's stages/.test(await text(region(page, 'Oven'))), 'it does not say how to begin');
  });
  await t.check('nothing went wrong while the oven was edited', () => equal(page.wrongs, []));
  await page.context().close();
}

async function playing(t) {
  const page = await t.open('page', devices.desktop);
  await t.rested(page);
  const button = (name) => page.getByRole('button', { name, exact: true });
  const last = Number(await slider(page).getAttribute('max'));
  await t.check('Back to the start shows the food as it went in', async () => {
    await button('Back to the start').click();
    await t.rested(page);
    equal(await moment(page), 0);
    equal(await button('Back to the start').isDisabled(), true);
  });
  await t.check('Pause holds the moment that is shown', async () => {
    await button('Play').click();
    await page.waitForFunction(() => Number(document.querySelector('[data-key="inside/moment"]').value) >= 3);
    await button('Pause').click();
    await t.rested(page);
    const held = await moment(page);
    holds(held >= 3 && held < last, String(held));
    await page.waitForTimeout(600);
    equal(await moment(page), held);
  });
  await t.check('Play goes on through every moment and stops at the last one', async () => {
    const from = await moment(page);
    await page.evaluate(() => {
      const shown = document.querySelector('[data-key="inside/moment"]');
      window.seenMoments = new Set();
      window.watching = setInterval(() => window.seenMoments.add(Number(shown.value)), 20);
    });
    await button('Play').click();
    await page.waitForFunction((end) => Number(document.querySelector('[data-key="inside/moment"]').value) === end, last,
      { timeout: kPlayed });
    await button('Play').waitFor();
    const seen = await page.evaluate(() => {
      clearInterval(window.watching);
      return window.seenMoments.size;
    });
    holds(seen > 0.5 * (last - from), `${seen} of ${last - from}`);
  });
  await t.check('once it has stopped, nothing is drawn', async () => {
    const counts = () => page.evaluate(() => [window.__tinwright.frames, window.seen.animationFrames]);
    await t.rested(page);
    const before = await counts();
    await page.waitForTimeout(kIdle);
    equal(await counts(), before);
  });
  await t.shootWhole(page, 'oven-cooled');
  await t.check('arrow keys step through the moments, and the pictures say another thing', async () => {
    const picture = page.getByRole('img', { name: /food cut through/ });
    const before = await picture.getAttribute('aria-label');
    await slider(page).focus();
    await page.keyboard.press('ArrowLeft');
    await t.rested(page);
    equal(await moment(page), last - 1);
    await page.keyboard.press('Home');
    await t.rested(page);
    equal(await slider(page).getAttribute('aria-valuetext'), 'going in');
    holds(await picture.getAttribute('aria-label') !== before, 'the same words');
  });
  await t.check('the curve goes on into the cooling when asked to', async () => {
    const curve = page.getByRole('img', { name: /Temperatures against time/ });
    const before = await curve.getAttribute('aria-label');
    await page.getByRole('radio', { name: 'With cooling' }).check();
    await t.rested(page);
    holds((await curve.getAttribute('aria-label')).length > before.length, 'nothing about the cooling');
  });
  await t.shootWhole(page, 'oven-cooling');
  await t.check('nothing went wrong while it played', () => equal(page.wrongs, []));
  await page.context().close();
}

async function calmly(t) {
  const page = await t.open('page', devices.desktop, { reducedMotion: 'reduce' });
  await t.rested(page);
  await t.check('where little movement is wanted, Play shows a few moments, each for about a second', async () => {
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    const shown = [];
    for (let i = 0; i < 12; ++i) {
      await page.waitForTimeout(200);
      shown.push(await moment(page));
    }
    const changes = shown.filter((value, i) => i > 0 && value !== shown[i - 1]).length;
    holds(changes >= 1 && changes <= 3, shown.join(' '));
    await page.getByRole('button', { name: 'Pause', exact: true }).click();
  });
  await page.context().close();
}

async function everyExample(t) {
  for (const [title, name] of [['Cookie dough on a tray', 'slab'], ['A shell filled to three quarters', 'shell']]) {
    const page = await t.open('page', devices.desktop, { colorScheme: 'dark' });
    await t.check(`the oven's answer to "${title}" has minutes in it`, async () => {
      await page.getByRole('button', { name: title }).click();
      const found = await said(t, page);
      holds(minutes(found) > 0, found);
    });
    await t.shootWhole(page, `oven-${name}-dark`);
    await t.check(`nothing went wrong with "${title}" in the oven`, () => equal(page.wrongs, []));
    await page.context().close();
  }
}

export async function run(t) {
  for (const [name, device] of Object.entries(devices)) await firstVisit(t, name, device);
  await editing(t);
  await playing(t);
  await calmly(t);
  await everyExample(t);
}
