// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What is worked out in the worker: the page never waits for it, says what is out of date, shows how far it has come, and
// says so when nobody is there to do it.
import { desk, deskSays, press } from './desk_parts.mjs';
import { devices, equal, holds } from './harness.mjs';

const kOld = /from before the last change/;
const kBusy = 8000;  // [ms] that the worker is made to do nothing else

const region = (page, name) => page.getByRole('region', { name, exact: true });
const oven = (page) => region(page, 'In the oven');
const airField = (page) => page.getByLabel('Air temperature').first();
const counts = (page) => page.evaluate(() => ({ ...window.__tinwright.errands }));

/** Holds the worker's module back until the returned function is called. */
async function heldBack(page) {
  let release;
  const held = new Promise((resolve) => { release = resolve; });
  await page.route('**/worker.wasm', async (route) => {
    await held;
    await route.continue();
  });
  return release;
}

async function never(t) {
  const page = await t.open('page', devices.desktop, { view: 'job' });
  await t.check('the oven is worked out in a worker', async () => {
    await t.rested(page);
    equal(page.workers().length, 1);
    equal((await counts(page)).open, 0);
    holds((await counts(page)).sent >= 1, 'no errand was sent');
  });
  await t.check('typing never waits for the oven', async () => {
    const field = airField(page);
    const [worker] = page.workers();
    const busy = worker.evaluate((ms) => { for (const end = Date.now() + ms; Date.now() < end;); }, kBusy).catch(() => {});
    const start = Date.now();
    for (const text of ['201 C', '202 C', 'nonsense']) {
      await field.fill(text);
      await page.waitForTimeout(500);  // the pause is over, and the next errand waits for the worker
      await t.settled(page);
    }
    equal(await field.getAttribute('aria-invalid'), 'true');  // it is judged at once
    await field.fill('203 C');
    await page.waitForTimeout(500);
    equal((await counts(page)).open, 1);
    holds(Date.now() - start < kBusy, 'it took as long as the worker');
    await busy;
    await t.rested(page);
  });
  await t.check('a reading of the scale bakes nothing anew', async () => {
    const { sent } = await counts(page);
    await page.getByRole('textbox', { name: /should read/ }).first().fill('100 g');
    await page.waitForTimeout(500);
    await t.rested(page);
    equal((await counts(page)).sent, sent);
  });
  await t.check('nothing went wrong meanwhile', () => equal(page.wrongs, []));
  await page.context().close();
}

async function slow(t) {
  let release;
  const page = await t.open('page', devices.tablet, { before: async (fresh) => { release = await heldBack(fresh); } });
  const bar = oven(page).getByRole('progressbar');
  await t.check('what takes long shows how far it has come, and can be stopped', async () => {
    await bar.waitFor();
    equal(await bar.getAttribute('aria-valuenow'), '0');
    await t.shoot(page, 'oven-working');
    await oven(page).getByRole('button', { name: 'Stop' }).click();
    await oven(page).getByText('you stopped it').waitFor();
    equal(await bar.count(), 0);
    equal((await counts(page)).open, 0);
  });
  await t.check('it can be taken up again, and then answers', async () => {
    await oven(page).getByRole('button', { name: 'Work it out' }).click();
    await bar.waitFor();
    release();
    await t.rested(page);
    equal(await bar.count(), 0);
    holds(/min/.test(await oven(page).getByRole('status').first().textContent()), 'no answer');
  });
  await t.check('what is out of date says so until the new answer is there', async () => {
    await page.route('**/worker.wasm', (route) => route.continue());
    await airField(page).fill('211 C');
    await oven(page).getByText(kOld).waitFor();
    await t.rested(page);
    equal(await oven(page).getByText(kOld).count(), 0);
  });
  await t.check('nothing went wrong meanwhile', () => equal(page.wrongs, []));
  await page.context().close();
}

async function overtaken(t) {
  let release;
  const page = await t.open('page', devices.desktop, { view: 'job',
    before: async (fresh) => { release = await heldBack(fresh); } });
  await t.check('an answer that was overtaken is never shown', async () => {
    const field = airField(page);
    await page.waitForTimeout(300);
    await field.fill('150 C');
    await page.waitForTimeout(700);  // sent, and waits behind the first, which is cut off
    await field.fill('240 C');
    await page.waitForTimeout(700);
    release();
    await t.rested(page);
    const late = await page.getByRole('region', { name: /^In: / }).first().textContent();
    await press(page, 'Take back');
    await t.rested(page);
    holds(late !== await page.getByRole('region', { name: /^In: / }).first().textContent(), 'the same for both');
    await press(page, 'Do again');
    await t.rested(page);
    equal(await page.getByRole('region', { name: /^In: / }).first().textContent(), late);
    holds((await counts(page)).cutOff >= 1, 'none was cut off');
  });
  await t.check('nothing went wrong meanwhile', () => equal(page.wrongs, []));
  await page.context().close();
}

async function missing(t) {
  let isGone = true;
  const page = await t.open('page', devices.phone, { before: (fresh) => fresh.route('**/worker.js', (route) => (
    isGone ? route.fulfill({ status: 404, body: '' }) : route.continue())) });
  await t.check('a worker that does not come is told, and the rest of the page answers', async () => {
    await oven(page).getByText('did not start').waitFor();
    holds(/g|kg/.test(await region(page, 'How much to make').textContent()), 'no amounts');
    await t.shoot(page, 'oven-missing');
  });
  await t.check('trying again works once it is there', async () => {
    isGone = false;
    await oven(page).getByRole('button', { name: 'Try again' }).click();
    await t.rested(page);
    holds(/min/.test(await oven(page).getByRole('status').first().textContent()), 'no answer');
  });
  await t.check('a worker that dies is replaced', async () => {
    await t.show(page, 'job');
    await t.rested(page);
    isGone = true;
    await press(page, 'Read a recipe');
    await page.getByLabel('The recipe’s text, with amounts and steps').fill('Slab\n200 g oats\n100 g butter');
    const died = page.workers().map((worker) => worker.evaluate(() => setTimeout(() => { throw new Error('made up'); })));
    await Promise.all(died);
    await page.waitForTimeout(200);
    await page.getByRole('button', { name: 'Read', exact: true }).click();
    await deskSays(t, page, /could not be read: a part of the page did not start/);
    isGone = false;
    await t.show(page, 'job');
    holds(await desk(page).getByRole('button').count() > 3, 'the page is gone');
  });
  await page.context().close();
}

export async function run(t) {
  await never(t);
  await slow(t);
  await overtaken(t);
  await missing(t);
}
