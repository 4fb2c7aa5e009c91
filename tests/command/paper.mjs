// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Checks of `tinwright paper`: areas against closed forms, files by -o, sheets as XML with their check bar, refusals.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { answer, ask } from './questions.mjs';

const pie = { name: 'Blue <pie> tin', outline: { kind: 'round', diameter: '23 cm' }, profile: { depth: '3 cm', base_inset: '25 mm' } };
const box = { outline: { kind: 'rectangle', length: '23 cm', width: '13 cm' }, profile: { depth: '7 cm', base_inset: '15 mm' } };

/** Every size and check bar of SVG files, by python's own XML parser. */
const parse = `
import re, sys, xml.etree.ElementTree as tree
for name in sys.argv[1:]:
    root = tree.parse(name).getroot()
    bars = [each for each in root.iter('{http://www.w3.org/2000/svg}path') if each.get('class') == 'check-bar']
    x0, y0, x1, y1 = map(float, re.fullmatch('M(\\S+) (\\S+)L(\\S+) (\\S+)', bars[0].get('d')).groups())
    print(root.get('width'), root.get('height'), root.get('viewBox'), len(bars), x1 - x0, y1 - y0, sep='|')
`;

export function run(program, { check, equal, near }) {
  const folder = mkdtempSync(join(tmpdir(), 'tinwright-'));
  try {
    areas(program, { check, equal, near });
    files(program, folder, { check, equal });
    refusals(program, { check, equal });
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function areas(program, { check, equal, near }) {
  check('paper: a pie tin\'s pieces are the frustum\'s floor and wall, and a disc of floor, slope and trim', () => {
    const a = answer(program, 'paper', pie);
    const slope = Math.hypot(3, 2.5);
    near(a.floor_piece_area_cm2, Math.PI * 81);
    near(a.wall_piece_area_cm2, Math.PI * (11.5 + 9) * slope);  // CRC tables: frustum of a right circular cone
    near(a.dough_reach_mm, 10 * slope + 15);
    near(a.dough_piece_area_cm2, Math.PI * (9 + slope + 1.5) ** 2);
    equal([a.core_piece_area_cm2, a.left_out_area_cm2, a.left_out, a.pan, a.paper], [0, 0, [], 'Blue <pie> tin', 'A4']);
  });
  check('paper: a box\'s wall is four trapezoids; the areas are those `pan` gives', () => {
    const a = answer(program, 'paper', box), pan = answer(program, 'pan', box);
    near(a.wall_piece_area_cm2, Math.hypot(7, 1.5) * (2 * 36 - 4 * 1.5));
    near(a.wall_piece_area_cm2, pan.wall_area_cm2);
    near(a.floor_piece_area_cm2, pan.floor_area_cm2);
  });
  check('paper: a ring\'s core counts as wall; a crust\'s height is as far as the dough goes', () => {
    const ring = { outline: { kind: 'ring', outer_diameter: '25 cm', inner_diameter: '8 cm' }, profile: { depth: '10 cm' } };
    const a = answer(program, 'paper', ring);
    near(a.core_piece_area_cm2, Math.PI * 80);
    near(a.wall_piece_area_cm2, Math.PI * 330);
    const crust = { pan: pie, lining: { floor: '4 mm', wall: '4 mm', height: '15 mm' } };
    near(answer(program, 'paper', crust).dough_reach_mm, 5 * Math.hypot(3, 2.5) + 15);
  });
}

function files(program, folder, { check, equal }) {
  const paper = (target, ...options) => ask(program, 'paper', pie, '-o', join(folder, target), ...options);
  for (const [name, width, height] of [['A4', '210', '297'], ['Letter', '215.9', '279.4']]) {
    check(`paper: a file a sheet of ${name}, each XML of that size with a bar of 100 mm`, () => {
      equal(paper(`${name}.svg`, '--paper', name).status, 0);
      const sheets = readdirSync(folder).filter((file) => file.startsWith(`${name}-`));
      equal(sheets.length, JSON.parse(ask(program, 'paper', pie, '--json', '--paper', name).out).sheets);
      const run = spawnSync('/usr/bin/python3', ['-c', parse, ...sheets.map((file) => join(folder, file))], { encoding: 'utf8' });
      equal([run.status, run.stderr], [0, '']);
      for (const line of run.stdout.trim().split('\n')) {
        equal(line, `${width}mm|${height}mm|0 0 ${width} ${height}|1|100.0|0.0`);
      }
    });
  }
  check('paper: one sheet is one file; .html and standard output are the same page; a folder that is not there is refused', () => {
    equal(paper('stick.svg', '--pieces', 'stick').status, 0);
    equal(readdirSync(folder).filter((file) => file.startsWith('stick')), ['stick.svg']);
    equal(paper('page.html').status, 0);
    const html = readFileSync(join(folder, 'page.html'), 'utf8');
    equal(ask(program, 'paper', pie).out, html);
    equal([html.includes('&lt;pie&gt;'), html.includes('<pie>'), /nan|inf\b/i.test(html)], [true, false, false]);
    equal(paper('no/such/page.html').status, 2);
  });
  check('paper: --pieces chooses; --us puts it on Letter; the stick has the marks that lining and fill give', () => {
    const names = (wish) => JSON.parse(ask(program, 'paper', pie, '--json', '--pieces', wish).out).pieces.map((piece) => piece.name);
    equal([names('liner'), names('dough'), names('stick')], [['Floor', 'Wall'], ['Dough'], ['Depth stick']]);
    equal(JSON.parse(ask(program, 'paper', pie, '--json', '--us').out).paper, 'Letter');
    const lining = { floor: '4 mm', wall: '4 mm', height: '28 mm' };
    const marks = (question) => {
      const { out } = ask(program, 'paper', question, '--pieces', 'stick');
      return [out.includes('Dough up to here'), out.includes('Pour up to here'), out.includes('15 mm, on the crust')];
    };
    equal(marks(pie), [false, false, false]);
    equal(marks({ pan: pie, lining }), [true, false, false]);
    equal(marks({ pan: pie, lining, fill: { height: '15 mm' } }), [true, true, true]);
    equal(marks({ pan: pie, lining, level: '0.625' }), [true, true, true]);
    equal(marks({ pan: pie, lining, fill: { level: '0.625' } }), [true, true, true]);
  });
}

function refusals(program, { check, equal }) {
  check('paper: what cannot be is refused with its place', () => {
    for (const [question, options, said] of [
      [{ ...pie, outline: { kind: 'round', diameter: 23 } }, [], 'outline.diameter: '],
      [{ pan: pie, lining: { floor: '4 mm', wall: '4 mm', height: '5 cm' } }, [], 'lining.height: '],
      [{ pan: pie, fill: { height: '5 cm' } }, [], 'fill.height: '],
      [{ pan: pie, fill: { mass: '300 g' } }, [], 'fill.density: '],
      [{ pan: pie, colour: 'blue' }, [], 'colour: '],
      [{ outline: { kind: 'rectangle', length: '5 m', width: '5 m' }, profile: { depth: '1 m' } }, [], 'more than 200 sheets'],
      [pie, ['--paper', 'A5'], '--paper: one of these has to follow it: A4, Letter'],
      [pie, ['--pieces', 'lid'], '--pieces: '],
    ]) {
      const { status, out, err } = ask(program, 'paper', question, ...options);
      if (status !== 2 || out !== '' || !err.includes(said)) throw new Error(`${said}: ${status} ${err}`);
    }
  });
}
