// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Asks the program questions as a cook's files would, and the three questions that every release has to answer.
import { spawnSync } from 'node:child_process';

/** Runs `tinwright COMMAND - …` on a question (an object, or text as it is). */
export function ask(program, command, question, ...options) {
  const input = typeof question === 'string' ? question : JSON.stringify(question, null, 1);
  const run = spawnSync(program, [command, '-', ...options], { input, encoding: 'utf8' });
  return { status: run.status, out: run.stdout, err: run.stderr };
}

export function answer(program, command, question) {
  const { status, out, err } = ask(program, command, question, '--json');
  if (status !== 0 || err !== '') throw new Error(`status ${status}: ${err}`);
  return JSON.parse(out);
}

const pieTin = { catalogue: 'pie-9x1-1-4' };
const flutedRing = {
  outline: { kind: 'fluted', diameter: '24 cm', flutes: 40, flute_depth: '6 mm' },
  profile: { depth: '3 cm' }, material: 'tinned_steel', bottomless: true,
};

/** A 9 in pie tin swapped for a 24 cm fluted ring, and 380 g of pastry in it. */
export const swap = { ...flutedRing, instead_of: pieTin };
export const swapDough = { pan: flutedRing, mass: '380 g', density: '1.2 g/ml', cover: 'floor_and_wall' };

/** 430 g of dough pressed to 1/4 in on a quarter sheet tray. */
export const slab = {
  pan: { catalogue: 'quarter-sheet' }, mass: '430 g', density: '1.2 g/ml', cover: 'slab', thickness: '1/4 in',
};

/** A lined shell filled to three quarters from 1.4 kg of filling. */
export const shell = {
  pan: { outline: { kind: 'round', diameter: '23 cm' }, profile: { depth: '7 cm' }, material: 'dark_steel' },
  lining: { floor: '6 mm', wall: '6 mm', height: '4.5 cm' }, mass: '1.4 kg', density: '1.05 g/ml', level: '3/4',
};
