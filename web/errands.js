// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Errands of the page (app/plan/errand.h), done in a worker with a second wasm module, one after another. What they mean
// is decided in C++ on both sides; here they are bytes.
import { trustedScript } from './trusted.js';

const kSparing = 150;  // [ms] after which a running errand that nobody waits for any more is cut off

let worker = null;
let told = null;      // {outcome(bytes), progress(share), failed()}
let waiting = [];     // {bytes, replaces}
let running = null;   // {bytes, replaces, since}
const counters = { open: 0, sent: 0, started: 0, cutOff: 0 };

export const errandCounters = counters;

/** From now on errands can be sent; `listener` hears of them. */
export function startErrands(listener) {
  told = listener;
}

/**
 * Sends an errand. One that `replaces` takes the place of an earlier such that is not done yet; empty bytes only take that
 * away.
 */
export function sendErrand(bytes, replaces) {
  if (replaces) {
    waiting = waiting.filter((errand) => !errand.replaces);
    if (running?.replaces) cutOff(bytes.length === 0);
  }
  if (bytes.length) waiting.push({ bytes, replaces });
  next();
}

/** Wasm cannot be interrupted, so the worker goes, and a new one starts in a moment; what is nearly done may end by itself. */
function cutOff(atOnce) {
  const errand = running;
  errand.isUnwanted = true;
  setTimeout(() => {
    if (running !== errand) return;
    counters.cutOff += 1;
    end();
    next();
  }, atOnce ? 0 : Math.max(0, errand.since + kSparing - performance.now()));
}

function end() {
  worker?.terminate();
  worker = null;
  running = null;
}

function start() {
  counters.started += 1;
  worker = new Worker(trustedScript('worker.js'));
  worker.addEventListener('message', ({ data }) => {
    if (!running) return;
    if (data.outcome) {
      const { isUnwanted } = running;
      running = null;
      counters.open = waiting.length;
      if (!isUnwanted) told.outcome(data.outcome);
      next();
    } else if (!running.isUnwanted) {
      told.progress(data.progress);
    }
  });
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    console.warn(`worker: ${event.message || 'it did not start'}`);
    waiting = [];
    end();
    next();
    told.failed();
  });
}

function next() {
  counters.open = waiting.length + (running ? 1 : 0);
  if (running || !waiting.length) return;
  if (!worker) start();
  running = { ...waiting.shift(), since: performance.now(), isUnwanted: false };
  counters.sent += 1;
  worker.postMessage(running.bytes);
}
