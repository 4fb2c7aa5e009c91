// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Taking back, files, and recipes that are read in, by roles and labels.
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ask } from '../command/questions.mjs';
import { deskSays, message, messageSays, nameField, nameOf, press, saved, wentWell } from './desk_parts.mjs';
import { devices, equal, holds } from './harness.mjs';

async function steps(t) {
  const page = await t.open('page', devices.desktop, { view: 'job' });
  await t.check('a whole recipe: an edit is taken back and done again, letters of one field in one step', async () => {
    const before = await nameField(page).inputValue();
    holds(await page.getByRole('button', { name: 'Take back' }).isDisabled(), 'something to take back already');
    await nameField(page).press('End');
    await nameField(page).pressSequentially('!?');
    await press(page, 'Take back');
    equal(await nameOf(t, page), before);
    await press(page, 'Do again');
    equal(await nameOf(t, page), `${before}!?`);
    await press(page, 'Take back');
  });
  await t.check('one pan: an edit is taken back and done again', async () => {
    await t.show(page, 'pan');
    const dough = page.getByRole('region', { name: 'Dough', exact: true }).getByLabel('Dough there is');
    const before = await dough.inputValue();
    await dough.fill('411 g');
    await t.settled(page);
    await press(page, 'Take back');
    await t.settled(page);
    equal(await dough.inputValue(), before);
    await press(page, 'Do again');
    await t.settled(page);
    equal(await dough.inputValue(), '411 g');
  });
  await wentWell(t, page, 'taking back');
}

/** A path, or a name and what stands in the file. */
async function openFile(t, page, name, text) {
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press(page, 'Open a job file')]);
  await chooser.setFiles(text === undefined ? name
    : { name, mimeType: 'application/json', buffer: Buffer.from(text) });
  await page.waitForTimeout(100);  // the file is read on the browser's own time
  await t.settled(page);
}

async function files(t) {
  const page = await t.open('page', devices.desktop, { view: 'job' });
  let file;
  await t.check('a job saved as a file opens again as the same job', async () => {
    await nameField(page).fill('Quince crème pie ½');
    await t.settled(page);
    file = await saved(page, 'Save as a file');
    holds(/^[a-z0-9-]+\.json$/.test(file.name), file.name);
    equal(JSON.parse(file.text).recipe.name, 'Quince crème pie ½');
    await press(page, 'Begin an empty job');
    holds(await nameOf(t, page) !== 'Quince crème pie ½', 'not emptied');
    await openFile(t, page, 'pie.json', file.text);
    equal(await nameOf(t, page), 'Quince crème pie ½');
    await deskSays(t, page, /job is open/);
    equal((await saved(page, 'Save as a file')).text, file.text);
  });
  await t.check('a file of two bytes a letter opens too', async () => {
    await press(page, 'Begin an empty job');
    await openFile(t, page, 'pie.json', Buffer.from(`\ufeff${file.text}`, 'utf16le'));
    equal(await nameOf(t, page), 'Quince crème pie ½');
  });
  for (const [what, text, pattern] of [
    ['damaged', '{\n"version": 1,\n"recipe": {,\n', /cannot be opened.*line 3/],
    ['newer', '{\n "version": 99\n}', /newer version.*line 2/],
    ['foreign', 'not a job at all', /cannot be opened.*line 1/]]) {
    await t.check(`a ${what} file is refused with its line, and the work stays`, async () => {
      await openFile(t, page, `${what}.json`, text);
      await deskSays(t, page, pattern);
      await deskSays(t, page, /still here/);
      equal(await nameOf(t, page), 'Quince crème pie ½');
    });
  }
  await t.check('a file that is too large is refused in words', async () => {
    const path = join(t.build, 'large.json');
    writeFileSync(path, Buffer.alloc(16 * 1024 * 1024 + 1, 32));
    await openFile(t, page, path);
    rmSync(path);
    await messageSays(page, /too large.*17 MB.*at most 16 MB/);
    await message(page).getByRole('button', { name: 'Close' }).click();
    equal(await message(page).isVisible(), false);
  });
  await t.check('the amounts are saved as CSV and Markdown, the card as HTML', async () => {
    equal((await saved(page, 'Save the amounts (CSV)')).name.endsWith('.csv'), true);
    equal((await saved(page, 'Save the amounts (Markdown)')).name.endsWith('.md'), true);
    holds((await saved(page, 'Save the card')).text.toLowerCase().startsWith('<!doctype html>'), 'no page');
  });
  await wentWell(t, page, 'files');
}

const kPasted = `Plain tart

For the crust
200 g plain flour
100 g butter

For the filling
500 g soft cheese
3 eggs

Bake in a 23 cm tin at 180 C for 40 minutes.`;

async function recipes(t) {
  const page = await t.open('page', devices.tablet, { view: 'job' });
  const dialog = page.getByRole('dialog', { name: 'Read a recipe' });
  const field = dialog.getByRole('textbox');
  const read = (button) => dialog.getByRole('button', { name: button, exact: true }).click();
  await t.check('the dialog starts in its field, and leaves the focus where it was', async () => {
    await press(page, 'Read a recipe');
    await field.waitFor();
    await t.shoot(page, 'recipe-dialog');
    for (const leave of [() => page.keyboard.press('Escape'), () => read('Cancel')]) {
      equal(await field.evaluate((element) => element === document.activeElement), true);
      await leave();
      await dialog.waitFor({ state: 'detached' });
      equal(await page.evaluate(() => document.activeElement.textContent), 'Read a recipe');
      await page.keyboard.press('Enter');
      await field.waitFor();
    }
  });
  await t.check('nothing pasted is told in the dialog', async () => {
    await read('Read');
    holds(/nothing to read yet/.test(await dialog.getByRole('alert').textContent()), 'not told');
  });
  await t.check('what is no recipe is refused, the job stays, and the text is kept to be put right', async () => {
    const before = await nameField(page).inputValue();
    await field.fill('....');
    await read('Read');
    await deskSays(t, page, /cannot be read.*still here/);
    equal(await nameOf(t, page), before);
    await press(page, 'Read a recipe');
    equal(await field.inputValue(), '....');
  });
  await t.check('a file is read at once, chosen or dropped', async () => {
    const file = { name: 'a.txt', mimeType: 'text/plain', buffer: Buffer.from('??') };
    await dialog.getByLabel('Or a file').setInputFiles(file);
    await dialog.waitFor({ state: 'detached' });
    await deskSays(t, page, /cannot be read/);
    await press(page, 'Read a recipe');
    const dropped = await page.evaluateHandle(() => {
      const data = new DataTransfer();
      data.items.add(new File(['??'], 'b.html', { type: 'text/html' }));
      return data;
    });
    await dialog.dispatchEvent('drop', { dataTransfer: dropped });
    await dialog.waitFor({ state: 'detached' });
  });
  if (ask(join(t.build, 'native', 'tinwright'), 'read', kPasted, '--json').status !== 0) {
    console.log('skip a pasted recipe becomes the job: this program reads none yet');
  } else {
    await t.check('a pasted recipe becomes the job', async () => {
      await press(page, 'Read a recipe');
      await field.fill(kPasted);
      await read('Read');
      await deskSays(t, page, /recipe is read/);
      equal(await nameOf(t, page), 'Plain tart');
    });
  }
  await wentWell(t, page, 'recipes');
}

export async function run(t) {
  await steps(t);
  await files(t);
  await recipes(t);
}
