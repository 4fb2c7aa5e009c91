// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What a screen reader, a keyboard and find-in-page get: axe-core's rules on every state of the page, a walk through it by
// Tab alone, and the price of the mirror.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { desk, press } from './desk_parts.mjs';
import { devices, equal, holds } from './harness.mjs';

const kMirrorBudget = 0.5;  // [ms] a frame

/** Faults axe-core calls serious or critical, as "rule: where". Its colour rule cannot see a canvas; test_theme has that. */
async function faults(t, page) {
  if (!await page.evaluate(() => 'axe' in window)) {
    await page.evaluate(readFileSync(join(t.build, 'node/node_modules/axe-core/axe.min.js'), 'utf8'));
  }
  const found = await page.evaluate(async () => {
    const { violations, passes } = await axe.run(document, { resultTypes: ['violations'], rules: { 'color-contrast': { enabled: false } } });
    return { passes: passes.length, violations: violations.map(({ id, impact, nodes }) =>
      ({ id, impact, where: nodes.slice(0, 3).map(({ html }) => html.slice(0, 160)) })) };
  });
  holds(found.passes > 15, `only ${found.passes} rules had anything to look at`);
  return found.violations.filter(({ impact }) => ['serious', 'critical'].includes(impact))
    .map(({ id, where }) => `${id}: ${where.join(' ')}`);
}

async function rules(t) {
  for (const [name, device] of Object.entries(devices)) {
    const page = await t.open('page', device, { view: 'job' });
    await t.rested(page);
    await t.check(`${name}: axe-core finds no serious fault in a whole recipe`, async () => {
      equal(await faults(t, page), []);
    });
    if (name === 'phone') {
      for (const piece of ['The recipe', 'My cupboard', 'The scale']) {
        await page.getByRole('radio', { name: piece, exact: true }).check();
        await t.settled(page);
        await t.check(`phone: nor in "${piece}"`, async () => equal(await faults(t, page), []));
      }
    }
    await t.show(page, 'pan');
    await t.rested(page);
    await t.check(`${name}: nor in a single pan`, async () => equal(await faults(t, page), []));
    await t.check(`${name}: nor with a mistake and a message on it`, async () => {
      await page.locator('input.edit').first().fill('nonsense');
      await press(page, 'One pan').catch(() => {});
      await t.settled(page);
      equal(await faults(t, page), []);
    });
    await t.check(`${name}: nor in a dialog`, async () => {
      await t.show(page, 'job');
      await press(page, 'Read a recipe');
      await page.getByRole('dialog').waitFor();
      equal(await faults(t, page), []);
      await page.keyboard.press('Escape');
    });
    await page.context().close();
  }
}

async function keyboard(t) {
  const page = await t.open('page', devices.desktop, { view: 'job' });
  await t.rested(page);
  await t.check('Tab alone goes through every control, in the order they are read, and out again', async () => {
    const wanted = await page.$$eval('#mirror button, #mirror input, #mirror select', (all) => {
      const seen = new Set();
      return all.filter((element) => !element.disabled).filter((element) => {
        if (element.type !== 'radio') return true;
        if (seen.has(element.name) || !element.checked) return false;  // one stop for a group, on what is chosen
        seen.add(element.name);
        return true;
      }).map((element) => element.dataset.key);
    });
    const walked = [];
    await page.evaluate(() => document.activeElement.blur());
    for (let i = 0; i < wanted.length; i += 1) {
      await page.keyboard.press('Tab');
      walked.push(await page.evaluate(() => document.activeElement.dataset?.key ?? document.activeElement.tagName));
    }
    equal(walked, wanted);
  });
  await t.check('whatever has the focus is scrolled into sight', async () => {
    const last = page.locator('#mirror button:enabled').last();
    await last.focus();
    await t.settled(page);
    const { top, bottom } = await last.evaluate((element) => element.getBoundingClientRect());
    holds(top >= 0 && bottom <= devices.desktop.viewport.height, `${top} to ${bottom}`);
  });
  await t.check('Enter and Space press', async () => {
    await desk(page).getByRole('button', { name: 'Read a recipe' }).focus();
    for (const key of ['Enter', ' ']) {
      await page.keyboard.press(key);
      await page.getByRole('dialog').waitFor();
      await page.keyboard.press('Escape');
      await page.getByRole('dialog').waitFor({ state: 'detached' });
      equal(await page.evaluate(() => document.activeElement.textContent), 'Read a recipe');
    }
  });
  await t.check('words of the page are found and scrolled to', async () => {
    await page.evaluate(() => window.scrollTo(0, 0));
    holds(await page.evaluate(() => window.find('Take it away', false, false, true)), 'not found');
    holds(await page.evaluate(() => window.scrollY) > 0, 'not scrolled to');
    equal(await page.evaluate(() => String(getSelection())), 'Take it away');
  });
  await page.context().close();
}

async function price(t) {
  const page = await t.open('page', devices.desktop, { view: 'job' });
  await t.rested(page);
  await t.check(`the mirror takes no more than ${kMirrorBudget} ms a frame`, async () => {
    const counts = () => page.evaluate(() => ({ ...window.__tinwright.mirror, frames: window.__tinwright.frames }));
    const before = await counts();
    for (let i = 0; i < 30; i += 1) {
      await page.mouse.move(200 + 20 * i, 300);
      if (i % 5 === 0) await page.locator('input.edit').first().pressSequentially('a');
    }
    await t.rested(page);
    const after = await counts();
    // The middle one: on a busy machine some are interrupted.
    const middle = after.spent.sort((a, b) => a - b)[after.spent.length >> 1];
    const each = middle * (after.syncs - before.syncs) / (after.frames - before.frames);
    console.log(`     ${each.toFixed(3)} ms a frame: ${middle.toFixed(2)} ms for ${after.nodes} nodes, in ${
      after.syncs - before.syncs} of ${after.frames - before.frames} frames`);
    holds(each <= kMirrorBudget, `${each} ms`);
  });
  await page.context().close();
}

export async function run(t) {
  await rules(t);
  await keyboard(t);
  await price(t);
}
