// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What this device keeps between visits, in one IndexedDB store: "kept", the job as it was last; "before", the jobs that
// were put away for another one; "left", what a closing tab had not kept yet; "aside …", what could not be opened. Every
// call may fail: storage can be refused or full.

const kName = 'tinwright', kStore = 'jobs';
const kPatience = 2000;  // [ms] a browser that keeps nothing may also say nothing
const kMostBefore = 3;
const tab = randomName();
let opened = null;

function randomName() {
  return crypto.getRandomValues(new Uint32Array(4)).join('-');
}

function open() {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(kName, 1);
    setTimeout(() => reject(new Error('storage does not answer')), kPatience);
    request.onupgradeneeded = () => request.result.createObjectStore(kStore);
    request.onerror = () => reject(request.error);
    request.onsuccess = () => {
      const forget = () => { opened = null; };
      request.result.onversionchange = () => { request.result.close(); forget(); };
      request.result.onclose = forget;
      resolve(request.result);
    };
  });
}

/** Runs `work(store)` in one transaction, so that nothing of another tab comes between; resolves to work's answer. */
async function transact(mode, work) {
  opened ??= open();
  let base;
  try {
    base = await opened;
  } catch (error) {
    opened = null;
    throw error;
  }
  return new Promise((resolve, reject) => {
    const transaction = base.transaction(kStore, mode);
    const answer = work(transaction.objectStore(kStore));
    transaction.oncomplete = () => resolve(answer);
    transaction.onabort = transaction.onerror = () => reject(transaction.error ?? new Error('storage failed'));
  });
}

const isText = (value) => value instanceof Uint8Array;
export const isRecord = (value) => isText(value?.text) && typeof value.stamp === 'string';
const textsOf = (before) => (Array.isArray(before) ? before.filter(isText) : []);
const same = (a, b) => a.length === b.length && a.every((byte, i) => byte === b[i]);

/**
 * {kept, before}: the record as it is stored, sound or not, and the texts that were put away, oldest first. What a tab left
 * behind when it closed takes its place first: as the record if none came after it, else as put away.
 */
export async function readKept() {
  const found = {};
  await transact('readwrite', (store) => {
    store.get('kept').onsuccess = (event) => { found.kept = event.target.result; };
    store.get('left').onsuccess = (event) => {
      const left = event.target.result;
      if (left !== undefined) store.delete('left');
      if (!isRecord(left) || (isRecord(found.kept) && same(left.text, found.kept.text))) return;
      if (found.kept && found.kept.stamp !== left.stamp) return putBefore(store, left.text);
      found.kept = { ...left, stamp: randomName() };
      store.put(found.kept, 'kept');
    };
  });
  await transact('readonly', (store) => {
    store.get('before').onsuccess = (event) => { found.before = textsOf(event.target.result); };
  });
  return found;
}

/** For a tab that closes: nothing can be asked of the store any more, only told. `known` is as for keep(). */
export function leave(text, known) {
  return transact('readwrite', (store) => {
    store.put({ text, tab, stamp: known }, 'left');
    store.transaction.commit?.();
  });
}

function putBefore(store, text) {
  store.get('before').onsuccess = (event) => {
    const others = textsOf(event.target.result).filter((other) => !same(other, text));
    store.put([...others, text].slice(-kMostBefore), 'before');
  };
}

/** Puts a text away, to be gone back to. */
export function remember(text) {
  return transact('readwrite', (store) => putBefore(store, text));
}

export function putAside(what) {
  return transact('readwrite', (store) => {
    store.put(what, `aside ${randomName()}`);
    store.delete('kept');
  });
}

/**
 * Keeps `text`, unless another tab has kept something since `known`, the stamp of what this one read last. Resolves to the
 * new stamp, or to null where another tab was first and this one does not insist. What is not kept is put away.
 */
export async function keep(text, known, insists) {
  const outcome = { stamp: randomName() };
  await transact('readwrite', (store) => {
    store.get('kept').onsuccess = (event) => {
      const there = event.target.result;
      const isTheirs = isRecord(there) && there.tab !== tab && there.stamp !== known && !same(there.text, text);
      if (isTheirs && !insists) {
        outcome.stamp = null;
        putBefore(store, text);
        return;
      }
      if (isTheirs) putBefore(store, there.text);
      store.put({ text, tab, stamp: outcome.stamp }, 'kept');
    };
  });
  return outcome.stamp;
}

/** Whether another tab has kept something since. */
export async function isOvertaken(known) {
  const { kept } = await readKept();
  return isRecord(kept) && kept.tab !== tab && kept.stamp !== known;
}
