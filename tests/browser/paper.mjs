// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The bench card on paper, as PDF files.
import { join } from 'node:path';
import { press, saved } from './desk_parts.mjs';
import { devices, equal, holds } from './harness.mjs';

/** Makes a wish as C++ does. */
const wish = (page, kind, name, type, text) => page.evaluate((given) => {
  const module = window.Module;
  const place = (words) => {
    const bytes = new TextEncoder().encode(words);
    const at = module._page_alloc(bytes.length + 1);
    module.HEAPU8.set(bytes, at);
    module.HEAPU8[at + bytes.length] = 0;
    return [at, bytes.length];
  };
  const [at, length] = place(given[3]);
  module.onWish(given[0], place(given[1])[0], place(given[2])[0], at, length);
}, [kind, name, type, text]);

const pagesOf = (pdf) => pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
const textIn = (html) => html.replace(/<(title|style)>.*?<\/\1>/gs, '').replace(/<[^>]*>/g, '').replace(/\s+/g, '')
  .replace(/&#39;/g, '\'').replace(/&quot;/g, '"').replace(/&lt;/g, '<').replace(/&gt;/g, '>').replace(/&amp;/g, '&');

const kMadeUpCard = `<!doctype html><html lang="en"><head><title>Made up</title><style>
@page { size: A5; margin: 10mm } :root { --c: rgb(1, 2, 3) } body { color: var(--c); margin: 0 }
h1 { font-size: 20pt } .next { break-before: page } @media screen { body { color: red } }</style></head>
<body onload="window.ran = 1"><h1>Card &amp; paper</h1><p style="color: rgb(9, 8, 7)">styled</p>
<img src="x:" onerror="window.ran = 2">
<script>window.ran = 3</script><p class="next">page two</p></body></html>`;

export async function run(t) {
  const page = await t.open('page', devices.desktop, { view: 'job', before: (fresh) => fresh.addInitScript(() => {
    window.printed = [];
    window.print = () => window.printed.push(document.title);
  }) });
  const card = page.locator('#card');
  await t.check('the card alone is printed, under the job\'s name', async () => {
    const file = await saved(page, 'Save the card');
    await press(page, 'Print the bench card');
    await card.waitFor({ state: 'attached' });
    equal(await page.evaluate(() => window.printed), [file.name.replace('.html', '')]);
    equal(await card.isVisible(), false);
    await page.emulateMedia({ media: 'print' });
    equal(await page.locator('#mirror').isVisible(), false);  // the card has a main part of its own
    equal((await card.evaluate((host) => host.shadowRoot.querySelector('body').textContent)).replace(/\s+/g, ''),
      textIn(file.text));
    holds(pagesOf(await page.pdf({ path: join(t.shots, 'card.pdf'), preferCSSPageSize: true })) >= 1, 'no page');
  });
  await t.check('a card brings its own style and page size, and runs nothing', async () => {
    await page.emulateMedia({ media: 'screen' });
    await wish(page, 1, 'made-up', 'text/html', kMadeUpCard);
    await page.waitForFunction(() => window.printed.length === 2);
    await page.emulateMedia({ media: 'print' });
    const colours = await card.evaluate((host) => ['body', 'h1', 'p'].map((tag) =>
      getComputedStyle(host.shadowRoot.querySelector(tag)).color));
    equal(colours, ['rgb(1, 2, 3)', 'rgb(1, 2, 3)', 'rgb(9, 8, 7)']);
    const pdf = await page.pdf({ path: join(t.shots, 'made-up.pdf'), preferCSSPageSize: true });
    equal(pagesOf(pdf), 2);
    const [, width, height] = /MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/.exec(pdf.toString('latin1')).map(Number);
    equal([Math.round(width), Math.round(height)], [420, 595]);  // A5 in points
    equal(await page.evaluate(() => window.ran), undefined);
    await page.emulateMedia({ media: 'screen' });
  });
  await t.check('the card goes when the cook comes back', async () => {
    await page.mouse.click(5, 5);
    equal(await card.count(), 0);
    holds(/Tinwright/.test(await page.title()), 'the title is still the card\'s');
  });
  await t.check('printed without a card, the page comes as words', async () => {
    await page.emulateMedia({ media: 'print' });
    equal(await page.locator('#canvas').isVisible(), false);
    const pages = pagesOf(await page.pdf({ path: join(t.shots, 'words.pdf') }));
    holds(pages >= 1 && pages <= 20, `${pages} pages`);
    await page.emulateMedia({ media: 'screen' });
  });
  await t.check('nothing went wrong with paper', async () => {
    equal(page.wrongs.filter((wrong) => !/x:/.test(wrong)), []);
    await page.context().close();
  });
}
