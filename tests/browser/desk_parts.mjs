// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What the suites of the desk share: its parts by roles and labels, and what it says.
import { readFileSync } from 'node:fs';
import { equal, holds } from './harness.mjs';

export const press = (page, name) => page.getByRole('button', { name, exact: true }).click();
export const nameField = (page) => page.getByLabel('Its name', { exact: true });
export const desk = (page) => page.getByRole('region', { name: 'This job', exact: true });
export const message = (page) => page.getByRole('complementary', { name: 'Message' });
export const nameOf = async (t, page) => {
  await t.settled(page);
  const piece = page.getByRole('radio', { name: 'The recipe', exact: true });  // of a narrow page
  if (await piece.count()) await piece.check();
  await t.settled(page);
  return nameField(page).inputValue();
};

export async function deskSays(t, page, pattern) {
  await t.rested(page);
  const said = await desk(page).getByRole('note').textContent();
  holds(pattern.test(said), said);
}

export async function messageSays(page, pattern) {
  await message(page).filter({ hasText: pattern }).waitFor();  // an older message may still stand there
}

export const wentWell = (t, page, what) => t.check(`nothing went wrong with ${what}`, async () => {
  equal(page.wrongs, []);
  equal(await page.evaluate(() => window.seen.violations), []);
  await page.context().close();
});

/** What a button saves. */
export async function saved(page, button) {
  const [download] = await Promise.all([page.waitForEvent('download'), press(page, button)]);
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') };
}
