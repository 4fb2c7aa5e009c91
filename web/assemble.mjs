// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Puts a page together from a built module, the scripts, the style, the fonts and the icon, gives it its version, prints what
// it weighs, and fails when it weighs too much. Usage: node assemble.mjs MODULE_WITHOUT_SUFFIX FONTS_FOLDER NODE_FOLDER TARGET_FOLDER
import { createRequire } from 'node:module';
import { copyFileSync, existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';
import { fileURLToPath } from 'node:url';
import { pngOf } from './icon.mjs';
import { metaPolicy } from './policy.mjs';
import { stamp } from './stamp.mjs';

// [bytes] of all that comes before the first answer is on the screen, brotli 11: about three seconds on a slow phone line.
const kBudget = 350 * 1024;
// What comes later, or only when asked for.
const kLater = /^(worker\.(js|wasm)|licences\.txt|sw\.js|manifest\.webmanifest|icon.*)$/;
// Of a masked icon only the circle of 4/5 of its side is sure to be seen (W3C, Web Application Manifest, "icon masks").
const kMasked = { ground: '#f5eee1', share: 0.8 };
const here = fileURLToPath(new URL('.', import.meta.url));
const [moduleBase, fontsFolder, nodeFolder, target] = process.argv.slice(2);
const workerModule = moduleBase.endsWith('page') ? moduleBase.replace(/page$/, 'worker.js') : '';
const { buildSync, transformSync } = createRequire(join(nodeFolder, 'package.json'))('esbuild');

function bundle(entry, outfile, options) {
  buildSync({ entryPoints: [entry], outfile, minify: true, legalComments: 'none', target: 'es2020', logLevel: 'warning',
    ...options });
}

rmSync(target, { recursive: true, force: true });
mkdirSync(target, { recursive: true });
bundle(join(here, 'bridge.js'), join(target, 'bridge.js'), { bundle: true, format: 'iife' });
bundle(`${moduleBase}.js`, join(target, 'app.js'), { logOverride: { 'equals-negative-zero': 'silent' } });
if (existsSync(workerModule)) {
  // One file, so that the worker need not load another: first what listens for errands, then the module's own script.
  const listening = buildSync({ entryPoints: [join(here, 'worker.js')], bundle: true, format: 'iife', write: false });
  const { code } = transformSync(`${listening.outputFiles[0].text}\n${readFileSync(workerModule, 'utf8')}`, {
    minify: true, legalComments: 'none', target: 'es2020', logOverride: { 'equals-negative-zero': 'silent' } });
  writeFileSync(join(target, 'worker.js'), code);
  copyFileSync(workerModule.replace(/js$/, 'wasm'), join(target, 'worker.wasm'));
}
bundle(join(here, 'sw.js'), join(target, 'sw.js'), {});
bundle(join(here, 'page.css'), join(target, 'page.css'), {});
copyFileSync(`${moduleBase}.wasm`, join(target, 'app.wasm'));
for (const font of ['regular.otf', 'strong.otf', 'signs.ttf']) copyFileSync(join(fontsFolder, font), join(target, font));
const html = readFileSync(join(here, 'index.html'), 'utf8')
  .replace('@POLICY@', metaPolicy)
  .replace('@WASM_BYTES@', String(readFileSync(join(target, 'app.wasm')).length));
writeFileSync(join(target, 'index.html'), html);

const icon = readFileSync(join(here, '../assets/icon.svg'), 'utf8');
writeFileSync(join(target, 'icon.svg'), icon.replace(/<!--[^]*?-->\n/, ''));
for (const size of [192, 512]) writeFileSync(join(target, `icon-${size}.png`), pngOf(icon, size));
writeFileSync(join(target, 'icon-maskable.png'), pngOf(icon, 192, kMasked));
const manifest = JSON.parse(readFileSync(join(here, 'manifest.webmanifest'), 'utf8'));
writeFileSync(join(target, 'manifest.webmanifest'), JSON.stringify(manifest));

// Those whose work is inside the files ask that their notices go with it.
const notices = [
  ['Tinwright', join(here, '../LICENSE')],
  ['Dear ImGui', join(here, '../build/third_party/imgui-1.90.1/LICENSE.txt')],
  ['Fonts: Inter', '/usr/share/doc/fonts-inter/copyright'],
  ['Fonts: DejaVu', '/usr/share/doc/fonts-dejavu-core/copyright'],
  ['GLM', '/usr/share/doc/libglm-dev/copyright'],
  ['JSON for Modern C++', '/usr/share/doc/nlohmann-json3-dev/copyright'],
];
const missing = notices.filter(([, path]) => !existsSync(path)).map(([, path]) => path);
if (missing.length) throw new Error(`licence texts are missing: ${missing.join(', ')}`);
writeFileSync(join(target, 'licences.txt'),
  notices.map(([name, path]) => `==== ${name}\n\n${readFileSync(path, 'utf8')}`).join('\n\n'));

const version = stamp(target);  // the last thing that is written

const brotli = (bytes) => brotliCompressSync(bytes, { params: {
  [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length } });
const total = [0, 0, 0], first = [0, 0, 0];
const line = (name, sizes) => console.log(name.padEnd(22) + sizes.map((size) => String(size).padStart(10)).join(''));
console.log(`${'bytes'.padEnd(22)}${['raw', 'gzip', 'brotli'].map((title) => title.padStart(10)).join('')}`);
for (const name of readdirSync(target).sort()) {
  const bytes = readFileSync(join(target, name));
  const sizes = [bytes.length, gzipSync(bytes, { level: 9 }).length, brotli(bytes).length];
  sizes.forEach((size, i) => {
    total[i] += size;
    if (!kLater.test(name)) first[i] += size;
  });
  line(name, sizes);
}
line('total', total);
line('to first use', first);
console.log(`version: ${version}`);
console.log(`budget: ${first[2]} of ${kBudget} bytes (brotli)`);
if (first[2] > kBudget) {
  console.error('The page is over its budget. What to do next: see which file grew, and why, before raising kBudget.');
  process.exit(1);
}
