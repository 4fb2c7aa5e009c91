// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Checks of the program on whole jobs: plan, match, weigh, card, read; and every file against its JSON Schema.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { answer, ask } from './questions.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const demos = readdirSync(join(root, 'assets/jobs')).sort();
const demo = (name) => JSON.parse(readFileSync(join(root, 'assets/jobs', name), 'utf8'));

const tin = (diameter, depth) => ({ outline: { kind: 'round', diameter: `${diameter} cm` }, profile: { depth: `${depth} cm` } });
const sponge = {
  version: 1,
  recipe: {
    pan: tin(20, 6),
    parts: [{ name: 'Batter', role: 'filling', mixture: 'layer-cake', mass: '800 g' }],
    oven: [{ air: '175 C', for: '35 min' }],
  },
  cupboard: [{ name: 'like theirs', pan: tin(20, 6) }, { name: 'wide', pan: tin(28, 6) }],
};

function no(values) {
  if (/nan|inf\b/i.test(values)) throw new Error(`not a number in ${values.slice(0, 200)}`);
}

export function run(program, { check, equal, near }) {
  const folder = mkdtempSync(join(tmpdir(), 'tinwright-'));
  try {
    plans(program, { check, equal, near });
    matches(program, { check, equal, near });
    scales(program, { check, equal, near });
    papers(program, folder, { check, equal });
    recipes(program, folder, { check, equal });
    schemas({ check, equal });
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function plans(program, { check, equal, near }) {
  check('plan: the recipe\'s own pan gives the recipe\'s amounts and its time to the second', () => {
    const job = { ...sponge, plan: { make: 'pans', pans: [{ name: 'like theirs' }] } };
    const a = answer(program, 'plan', job);
    near(a.parts[0].factor, 1);
    near(a.parts[0].mass_g, 800);
    near(a.pans[0].time_min, 35, 1e-9);
    equal(a.pans[0].early_min <= 35 && a.pans[0].late_min >= 35, true);
  });
  check('plan: a wider tin at the same depth takes more by its area; the same batch in it is shallower and done sooner', () => {
    const wide = answer(program, 'plan', { ...sponge, plan: { make: 'pans', pans: [{ name: 'wide' }] } });
    near(wide.parts[0].factor, 1.96);
    near(wide.pans[0].fill.fill_height_mm, wide.recipe.fill_height_mm);
    const batch = answer(program, 'plan', { ...sponge, plan: { make: 'batch', pans: [{ name: 'wide' }] } });
    near(batch.parts[0].factor, 1);
    near(batch.pans[0].fill.fill_height_mm, wide.recipe.fill_height_mm / 1.96);
    equal(batch.pans[0].time_min < wide.pans[0].time_min, true);
  });
  check('plan: of a range of times the middle is meant', () => {
    const with_oven = (oven) => answer(program, 'plan', { ...sponge, recipe: { ...sponge.recipe, oven }, plan: { make: 'pans', pans: [{ name: 'like theirs' }] } });
    near(with_oven([{ air: '175 C', for: '30 min', up_to: '40 min' }]).pans[0].time_min, 35);
  });
  for (const name of demos) {
    check(`plan: ${name} has factors, fill lines, an oven band, a clock where asked, and cautions`, () => {
      const job = demo(name);
      const a = answer(program, 'plan', job);
      no(JSON.stringify(a));
      equal(a.parts.length, job.recipe.parts.length);
      for (const pan of a.pans) {
        equal(pan.early_min <= pan.time_min && pan.time_min <= pan.late_min, true);
        equal(pan.fill.below_rim_mm > 0, true);
        equal(pan.cooling.room_min === null || pan.cooling.room_min > 0, true);
      }
      equal(a.clock === null, job.plan.table_at === undefined);
      equal(a.warnings.some((line) => line.includes('local food-safety rules')), true);
    });
  }
  check('plan: a frozen pie says when it is frozen through; a crumbled slab how far it reaches on my tray', () => {
    equal(answer(program, 'plan', demo('frozen-plum-pie.json')).pans[0].cooling.frozen_min > 60, true);
    const slab = answer(program, 'plan', demo('ginger-slab.json')).parts.find((part) => part.role === 'crumbled');
    equal(slab.tray.coverage > 0.3 && slab.tray.coverage < 1 && !slab.tray.reaches_edges, true);
    near(slab.crumbs_g, slab.mass_g * 0.91);
  });
  check('plan: faults of a job come with their lines, and a programme that cannot run is one', () => {
    const { status, err } = ask(program, 'plan', { ...sponge, recipe: { ...sponge.recipe, oven: [{ air: '175', for: '35 min' }] } });
    equal(status, 2);
    equal(/^-:\d+: recipe\.oven\.0\.air: /.test(err), true);
    equal(ask(program, 'plan', { version: 7, recipe: {} }).status, 2);
    equal(ask(program, 'plan', { ...sponge, plan: { table_at: 'soon' } }).err.includes('plan.table_at'), true);
  });
}

function matches(program, { check, equal, near }) {
  check('match: the recipe\'s own tin is best, all of the batch is in, and the sets are told in words', () => {
    const a = answer(program, 'match', sponge);
    equal(a.proven, true);
    equal(a.sets[0].pans, [{ name: 'like theirs', count: 1, ...{ fill_height_mm: a.sets[0].pans[0].fill_height_mm, volume_ml: a.sets[0].pans[0].volume_ml } }]);
    near(a.sets[0].depth_factor, 1, 1e-6);
    equal(a.sets[0].left_ml, 0);
    equal(a.sets.every((set, i) => i === 0 || set.cost.all >= a.sets[i - 1].cost.all), true);
    equal(a.sets[0].words.length > 0, true);
  });
  check('match: an empty cupboard is refused', () => {
    equal(ask(program, 'match', { ...sponge, cupboard: [] }).status, 2);
  });
}

function scales(program, { check, equal, near }) {
  const weigh = (reads, ...more) => {
    const run = spawnSync(program, ['weigh', join(root, 'assets/jobs/market-tartlets.json'), '--json', '--reads', reads, ...more],
      { encoding: 'utf8' });
    return run.status === 0 ? JSON.parse(run.stdout) : run;
  };
  const filling = answer(program, 'plan', demo('market-tartlets.json')).parts.find((part) => part.name === 'Almond filling');
  const mass = (food) => filling.ingredients.find((item) => item.food === food).mass_g;
  const all = filling.ingredients.reduce((sum, item) => sum + item.mass_g, 0);
  check('weigh: the right reading finds all there; 1 g off is within the scale', () => {
    const a = weigh(`${all.toFixed(1)} g`, '--after', '3');
    equal(a.verdict, 'all_there');
    near(a.expected_g, all, 1e-6);
  });
  check('weigh: a reading short by the ground almonds names them among what is as heavy', () => {
    const a = weigh(`${(all - mass('ground almonds')).toFixed(1)} g`, '--after', '3');
    equal(['likely', 'cannot_tell'].includes(a.verdict), true);
    equal(a.explanations.some((each) => each.slips.length === 1 && each.slips[0].what === 'the ground almonds' && each.slips[0].how === 'left_out'), true);
  });
  check('weigh: butter, sugar and almonds weigh the same, so the scale cannot tell which was forgotten', () => {
    equal(weigh(`${(all - mass('ground almonds')).toFixed(1)} g`, '--after', '3').verdict, 'cannot_tell');
  });
  check('weigh: the eggs forgotten are named alone', () => {
    const a = weigh(`${(all - mass('eggs')).toFixed(1)} g`, '--after', 'plain flour', '--part', 'Almond filling');
    equal(a.verdict, 'likely');
    equal(a.explanations[0].slips, [{ what: 'the eggs', how: 'left_out' }]);
    equal(a.words.includes('the eggs'), true);
  });
  check('weigh: an unknown step, food or reading is refused', () => {
    for (const more of [['--after', '9'], ['--after', 'sand'], ['--after', '3', '--part', 'x']]) equal(weigh('500 g', ...more).status, 2);
    equal(weigh('500', '--after', '3').status, 2);
    equal(weigh('', '--after', '3').status, 2);
  });
}

function papers(program, folder, { check, equal }) {
  const card = (name, target) => spawnSync(program, ['card', join(root, 'assets/jobs', name), '-o', join(folder, target)], { encoding: 'utf8' });
  check('card: HTML, CSV and Markdown of every demo', () => {
    for (const name of demos) {
      for (const target of ['card.html', 'amounts.csv', 'amounts.md']) equal(card(name, target).status, 0);
      const html = readFileSync(join(folder, 'card.html'), 'utf8');
      for (const part of demo(name).recipe.parts) equal(html.includes(part.name), true);
      equal(/<script|nan|javascript:/i.test(html), false);
      const rows = readFileSync(join(folder, 'amounts.csv'), 'utf8').trim().split('\r\n');
      equal(rows.every((row) => row.split(/,(?=(?:[^"]*"[^"]*")*[^"]*$)/).length === 6), true);
      equal(readFileSync(join(folder, 'amounts.md'), 'utf8').includes('|---|---:|---|'), true);
    }
  });
  check('card: a calendar needs a time on the table', () => {
    equal(card('frozen-plum-pie.json', 'clock.ics').status, 2);
    equal(card('village-supper.json', 'clock.ics').status, 0);
    const run = spawnSync('/usr/bin/python3', [join(root, 'tests/command/check_calendar.py'), join(folder, 'clock.ics')], { encoding: 'utf8' });
    equal([run.status, run.stderr], [0, '']);
  });
  check('card: a file that cannot be written is refused', () => {
    equal(card('village-supper.json', 'no/such/folder/card.html').status, 2);
  });
}

function recipes(program, folder, { check, equal }) {
  const texts = readdirSync(join(root, 'tests/recipes')).filter((name) => !['embed_recipes.cmake', 'expected.txt'].includes(name)).sort();
  check(`read: each of ${texts.length} recipes becomes a job file that its schema takes`, () => {
    const files = [];
    for (const name of texts) {
      const run = spawnSync(program, ['read', join(root, 'tests/recipes', name)], { encoding: 'utf8' });
      if (run.status === 2) continue;  // those that are refused are checked in tests/test_read_*.cpp
      equal([name, run.status], [name, 0]);
      files.push(join(folder, `${name}.json`));
      writeFileSync(files.at(-1), run.stdout);
    }
    equal(files.length >= 30, true);
    validate('job.schema.json', files, equal);
  });
}

function validate(schema, files, equal) {
  const run = spawnSync('/usr/bin/python3', [join(root, 'tests/command/check_schema.py'), join(root, 'assets', schema), ...files],
    { encoding: 'utf8' });
  equal([run.status, run.stdout + run.stderr], [0, '']);
}

function schemas({ check, equal }) {
  check('every catalogue and demo is what its JSON Schema says', () => {
    for (const name of ['pans', 'mixtures', 'ingredients']) validate(`${name}.schema.json`, [join(root, 'assets', `${name}.json`)], equal);
    validate('job.schema.json', demos.map((name) => join(root, 'assets/jobs', name)), equal);
  });
}
