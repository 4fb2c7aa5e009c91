// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The cook's job on the shipped page, by roles and labels only: the three worked examples against the program's own answers,
// typing, mistakes, own sizes, units. The program is built beside the page.
import { join } from 'node:path';
import { answer, shell, slab, swap, swapDough } from '../command/questions.mjs';
import { devices, equal, holds } from './harness.mjs';

const region = (page, name) => page.getByRole('region', { name, exact: true });
const status = (page, where, name) => region(page, where).getByRole('status', { name, exact: true });
const text = async (locator) => (await locator.textContent()).replace(/\s+/g, ' ');

async function shows(t, locator, ...parts) {
  await t.settled(locator.page());
  const found = await text(locator);
  for (const part of parts) holds(found.includes(part), `"${part}" is not in "${found}"`);
}

const round = (value, decimals) => String(Number(value.toFixed(decimals)));

async function workedExamples(t, program, name, device) {
  const page = await t.open('page', device);
  await t.check(`${name}: a first visit shows a pie tin swapped for a fluted ring, answered`, async () => {
    const pan = answer(program, 'pan', swap);
    await shows(t, status(page, 'How much to make', 'Filling or batter, make'),
      `× ${pan.instead_of.filling_factor.toFixed(2)}`, `${round(pan.brim_volume_ml / 1000, 2)} l`);
    await shows(t, status(page, 'How much to make', 'Dough for floor and wall, make'),
      `× ${pan.instead_of.lining_factor.toFixed(2)}`);
    const dough = answer(program, 'press', swapDough);
    await shows(t, status(page, 'Dough', 'Presses out to'), `${round(dough.floor_thickness_mm, 1)} mm`);
    await shows(t, status(page, 'Dough', 'Reaches'), 'all the way to the edge');
  });
  await t.check(`${name}: 430 g at 1/4 in on a quarter sheet tray stops short, with the size it makes`, async () => {
    await page.getByRole('button', { name: 'Cookie dough on a tray' }).click();
    const a = answer(program, 'press', slab);
    await shows(t, status(page, 'Dough', 'Pressed to'), '6.4 mm (¼ in)');
    await shows(t, status(page, 'Dough', 'Reaches'), `${Math.round(100 * a.coverage)} % of the floor`,
      `${round(a.slab_length_mm / 10, 1)} cm`, `${round(a.slab_width_mm / 10, 1)} cm`,
      `${round(a.slab_length_at_full_width_mm / 10, 1)} cm`);
    await shows(t, status(page, 'Dough', 'To reach the edge'), `${Math.round(a.mass_short_g)} g`);
    holds(await region(page, 'In my pan').getByRole('img', { name: /covers \d+ % of the floor/ }).count() === 1,
      'the picture does not say how far the slab reaches');
  });
  await t.shootWhole(page, `slab-${name}`);
  await t.check(`${name}: a shell filled to three quarters: below its top, grams, and what is left`, async () => {
    await page.getByRole('button', { name: 'A shell filled to three quarters' }).click();
    const a = answer(program, 'fill', shell);
    await shows(t, status(page, 'Filling', 'Stop pouring'), `${round(a.below_rim_mm, 1)} mm`, 'below the crust\'s top', '75 %');
    await shows(t, status(page, 'Filling', 'That takes'), `${round(a.volume_ml / 1000, 2)} l`, `${round(a.mass_g / 1000, 2)} kg`);
    await shows(t, status(page, 'Filling', 'Left over'), `${Math.round(a.left_g)} g`);
    await shows(t, region(page, 'Take care'), 'egg or dairy', 'local food-safety rules');
  });
  await t.shootWhole(page, `shell-${name}`);
  await t.check(`${name}: nothing went wrong meanwhile`, () => equal(page.wrongs, []));
  await page.context().close();
}

async function typing(t) {
  const page = await t.open('page', devices.desktop);
  const dough = region(page, 'Dough');
  await t.check('more dough presses out thicker, as it is typed', async () => {
    const before = await text(status(page, 'Dough', 'Presses out to'));
    await dough.getByLabel('Dough there is').fill('500 g');
    await t.settled(page);
    const after = await text(status(page, 'Dough', 'Presses out to'));
    holds(parseFloat(/([\d.]+) mm/.exec(after)[1]) > parseFloat(/([\d.]+) mm/.exec(before)[1]), `${before} → ${after}`);
  });
  await t.check('a mistake stays in its field with the sentence beside it, and the other answers stand', async () => {
    const field = dough.getByLabel('Dough there is');
    await field.fill('500');
    await t.settled(page);
    equal(await field.inputValue(), '500');
    equal(await field.getAttribute('aria-invalid'), 'true');
    const id = await field.getAttribute('aria-describedby');
    const said = await page.evaluate((ids) => ids.split(' ').map((i) => document.getElementById(i).textContent).join(' '), id);
    holds(/unit/.test(said), said);
    await shows(t, status(page, 'How much to make', 'Filling or batter, make'), '×');
    await field.fill('380 g');
    await t.settled(page);
    holds(await field.getAttribute('aria-invalid') !== 'true', 'still marked');
  });
  await t.check('a thickness without an amount says what it takes', async () => {
    await dough.getByLabel('Dough there is').fill('');
    await dough.getByLabel('Thickness wanted').fill('3 mm');
    await shows(t, status(page, 'Dough', 'Pressed to'), '3 mm');
    await shows(t, status(page, 'Dough', 'Dough'), ' g (');
  });
  await t.check('US measures come first when chosen, with metric beside them', async () => {
    await page.getByRole('radio', { name: 'US' }).check();
    await shows(t, status(page, 'My pan', 'Holds to the brim'), 'cups (', ' l)');
    await page.getByRole('radio', { name: 'Metric' }).check();
    await shows(t, status(page, 'My pan', 'Holds to the brim'), ' l (', 'cups)');
  });
  await page.context().close();
}

async function ownSizes(t, program) {
  const page = await t.open('page', devices.desktop);
  const mine = region(page, 'My pan');
  await t.check('another pan of the catalogue is chosen by name', async () => {
    await mine.getByLabel('Pan', { exact: true }).selectOption('Quarter sheet tray');
    await shows(t, status(page, 'My pan', 'Holds to the brim'), '1.8 l');
  });
  await t.check('own sizes start from the pan chosen and answer as the program does', async () => {
    await mine.getByRole('button', { name: 'Change its sizes' }).click();
    await t.settled(page);
    equal(await mine.getByLabel('Inside length at the rim').inputValue(), '12 1/2 in');
    await mine.getByLabel('Depth', { exact: true }).fill('2½ in');
    const a = answer(program, 'pan', { outline: { kind: 'rectangle', length: '12 1/2 in', width: '9 in', corner_radius: '1/2 in' },
      profile: { depth: '2½ in', base_inset: await mine.getByLabel('Floor narrower by, each side').inputValue() } });
    await shows(t, status(page, 'My pan', 'Holds to the brim'), `${round(a.brim_volume_ml / 1000, 2)} l`);
  });
  for (const [shape, fills] of [
    ['Round', { 'Inside diameter at the rim': '20 cm', Depth: '6 cm' }],
    ['Oval', { 'Inside length at the rim': '28 cm', 'Inside width at the rim': '20 cm', Depth: '5 cm' }],
    ['Many straight sides', { 'Number of sides': '6', 'Across, from side to side': '20 cm', Depth: '6 cm' }],
    ['Fluted', { 'Largest inside diameter': '24 cm', 'Number of flutes': '40', 'Depth of a flute': '6 mm', Depth: '3 cm' }],
    ['Ring with a core', { 'Outer diameter, inside the wall': '24 cm', 'Diameter of the core': '8 cm', Depth: '6 cm' }],
    ['Freeform', { 'Corners in order round the rim': '0 cm, 0 cm; 30 cm, 0 cm; 30 cm, 10 cm; 10 cm, 10 cm; 10 cm, 25 cm; 0 cm, 25 cm',
      Depth: '5 cm' }]]) {
    await t.check(`a pan by own sizes: ${shape}`, async () => {
      await mine.getByLabel('Shape from above').selectOption(shape);
      await t.settled(page);
      for (const [label, value] of Object.entries(fills)) await mine.getByLabel(label, { exact: true }).fill(value);
      await shows(t, status(page, 'My pan', 'Holds to the brim'), ' l (');
      equal(await mine.locator('[aria-invalid=true]').count(), 0);
    });
    await t.shootWhole(page, `own-${shape.split(' ')[0].toLowerCase()}`);
  }
  await t.check('sides that cross are refused at the field, and the picture waits', async () => {
    await mine.getByLabel('Corners in order round the rim').fill('0 cm, 0 cm; 30 cm, 30 cm; 30 cm, 0 cm; 0 cm, 30 cm');
    await t.settled(page);
    equal(await mine.getByLabel('Corners in order round the rim').getAttribute('aria-invalid'), 'true');
    await shows(t, region(page, 'In my pan'), 'Once my pan is complete');
  });
  await t.check('nothing went wrong with own sizes', () => equal(page.wrongs, []));
  await page.context().close();
}

export async function run(t) {
  const program = join(t.build, 'native', 'tinwright');
  for (const [name, device] of Object.entries(devices)) await workedExamples(t, program, name, device);
  await typing(t);
  await ownSizes(t, program);
}
