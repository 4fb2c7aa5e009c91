// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A whole recipe on the shipped page, by roles and labels only: every worked example against the program's own plan,
// editing, mistakes, the cupboard, the scale, and the pieces of a narrow page.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { answer } from '../command/questions.mjs';
import { desk, press } from './desk_parts.mjs';
import { devices, equal, holds } from './harness.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const kDemos = [
  ['Two tins\' worth, one tart tin', 'village-supper'], ['A large tart as tartlets', 'market-tartlets'],
  ['A cheesecake on crumbled ginger slab', 'ginger-slab'], ['Plum pies for the freezer', 'frozen-plum-pie'],
];

const region = (page, name) => page.getByRole('region', { name, exact: true });
const text = async (locator) => (await locator.textContent()).replace(/\s+/g, ' ');
const demo = (name) => JSON.parse(readFileSync(join(root, 'assets/jobs', `${name}.json`), 'utf8'));

async function examples(t, program) {
  const page = await t.open('page', devices.desktop, { view: 'job' });
  for (const [title, name] of kDemos) {
    await t.check(`"${title}" opens in one click and has the program's factors, fill lines and minutes`, async () => {
      await press(page, title);
      await t.rested(page);
      const plan = answer(program, 'plan', demo(name));
      for (const part of plan.parts) {
        const shown = await text(region(page, `Make: ${part.name}`));
        holds(shown.includes(`× ${Number(part.factor.toFixed(2))}`), `${part.factor} is not in ${shown.slice(0, 120)}`);
      }
      for (const pan of plan.pans) {
        const shown = await text(page.getByRole('region', { name: new RegExp(`^In: .*${pan.name}$`) }));
        const minutes = Math.round(pan.time_min);
        const said = minutes < 60 ? `${minutes} min` : `1 h ${minutes - 60 || ''}`.trim();
        holds(shown.includes(`about ${said}`), `${said} is not in ${shown.slice(0, 400)}`);
        const below = pan.fill.below_rim_mm;
        const line = below < 10 ? `${Number(below.toFixed(1))} mm` : below < 20 ? `${Math.round(below)} mm` : `${Number((below / 10).toFixed(1))} cm`;
        holds(shown.includes(`${line} (`), `${line} is not in ${shown.slice(0, 400)}`);
      }
      holds((await text(region(page, 'Take care'))).includes('local food-safety rules'), 'no cautions');
    });
    await t.shootWhole(page, `job-${name}`);
  }
  await t.check('nothing went wrong with the worked examples', () => equal(page.wrongs, []));
  await page.context().close();
}

async function editing(t) {
  const page = await t.open('page', devices.desktop, { view: 'job' });
  await t.rested(page);
  const made = () => text(region(page, 'Make: Filling'));
  const first = await made();
  await t.check('another pan of the cupboard makes another plan, and Take back returns to the first', async () => {
    const cupboard = region(page, 'My cupboard');
    await region(cupboard, '28 cm tart tin').getByRole('checkbox', { name: 'Use it for this batch' }).uncheck();
    await region(cupboard, '20 cm springform').getByRole('checkbox', { name: 'Use it for this batch' }).check();
    await t.rested(page);
    holds(await made() !== first, 'the same plan');
    await region(page, 'In: 20 cm springform').waitFor();
    await press(page, 'Take back');
    await press(page, 'Take back');
    await t.rested(page);
    equal(await made(), first);
  });
  await t.check('with no pan chosen the best set of the cupboard is found and told', async () => {
    await region(page, '28 cm tart tin').getByRole('checkbox', { name: 'Use it for this batch' }).uncheck();
    await region(page, 'What I want').getByLabel('Make').selectOption('Whole batches of the recipe');
    await t.rested(page);
    const said = await text(region(page, 'My pans'));
    holds(/Or/.test(said) && /deeper|shallower|as deep/.test(said), said);
    await press(page, 'Take back');
    await press(page, 'Take back');
    await t.rested(page);
    equal(await made(), first);
  });
  const filling = page.getByRole('region', { name: 'Filling', exact: true });
  await t.check('a mistake in an amount stands beside it, the plan waits, and the rest stays', async () => {
    const amount = region(filling, 'Ingredient 1').getByLabel('Amount');
    await amount.fill('lots');
    await t.rested(page);
    equal(await amount.getAttribute('aria-invalid'), 'true');
    holds((await text(region(page, 'The plan'))).includes('Filling, ingredients 1, amount'), 'it does not say where');
    await amount.fill('800 g');
    await t.rested(page);
    equal(await made(), first);
  });
  await t.check('an ingredient is added, weighed, and taken out again', async () => {
    await filling.getByRole('button', { name: 'Add an ingredient' }).click();
    await t.settled(page);
    const added = region(filling, 'Ingredient 8');
    await added.getByLabel('Amount').fill('2 tbsp');
    await added.getByLabel('Of').fill('maple syrup');
    await t.rested(page);
    holds((await made()).includes('maple syrup'), 'not in the list');
    await filling.getByLabel('Take an ingredient out').selectOption('8. maple syrup');
    await t.rested(page);
    equal(await made(), first);
  });
  await t.check('a factor chosen for whole eggs is made, and what the pans leave is told', async () => {
    await filling.getByLabel('Make this much of it').fill('1');
    await t.rested(page);
    holds(/5 large/.test(await made()) && /Left over/.test(await made()), await made());
    await filling.getByLabel('Make this much of it').fill('');
    await t.rested(page);
    equal(await made(), first);
  });
  await t.check('a reading short by the eggs names the eggs', async () => {
    const scale = region(page, 'On the scale: Filling');
    const cream = scale.getByLabel(/double cream: should read/);
    const wanted = Number(/should read (\d+) g/.exec(await cream.getAttribute('aria-label') ?? await text(scale.locator('label', { hasText: 'double cream' })))[1]);
    await cream.fill(`${wanted - 210} g`);
    await t.settled(page);
    holds(/210 g short: the eggs left out, most likely/.test(await text(scale)), await text(scale));
    await cream.fill(`${wanted} g`);
    await t.settled(page);
    holds(!/short/.test(await text(scale)), await text(scale));
  });
  await t.check('nothing went wrong while a job was edited', () => equal(page.wrongs, []));
  await page.context().close();
}

async function narrow(t) {
  const page = await t.open('page', devices.phone, { view: 'job' });
  await t.rested(page);
  await t.check('a phone shows the plan, the recipe, the cupboard or the scale, one at a time', async () => {
    equal(await region(page, 'My pans').count(), 1);
    equal(await region(page, 'My cupboard').count(), 0);
    for (const [piece, there] of [['The recipe', 'The recipe'], ['My cupboard', 'My cupboard'], ['The scale', 'My scale']]) {
      await page.getByRole('radio', { name: piece, exact: true }).check();
      await t.settled(page);
      equal(await region(page, there).count(), 1);
      equal(await region(page, 'My pans').count(), 0);
      await t.shoot(page, `job-phone-${piece.split(' ')[1]}`);
    }
  });
  await t.check('whatever is pressed there is high enough for a finger', async () => {
    const low = await page.$$eval('#mirror .press, #mirror .edit', (all) => all.map((element) => element.getBoundingClientRect().height).filter((height) => height < 43.5));
    equal(low, []);
  });
  await t.check('the desk stays within reach', async () => equal(await desk(page).count(), 1));
  await t.check('nothing went wrong on the phone', () => equal(page.wrongs, []));
  await page.context().close();
}

export async function run(t) {
  const program = join(t.build, 'native/tinwright');
  await examples(t, program);
  await editing(t);
  await narrow(t);
}
