// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What the device keeps: the job from one visit to the next, and what becomes of it when storage fails, a record is
// damaged, a link comes, or two tabs are open.
import { message, messageSays, nameField, nameOf, press } from './desk_parts.mjs';
import { devices, equal, holds } from './harness.mjs';

const overtaken = (page) => page.getByRole('dialog', { name: 'This job was changed in another tab' });

async function rename(t, page, name) {
  await nameField(page).fill(name);
  await t.settled(page);
}

/** A tab behind another one is in no hurry to draw. */
async function becomes(t, page, name) {
  for (let tries = 0; tries < 40 && await nameOf(t, page) !== name; ++tries) await page.waitForTimeout(50);
  equal(await nameOf(t, page), name);
}

/** What stands in the store: every key, with texts as texts. */
const stored = (page) => page.evaluate(() => new Promise((resolve, reject) => {
  const request = indexedDB.open('tinwright');
  request.onerror = () => reject(request.error);
  request.onsuccess = () => {
    const found = {};
    const text = (bytes) => (bytes instanceof Uint8Array ? new TextDecoder().decode(bytes) : String(bytes));
    const walk = request.result.transaction('jobs').objectStore('jobs').openCursor();
    walk.onsuccess = () => {
      const at = walk.result;
      if (!at) {
        request.result.close();
        return resolve(found);
      }
      found[at.key] = Array.isArray(at.value) ? at.value.map(text) : text(at.value.text ?? at.value);
      at.continue();
    };
  };
}));

const put = (page, key, value) => page.evaluate(([itsKey, itsValue]) => new Promise((resolve, reject) => {
  const request = indexedDB.open('tinwright');
  request.onsuccess = () => {
    const transaction = request.result.transaction('jobs', 'readwrite');
    const bytes = (text) => new TextEncoder().encode(text);
    transaction.objectStore('jobs').put(itsValue.text === undefined ? itsValue
      : { ...itsValue, text: bytes(itsValue.text) }, itsKey);
    transaction.oncomplete = () => { request.result.close(); resolve(); };
    transaction.onabort = () => reject(transaction.error);
  };
}), [key, value]);

async function keepsIt(page, part) {
  for (let tries = 0; tries < 40; ++tries) {
    if ((await stored(page)).kept?.includes(part)) return;
    await page.waitForTimeout(50);
  }
  throw new Error(`"${part}" is not kept`);
}

async function reload(t, page) {
  await page.reload();
  await t.ready(page);
}

async function visits(t) {
  const page = await t.open('page', devices.desktop, { view: 'job' });
  await t.check('a first visit keeps nothing until something is entered', async () => {
    await page.waitForTimeout(500);
    equal(Object.keys(await stored(page)), []);
  });
  await t.check('a job is there again at the next visit, and nothing is told', async () => {
    await rename(t, page, 'Kept pie');
    await keepsIt(page, 'Kept pie');
    await reload(t, page);
    equal(await nameOf(t, page), 'Kept pie');
    equal(await message(page).isVisible(), false);
    holds(await page.getByRole('button', { name: 'Take back' }).isDisabled(), 'the example can be gone back to');
  });
  await t.check('what was entered a moment before leaving is kept', async () => {
    await rename(t, page, 'Hurried pie');
    await reload(t, page);
    equal(await nameOf(t, page), 'Hurried pie');
  });
  await t.check('the single pan is kept too, and that it was open', async () => {
    await t.show(page, 'pan');
    const dough = page.getByRole('region', { name: 'Dough', exact: true }).getByLabel('Dough there is');
    await dough.fill('411 g');
    await keepsIt(page, '411 g');
    await reload(t, page);
    equal(await dough.inputValue(), '411 g');
    await t.show(page, 'job');
    equal(await nameOf(t, page), 'Hurried pie');
  });
  await t.check('a link takes its place, and both can be gone back to at a later visit', async () => {
    const other = await t.open('page', devices.desktop, { view: 'job' });
    await rename(t, other, 'Linked pie');
    await press(other, 'Share by link');
    await message(other).waitFor();
    const link = await other.evaluate(() => navigator.clipboard.readText());
    await other.context().close();
    await page.goto('about:blank');
    await page.goto(link);
    await t.ready(page);
    equal(await nameOf(t, page), 'Linked pie');
    await keepsIt(page, 'Linked pie');
    await reload(t, page);
    equal(await nameOf(t, page), 'Linked pie');
    await press(page, 'Take back');
    equal(await nameOf(t, page), 'Hurried pie');
    await press(page, 'Do again');
    equal(await nameOf(t, page), 'Linked pie');
  });
  await t.check('nothing went wrong with visits', async () => {
    equal(page.wrongs, []);
    equal(await page.evaluate(() => window.seen.violations), []);
  });
  await page.context().close();
}

async function damage(t) {
  for (const [what, record] of [['of another kind', { nonsense: 1 }],
    ['cut short', { text: '{"version": 1, "recipe"', tab: '1', stamp: '1' }],
    ['of a newer program', { text: '{"version": 99}', tab: '1', stamp: '1' }]]) {
    await t.check(`a kept job ${what} is put aside, and the page says so and shows its example`, async () => {
      const page = await t.open('page', devices.desktop, { view: 'job' });
      const example = await nameOf(t, page);
      await put(page, 'kept', record);
      await reload(t, page);
      await messageSays(page, /damaged and is put aside.*its example/);
      equal(await nameOf(t, page), example);
      const keys = Object.keys(await stored(page));
      holds(keys.length === 1 && keys[0].startsWith('aside '), keys.join());
      await rename(t, page, 'Goes on');
      await keepsIt(page, 'Goes on');
      equal(page.wrongs, []);
      await page.context().close();
    });
  }
}

async function refusals(t) {
  const ways = {
    'is not there': () => { Object.defineProperty(window, 'indexedDB', { value: undefined }); },
    'is refused': () => {
      IDBFactory.prototype.open = () => { throw new DOMException('no', 'SecurityError'); };
    },
    'never answers': () => { IDBFactory.prototype.open = () => ({}); },
    'is full': () => { IDBObjectStore.prototype.put = function () { this.transaction.abort(); }; },
  };
  for (const [what, way] of Object.entries(ways)) {
    await t.check(`where storage ${what}, the page works and says that nothing is kept`, async () => {
      const page = await t.open('page', devices.tablet, { view: 'job', before: (fresh) => fresh.addInitScript(way) });
      await rename(t, page, 'Unkept pie');
      await messageSays(page, /Nothing is kept on this device.*Save the job as a file/);
      await t.shoot(page, 'nothing-kept');
      await message(page).getByRole('button', { name: 'Close' }).click();
      await rename(t, page, 'Unkept pie again');
      await page.waitForTimeout(500);
      equal(await message(page).isVisible(), false);
      equal(await nameOf(t, page), 'Unkept pie again');
      equal(page.wrongs, []);
      await page.context().close();
    });
  }
}

async function tabs(t) {
  const first = await t.open('page', devices.desktop, { view: 'job' });
  await rename(t, first, 'First pie');
  await keepsIt(first, 'First pie');
  const second = await t.open('page', devices.desktop, { view: 'job', inside: first.context() });
  await t.check('a tab says when another has changed the job, and shows that one if wanted', async () => {
    await rename(t, second, 'Second pie');
    await overtaken(first).waitFor();
    await t.shoot(first, 'other-tab');
    await overtaken(first).getByRole('button', { name: 'Show the other tab’s job' }).click();
    await becomes(t, first, 'Second pie');
    await first.waitForTimeout(600);
    equal([await overtaken(first).count(), await overtaken(second).count()], [0, 0]);
  });
  await t.check('what stood here can be taken back to', async () => {
    await press(first, 'Take back');
    await becomes(t, first, 'First pie');
    await overtaken(second).waitFor();
    await overtaken(second).getByRole('button', { name: 'Keep what is here' }).click();
    await keepsIt(second, 'Second pie');
    await overtaken(first).waitFor();
    await overtaken(first).getByRole('button', { name: 'Show the other tab’s job' }).click();
    await becomes(t, first, 'Second pie');
  });
  await t.check('nothing went wrong with two tabs', () => equal([...first.wrongs, ...second.wrongs], []));
  await first.context().close();

  const deaf = (fresh) => fresh.addInitScript(() => { delete window.BroadcastChannel; });
  const here = await t.open('page', devices.desktop, { view: 'job', before: deaf });
  const there = await t.open('page', devices.desktop, { view: 'job', before: deaf, inside: here.context() });
  await t.check('tabs that do not hear each other never overwrite each other unasked', async () => {
    await rename(t, here, 'Here');
    await keepsIt(here, 'Here');
    await rename(t, there, 'There');
    await overtaken(there).waitFor();
    await keepsIt(here, 'Here');
    await there.keyboard.press('Escape');
    await rename(t, there, 'There again');
    await overtaken(there).getByRole('button', { name: 'Keep what is here' }).click();
    await keepsIt(there, 'There again');
    holds((await stored(there)).before.some((text) => text.includes('"Here"')), 'the other one is lost');
  });
  await t.check('what is left undecided is still there at the next visit', async () => {
    await rename(t, here, 'Undecided');
    await overtaken(here).waitFor();
    await here.close({ runBeforeUnload: true });
    await there.waitForTimeout(300);
    await reload(t, there);
    equal(await nameOf(t, there), 'There again');
    await press(there, 'Take back');
    equal(await nameOf(t, there), 'Undecided');
  });
  await there.context().close();
}

export async function run(t) {
  await visits(t);
  await damage(t);
  await refusals(t);
  await tabs(t);
}
