// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Runs the browser suites on the built pages. Usage: node run.mjs BUILD_FOLDER [SUITE…]. Ends with "browser: N passed, N
// failed" and a status that says the same.
import { join, resolve } from 'node:path';
import { startServer } from '../../web/serve.mjs';
import { launch, Tester } from './harness.mjs';

const kSuites = ['jobs', 'bench', 'oven', 'errands', 'desk', 'links', 'paper', 'keeping', 'offline', 'updates', 'platform',
  'trouble', 'controls', 'touch', 'access', 'solid', 'handles', 'pinch'];

const [buildFolder, ...chosen] = process.argv.slice(2);
const build = resolve(buildFolder);
const page = await startServer(join(build, 'page'));
const sampler = await startServer(join(build, 'sampler'));
const browser = await launch(join(build, 'node'));
const t = new Tester(browser, { page: page.address, sampler: sampler.address }, join(build, 'shots'), build);
for (const suite of chosen.length ? chosen : kSuites) {
  console.log(`--- ${suite}`);
  const { run } = await import(`./${suite}.mjs`);
  try {
    await run(t);
  } catch (error) {
    t.failed += 1;
    console.log(`FAIL the suite ${suite} runs to its end: ${error.stack}`);
  }
  for (const context of browser.contexts()) await context.close();
}
await browser.close();
for (const { server } of [page, sampler]) {
  server.close();
  server.closeAllConnections();
}
console.log(`browser: ${t.passed} passed, ${t.failed} failed`);
process.exitCode = t.failed ? 1 : 0;
