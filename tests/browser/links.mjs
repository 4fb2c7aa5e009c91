// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A job in a link, by roles and labels: made, passed on, followed, and damaged on its way.
import { deflateRawSync } from 'node:zlib';
import { deskSays, messageSays, nameField, nameOf, press, wentWell } from './desk_parts.mjs';
import { devices, equal, holds } from './harness.mjs';

const kLink = /#job=[A-Za-z0-9_-]+$/;

export async function run(t) {
  const page = await t.open('page', devices.desktop, { view: 'job' });
  await nameField(page).fill('Shared pie');
  await t.settled(page);
  let link = '';
  await t.check('a link is copied, with the job behind its #', async () => {
    await press(page, 'Share by link');
    await messageSays(page, /copied/);
    link = await page.evaluate(() => navigator.clipboard.readText());
    holds(link.startsWith(t.addresses.page) && kLink.test(link), link.slice(0, 80));
  });
  const fragment = () => link.slice(link.indexOf('#'));
  await t.check('the link opens the job elsewhere, and can be taken back', async () => {
    const other = await t.open('page', devices.phone, { view: '', fragment: fragment() });
    equal(await nameOf(t, other), 'Shared pie');
    equal(await other.evaluate(() => location.hash), '');
    await deskSays(t, other, /job in the link is open/);
    await press(other, 'Take back');
    holds(await nameOf(t, other) !== 'Shared pie', 'not taken back');
    equal(other.wrongs, []);
    await other.context().close();
  });
  const follow = async (hash) => {
    await page.evaluate((to) => { location.hash = to; }, hash);
    await page.waitForTimeout(100);
    await t.settled(page);
  };
  await t.check('a link followed while the page is open opens too', async () => {
    await nameField(page).fill('Mine');
    await t.settled(page);
    await follow(fragment());
    equal(await nameOf(t, page), 'Shared pie');
    await press(page, 'Take back');
    equal(await nameOf(t, page), 'Mine');
  });
  const packed = (bytes) => `#job=${deflateRawSync(bytes).toString('base64url')}`;
  for (const [what, hash, pattern] of [
    ['cut', () => fragment().slice(0, -40), /link is damaged/],
    ['mistyped', () => '#job=äö%', /link is damaged/],
    ['empty', () => '#job=', /link is damaged/],
    ['bursting', () => packed(Buffer.alloc(3 * 1024 * 1024, 32)), /too large/]]) {
    await t.check(`a ${what} link is told, and the work stays`, async () => {
      await follow(hash());
      await messageSays(page, pattern);
      equal(await nameOf(t, page), 'Mine');
    });
  }
  await t.check('a link that holds no job is told with its line', async () => {
    await follow(packed('{"version": 7}'));
    await deskSays(t, page, /link cannot be opened.*newer.*line 1/);
    equal(await nameOf(t, page), 'Mine');
  });
  await t.check('a device that passes things on is asked to', async () => {
    await page.evaluate(() => { navigator.share = async (what) => { window.passed = what; }; });
    await press(page, 'Share by link');
    await messageSays(page, /passed on/);
    holds(kLink.test(await page.evaluate(() => window.passed.url)), 'no link');
    await page.evaluate(() => { navigator.share = undefined; });
  });
  await t.check('without a clipboard the link is there to be copied', async () => {
    await page.evaluate(() => { navigator.clipboard.writeText = () => Promise.reject(new Error('no')); });
    await press(page, 'Share by link');
    const dialog = page.getByRole('dialog', { name: 'The link to this job' });
    holds(kLink.test(await dialog.getByLabel('The link').inputValue()), 'no link');
    await dialog.getByRole('button', { name: 'Close' }).click();
  });
  await t.check('a long link says so', async () => {
    const noise = Array.from({ length: 9000 }, (_, i) => (i * i * 7919 % 65521).toString(36)).join('').slice(0, 20000);
    await page.getByLabel('Where it comes from').fill(noise);
    await t.settled(page);
    await page.evaluate(() => { navigator.clipboard.writeText = async () => {}; });
    await press(page, 'Share by link');
    await messageSays(page, /characters long.*8,000.*as a file/);
  });
  await wentWell(t, page, 'links');
}
