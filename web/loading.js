// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Fetching with real progress, and saying what to do when something does not come or does not work.

const part = (id) => document.getElementById(id);

/** Covers the page with what is wrong and what to do next. */
export function showTrouble(title, advice) {
  part('loading').hidden = true;
  part('trouble-title').textContent = title;
  part('trouble-advice').textContent = advice;
  part('trouble-again').onclick = () => location.reload();
  part('trouble').hidden = false;
  part('cover').hidden = false;
}

export function showNotLoaded(what) {
  showTrouble('The page did not load fully',
    `Its part “${what}” could not be fetched. Check the connection, then load the page again.`);
}

export function showNoGraphics() {
  showTrouble('This browser does not draw the page',
    'The page needs WebGL 2. Update the browser, or switch on “hardware acceleration” in its settings, ' +
    'then load the page again; another browser on this device may work as it is.');
}

export function showStopped(reason) {
  const { version } = document.documentElement.dataset;
  showTrouble('The page has stopped',
    `Something went wrong inside it (${reason}; version ${version}). Load it again to go on.`);
}

export function hideCover() {
  part('cover').hidden = true;
}

function showProgress(received, total) {
  const bar = part('bar');
  bar.value = Math.min(received / total, 1);
  part('stage').textContent = `Getting the page ready … ${Math.round(bar.value * 100)} %`;
}

async function fetchWhole(url, onBytes) {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`${url}: status ${response.status}`);
  const reader = response.body.getReader();
  const chunks = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    chunks.push(value);
    length += value.length;
    onBytes(length);
  }
  const whole = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

/** The module's bytes. Their number is written into the page, for a compressed answer does not tell it. */
export function fetchModule() {
  const { wasm, wasmBytes } = document.body.dataset;
  return fetchWhole(wasm, (received) => showProgress(received, Number(wasmBytes)));
}

export function fetchFont(url) {
  return fetchWhole(url, () => {});
}
