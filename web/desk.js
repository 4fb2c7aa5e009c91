// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Grants the page's wishes (app/view/host.h): files, paper, links, recipes; and keeps its job between visits.
import { tell, untell } from './elements.js';
import { chooseFile, saveFile, savePicture } from './files.js';
import { keepNow, noteChanges, putAway, restore } from './keeping.js';
import { jobInAddress, shareLink } from './link.js';
import { printCard } from './print.js';
import { askForRecipe } from './recipe.js';

const kJobFile = 0, kRecipe = 1, kLink = 3;

let page = null;

// In the order of WishKind.
const grants = [
  saveFile,
  printCard,
  shareLink,
  () => chooseFile('.json,application/json', (text) => page.takeIn(kJobFile, text)),
  () => askForRecipe((text) => page.takeIn(kRecipe, text), page.isRefusal),
  savePicture,
];

/** Grants a wish, {kind, name, type, text}; `text` holds bytes. */
export async function grant(wish) {
  untell();
  try {
    await grants[wish.kind](wish);
  } catch (error) {
    console.error(error);
    tell(`That did not work in this browser (${error.message}). What you entered is still here.`);
  }
}

async function openLink() {
  const text = await jobInAddress();
  if (!text) return;
  await putAway();
  page.takeIn(kLink, text);
}

/** Before the first frame: what the last visit left, then what the address brings. */
export async function startDesk(itsPage) {
  page = itsPage;
  await restore(page);
  await openLink();
  window.addEventListener('hashchange', openLink);
  // A file that misses a dialog must not take the page's place.
  for (const kind of ['dragover', 'drop']) window.addEventListener(kind, (event) => event.preventDefault());
}

export { keepNow, noteChanges };
