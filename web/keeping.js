// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Keeps the job on this device while the cook works, gives it back at the next visit, and notices other tabs that do the
// same.
import { ask, make, tell } from './elements.js';
import { isOvertaken, isRecord, keep, leave, putAside, readKept, remember } from './store.js';

const kCalm = 300;  // [ms] without a change until it is kept
const kKept = 2;    // in app/view/host.h

const others = 'BroadcastChannel' in window ? new BroadcastChannel('tinwright') : null;
let page = null;
let known = '';           // the stamp of what this tab read or wrote last
let keptEdition = -1;     // of the page, when it was kept
let seenEdition = -1;
let hasWork = false;      // something the cook made, not the example of a first visit
let isRefusalTold = false;
let isAsking = false;
let timer = 0;

function tellNothingKept() {
  if (!isRefusalTold) {
    tell('Nothing is kept on this device: its storage is full or switched off for this page. Save the job as a file ' +
      'before you leave.');
  }
  isRefusalTold = true;
}

async function setAside(record, hadBefore) {
  tell(`What this device had kept is damaged and is put aside. The page starts with ${
    hadBefore ? 'the job before it' : 'its example'}.`);
  await putAside(record);
}

/** Brings back the last visit's job: what was put away for it comes first, so that it can be taken back. */
export async function restore(itsPage) {
  page = itsPage;
  try {
    const { kept, before } = await readKept();
    for (const text of before) page.takeIn(kKept, text);
    hasWork = kept !== undefined || before.length > 0;
    const isSound = isRecord(kept) && page.takeIn(kKept, kept.text);
    if (isSound) known = kept.stamp;
    else if (kept !== undefined) await setAside(kept, before.length > 0);
  } catch {
    tellNothingKept();
  }
  keptEdition = seenEdition = page.edition();
  watch();
}

/** What is on the page is put away before something else takes its place. */
export async function putAway() {
  if (!hasWork) return;
  try {
    await remember(page.kept());
  } catch {
    tellNothingKept();
  }
}

/** Keeps what is on the page. False when it cannot; a job that another tab was quicker than is put away, so it is safe. */
export async function keepNow(insists = false) {
  clearTimeout(timer);
  timer = 0;
  const edition = page.edition();
  if (edition === keptEdition && !insists) return true;
  try {
    const stamp = await keep(page.kept(), known, insists);
    if (stamp === null) {
      if (!document.hidden) await askWhich();
      return true;
    }
    known = stamp;
    keptEdition = edition;
    hasWork = true;
    isRefusalTold = false;
    others?.postMessage('kept');
    return true;
  } catch {
    tellNothingKept();
    return false;
  }
}

/** Two tabs have gone apart. Neither job is lost, whatever is answered. */
async function askWhich() {
  if (isAsking) return;
  isAsking = true;
  const answer = await ask('This job was changed in another tab', [make('p', {},
    'Another tab or window has kept other changes since. Which of the two should go on here? The other one can be taken ' +
    'back to.')], [['theirs', 'Show the other tab’s job'], ['ours', 'Keep what is here']]);
  isAsking = false;
  if (answer === 'ours') await keepNow(true);
  if (answer !== 'theirs') return;
  const { kept } = await readKept();
  if (!isRecord(kept) || !page.takeIn(kKept, kept.text)) return;
  known = kept.stamp;
  keptEdition = seenEdition = page.edition();
}

async function look() {
  if (document.hidden || isAsking) return;
  try {
    if (await isOvertaken(known)) await askWhich();
  } catch {
    tellNothingKept();
  }
}

/** After each frame: a change is kept once the cook has paused. */
export function noteChanges() {
  const edition = page.edition();
  if (edition === seenEdition) return;
  seenEdition = edition;
  clearTimeout(timer);
  timer = setTimeout(() => keepNow(), kCalm);
}

function watch() {
  document.addEventListener('visibilitychange', () => {
    if (document.hidden) keepNow();
    else look();
  });
  window.addEventListener('pagehide', () => {
    if (page.edition() !== keptEdition) leave(page.kept(), known).catch(() => {});  // nobody is there to be told
  });
  others?.addEventListener('message', look);
}
