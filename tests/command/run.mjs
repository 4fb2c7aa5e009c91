// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Checks of the program itself: answers, refusals, exit status. Usage: node run.mjs PROGRAM. Ends with "command: N passed, N
// failed" and a status that says the same.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { run as runJobs } from './jobs.mjs';
import { run as runPaper } from './paper.mjs';
import { answer, ask, shell, slab, swap, swapDough } from './questions.mjs';

const program = process.argv[2];
let passed = 0;
let failed = 0;

function check(claim, body) {
  try {
    body();
    passed += 1;
    console.log(`ok   ${claim}`);
  } catch (error) {
    failed += 1;
    console.log(`FAIL ${claim}: ${error.message}`);
  }
}

function equal(found, wanted) {
  const [a, b] = [JSON.stringify(found), JSON.stringify(wanted)];
  if (a !== b) throw new Error(`found ${a}, wanted ${b}`);
}

function near(found, wanted, relative = 1e-9) {
  if (!(Math.abs(found - wanted) <= relative * Math.abs(wanted))) throw new Error(`found ${found}, wanted ${wanted}`);
}

const cm = 10, inch = 25.4;  // [mm]
const frustum = (r, s, h) => Math.PI * h / 3 * (r * r + r * s + s * s) / 1000;  // [ml] from [mm]

check('pan: a tapered round tin has the keys and figures of a frustum', () => {
  const a = answer(program, 'pan', {
    outline: { kind: 'round', diameter: '24 cm' }, profile: { depth: '3 cm', base_inset: '1 cm' },
  });
  equal(Object.keys(a), ['brim_volume_ml', 'floor_area_cm2', 'wall_area_cm2', 'rim_area_cm2', 'depth_mm', 'count']);
  near(a.brim_volume_ml, frustum(12 * cm, 11 * cm, 3 * cm));
  near(a.floor_area_cm2, Math.PI * 121);
  near(a.rim_area_cm2, Math.PI * 144);
  near(a.wall_area_cm2, Math.PI * 23 * Math.hypot(3, 1));
  near(a.depth_mm, 30);
  equal(a.count, 1);
});

check('pan: a 9 in pie tin swapped for a 24 cm fluted ring', () => {
  const a = answer(program, 'pan', swap);
  // π (mean² + (a/2)²/2) · depth for r = D/2 - a/2 + (a/2) cos nθ
  const ring = Math.PI * (117 * 117 + 4.5) * 30 / 1000;
  near(a.brim_volume_ml, ring);
  near(a.instead_of.filling_factor, ring / a.instead_of.brim_volume_ml);
  near(a.instead_of.brim_volume_ml, 1035, 0.01);  // 4 cups by the chart, see tests/reference/pan_volumes.csv
});

check('press: the dough of the swap returns from its thickness', () => {
  const a = answer(program, 'press', swapDough);
  near(a.dough_volume_ml, 380 / 1.2);
  near(a.floor_thickness_mm, a.wall_thickness_mm);
  const b = answer(program, 'press', { ...swapDough, thickness: `${a.floor_thickness_mm} mm` });
  near(b.mass_needed_g, 380, 1e-6);
  equal(a.reaches_edges, true);
});

check('press: 430 g at 1/4 in does not reach the edges of a quarter sheet tray', () => {
  const a = answer(program, 'press', slab);
  near(a.dough_volume_ml, 430 / 1.2);
  near(a.floor_thickness_mm, 0.25 * inch);
  equal(a.reaches_edges, false);
  near(a.slab_length_mm * a.slab_width_mm * 6.35 / 1000, 430 / 1.2, 0.005);  // the tray's corners are rounded
  near(a.mass_needed_g * a.coverage, 430);
});

check('fill: a lined shell filled to three quarters', () => {
  const a = answer(program, 'fill', shell);
  const radius = 115 - 6, high = 45 - 6;
  const holds = Math.PI * radius * radius * high / 1000;
  near(a.cavity_volume_ml, holds);
  near(a.lining_volume_ml, Math.PI * 115 * 115 * 45 / 1000 - holds);
  near(a.fill_height_mm, 0.75 * high);
  near(a.below_rim_mm, 0.25 * high);
  near(a.mass_g, 0.75 * holds * 1.05);
  near(a.left_g, 1400 - 0.75 * holds * 1.05);
  equal(a.level, 0.75);
  equal(a.overflow_ml, 0);
});

check('fill: rising over the rim is told as overflow', () => {
  const a = answer(program, 'fill', {
    pan: { outline: { kind: 'round', diameter: '20 cm' }, profile: { depth: '5 cm' } }, volume: '1.4 l', rise: '1.5',
  });
  near(a.overflow_ml, 2100 - Math.PI * 500, 1e-9);
  equal(a.risen_below_rim_mm, 0);
  equal(a.mass_g, null);
});

check('without --json the same answers come in words, with cautions', () => {
  const words = ask(program, 'fill', { ...shell, density: undefined, filling: 'baked-cheesecake' });
  equal(words.status, 0);
  for (const part of ['Stop pouring: 9.8 mm (⅜ in) below the crust\'s top', 'Left over:', 'egg or dairy', 'local food-safety']) {
    if (!words.out.includes(part)) throw new Error(`no "${part}" in ${words.out}`);
  }
  const us = ask(program, 'fill', shell, '--us');
  if (!us.out.includes('⅜ in (9.8 mm)')) throw new Error(us.out);
});

check('each fault is one line FILE:LINE: field: message, and the status is 2', () => {
  const bad = '{\n "pan": {\n  "outline": {"kind": "round", "diameter": 24},\n  "profile": {"depth": "3"}\n },\n'
    + ' "mass": "five", "density": "1.2 g/ml", "cover": "floor"\n}';
  const { status, out, err } = ask(program, 'press', bad, '--json');
  equal(status, 2);
  equal(out, '');
  const lines = err.trim().split('\n');
  equal(lines.length, 3);
  equal(lines.map((line) => line.split(': ').slice(0, 2).join(': ')),
    ['-:3: pan.outline.diameter', '-:4: pan.profile.depth', '-:6: mass']);
});

check('text that is no JSON, a list, a missing file and an unknown command are refused with status 2', () => {
  for (const text of ['', '{', '[]', '{"a": nan}', '\u0000', '['.repeat(100000)]) {
    const { status, out, err } = ask(program, 'pan', text, '--json');
    equal([status, out, /^-:\d+: ./.test(err)], [2, '', true]);
  }
  equal(ask(program, 'nonsense', '{}').status, 2);
  equal(ask(program, 'pan', '{}', '--nonsense').status, 2);
  equal(ask(program, 'pan', '{}', 'second-file').status, 2);
});

check('impossible pans are refused with what would be right', () => {
  for (const [pan, place, advice] of [
    [{ outline: { kind: 'round', diameter: '20 cm' }, profile: { depth: '5 cm', base_inset: '12 cm' } },
      'profile.base_inset', '100 mm'],
    [{ outline: { kind: 'rectangle', length: '30 cm', width: '20 cm', corner_radius: '11 cm' }, profile: { depth: '5 cm' } },
      'outline.corner_radius', '100 mm'],
    [{ outline: { kind: 'round', diameter: '10000 m' }, profile: { depth: '5 cm' } }, 'outline.diameter', '5 m'],
    [{ outline: { kind: 'freeform', points: [['0 cm', '0 cm'], ['30 cm', '30 cm'], ['30 cm', '0 cm'], ['0 cm', '30 cm']] },
      profile: { depth: '5 cm' } }, 'outline.points', 'in order round the rim'],
  ]) {
    const { status, err } = ask(program, 'pan', pan, '--json');
    equal(status, 2);
    if (!err.includes(`${place}: `) || !err.includes(advice)) throw new Error(err);
  }
});

for (const name of ['tapered_round', 'lined_round', 'fluted_tart', 'tapered_loaf', 'tapered_ring', 'straight_round', 'straight_box']) {
  check(`bake: ${name} follows finite elements within 0.5 °C`, () => {
    // tests/reference/heat/heat.py: FreeFem++ 4.11, estimated error below 0.01 °C
    const folder = new URL('../reference/heat/', import.meta.url);
    const a = answer(program, 'bake', readFileSync(new URL(`${name}.json`, folder), 'utf8'));
    const rows = readFileSync(new URL(`${name}.csv`, folder), 'utf8').trim().split('\n').filter((line) => /^\d/.test(line))
      .map((line) => line.split(',').map(Number));
    equal(a.history.map((row) => Math.round(row.t_min)), rows.map(([t]) => t));
    for (const [i, [, core, mean, air]] of rows.entries()) {
      const row = a.history[i];
      if (Math.abs(row.core_c - core) > 0.5 || Math.abs(row.mean_c - mean) > 0.5 || (i > 0 && Math.abs(row.air_c - air) > 1e-9)) {
        throw new Error(`${JSON.stringify(row)} against ${rows[i]}`);
      }
    }
    equal(a.time_min, 40);
    equal(a.lost_g, 0);
    if (Math.abs(a.energy_balance) > 1e-10) throw new Error(`energy balance ${a.energy_balance}`);
  });
}

check('bake: until a core temperature, by composition; and programmes that cannot run', () => {
  const question = {
    pan: { outline: { kind: 'round', diameter: '23 cm' }, profile: { depth: '5 cm' } },
    fill: { height: '3 cm', substance: { water: 0.75, protein: 0.06, fat: 0.08, carbohydrate: 0.1, ash: 0.01 } },
    start: '10 C', stages: [{ air: '160 C', for: '90 min' }], until: { core: '75 C' },
  };
  const a = answer(program, 'bake', question);
  near(a.core_c, 75, 1e-6);
  if (!(a.time_min > 10 && a.time_min < 90 && a.reached)) throw new Error(JSON.stringify(a));
  if (!(a.lost_g > 5 && a.lost_g < 120)) throw new Error(`lost ${a.lost_g} g`);
  for (const [change, place] of [[{ stages: [] }, 'stages'], [{ stages: [{ air: '160 C', for: '0 s' }] }, 'stages.0.for'],
    [{ fill: { height: '6 cm', substance: question.fill.substance } }, 'fill.height'],
    [{ fill: { height: '3 cm', substance: 'porridge' } }, 'fill.substance'],
    [{ fill: { height: '3 cm', substance: { water: 0.2, fat: 0.2 } } }, 'fill.substance'],
    [{ start: '10' }, 'start'], [{ transfer: { top: '20 W/m2K', wall: '20', base: '20 W/m2K' } }, 'transfer.wall']]) {
    const { status, err } = ask(program, 'bake', { ...question, ...change }, '--json');
    if (status !== 2 || !err.includes(` ${place}`)) throw new Error(`${JSON.stringify(change)}: ${status} ${err}`);
  }
  const sum = ask(program, 'bake', { ...question, fill: { height: '3 cm', substance: { water: 0.9, fat: 0.5 } } });
  if (!/ fill\.substance: /.test(sum.err)) throw new Error(sum.err);
  const cooling = { ...question, start: '80 C', stages: [{ air: '4 C', for: '12 h' }], until: { core: '10 C' } };
  const cooled = answer(program, 'bake', cooling);
  if (!(cooled.hottest_c > cooled.mean_c && cooled.mean_c > cooled.core_c)) throw new Error(JSON.stringify(cooled));
  if (!ask(program, 'bake', cooling).out.includes('only as cold as its warmest point')) throw new Error('no caution');
  const never = answer(program, 'bake', { ...question, stages: [{ air: '60 C', for: '1 h' }] });
  equal(never.reached, false);
});

const cheesecake = {
  pan: { catalogue: 'springform-23cm' },
  lining: { floor: '6 mm', wall: '6 mm', height: '4.5 cm', substance: 'pressed-biscuit-crumb' },
  fill: { height: '29 mm', substance: 'Baked cheesecake' }, start: '20 C',
  recipe: {
    pan: { catalogue: 'springform-26cm' }, lining: { floor: '6 mm', wall: '6 mm', height: '4.5 cm' }, fill: { height: '25 mm' },
    stages: [{ air: '180 C', for: '12 min' }, { air: '150 C', for: '28 min' }],
  },
};

check('bake: a recipe\'s time is carried over to my pan, as a band, and the same pan gives it back to the second', () => {
  const a = answer(program, 'bake', cheesecake);
  if (!(a.early_min < a.time_min && a.time_min < a.late_min)) throw new Error(JSON.stringify(a));
  if (!(a.time_min > 40 && a.time_min < 60)) throw new Error(`${a.time_min} min for a deeper filling`);
  near(a.core_c, a.recipe_core_c, 0.01);
  equal(a.stages.length, 2);
  near(a.stages[0].min + a.stages[1].min, a.time_min, 1e-6);
  const { pan, lining, fill } = cheesecake;
  const same = answer(program, 'bake', {
    ...cheesecake, recipe: { ...cheesecake.recipe, pan, lining: { ...lining, substance: undefined }, fill: { height: fill.height } },
  });
  near(same.time_min, 40, 1 / 60);
  near(same.stages[0].min, 12, 1 / 60);
  const words = ask(program, 'bake', cheesecake).out;
  for (const said of ['start looking after', 'usually done', 'Trust a thermometer']) {
    if (!words.includes(said)) throw new Error(`"${said}" is missing: ${words}`);
  }
});

check('bake: rack, refrigerator and freezer follow, and slow cooling of an egg filling is warned of', () => {
  const cold = answer(program, 'bake', { ...cheesecake, cool: { rack: '3 h', store: '4 C' } });
  if (!(cold.cooling.room_min > 30 && cold.cooling.cold_min > cold.cooling.room_min)) throw new Error(JSON.stringify(cold.cooling));
  equal(cold.cooling.frozen_min, null);
  const warned = ask(program, 'bake', { ...cheesecake, cool: { rack: '3 h', store: '4 C' } }).out;
  if (!/57 to 21 °C.*Food Code 3-501\.14/.test(warned)) throw new Error(warned);
  const frozen = answer(program, 'bake', { ...cheesecake, cool: { rack: '1 h', store: '-18 C' } });
  if (!(frozen.cooling.frozen_min > frozen.cooling.cold_min)) throw new Error(JSON.stringify(frozen.cooling));
});

check('bake: stages that ramp, drift, are switched off or stand in water; places other than an oven', () => {
  const job = (stages, more = {}) => ({
    pan: { outline: { kind: 'round', diameter: '20 cm' }, profile: { depth: '5 cm' }, material: 'dark_steel' },
    fill: { height: '3 cm', substance: 'egg-custard' }, start: '20 C', stages, ...more,
  });
  const core = (stages) => answer(program, 'bake', job(stages)).core_c;
  const held = core([{ air: '160 C', for: '40 min' }]);
  const ramped = core([{ air: '160 C', from: '60 C', for: '40 min' }]);
  const fan = core([{ air: '160 C', for: '40 min', in: 'fan oven' }]);
  if (!(ramped < held && held < fan)) throw new Error(`${[ramped, held, fan]}`);
  const long = core([{ air: '160 C', for: '90 min' }]);
  const bath = core([{ air: '160 C', for: '90 min', bath: '83 C' }]);
  if (!(bath > 75 && bath < 86 && bath < long)) throw new Error(`${[bath, long]}`);
  const hot = { air: '160 C', for: '30 min' };
  const history = (off) => answer(program, 'bake', job([hot, { off, for: '10 min' }], { report_every: '40 min' })).history[1].air_c;
  near(history('shut'), 20 + 140 * Math.exp(-10 / 40), 1e-9);
  near(history('open'), 20 + 140 * Math.exp(-10 / 8), 1e-9);
  const glass = job([{ air: '160 C', for: '40 min' }]);
  glass.pan = { ...glass.pan, material: 'ceramic' };
  if (!(answer(program, 'bake', glass).core_c < held)) throw new Error('thick stoneware is no slower than steel');
});

check('bake: what contradicts itself is refused with its place', () => {
  const { recipe, ...mine } = cheesecake;
  const refusals = [
    [{ ...cheesecake, stages: recipe.stages }, 'stages: '], [{ ...cheesecake, until: { core: '70 C' } }, 'until.core: '],
    [{ ...cheesecake, recipe: { ...recipe, lining: undefined } }, 'recipe.lining: '],
    [{ ...cheesecake, recipe: { ...recipe, stages: [] } }, 'recipe.stages: '],
    [{ ...cheesecake, recipe: { ...recipe, fill: { height: '9 cm' } } }, 'recipe.fill.height: '],
    [{ ...mine, stages: [{ off: 'shut', for: '5 min' }] }, 'stages.0.off: '],
    [{ ...mine, stages: [{ air: '160 C', for: '5 min', lag: '4 min' }] }, 'stages.0.from: '],
    [{ ...mine, stages: [{ air: '160 C', for: '5 min', in: 'cellar' }] }, 'stages.0.in: '],
    [{ ...mine, stages: [{ air: '160 C', for: '5 min' }], fill: { height: '2 cm', substance: 'cheesecak' } }, 'did you mean'],
  ];
  for (const [question, said] of refusals) {
    const { status, err } = ask(program, 'bake', question, '--json');
    if (status !== 2 || !err.includes(said)) throw new Error(`${said}: ${status} ${err}`);
  }
});

check('a folder is refused like a file that cannot be read, and --help is given anywhere', () => {
  const folder = spawnSync(program, ['pan', '/'], { encoding: 'utf8' });
  equal([folder.status, folder.stdout, folder.stderr.startsWith('/:1: ')], [2, '', true]);
  equal(spawnSync(program, ['pan', '--help'], { encoding: 'utf8' }).status, 0);
});

runJobs(program, { check, equal, near });
runPaper(program, { check, equal, near });
console.log(`command: ${passed} passed, ${failed} failed`);
process.exitCode = failed ? 1 : 0;
