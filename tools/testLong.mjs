/**
 * `npm run test:long`: what takes too long to run with every change. Each part is some test files, run so many times as often as
 * they say. Prints a table, and ends with status 1 where anything failed. `npm run test:long -- nestings` runs the parts whose
 * names hold that. `WEDGEWRIGHT_SEED` draws other cases; a case that fails belongs into the tests as one of its own.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bringUpToDate } from './bundle.mjs';
import { runTool } from './run.mjs';
import { countTests } from './testCount.mjs';

/**
 * @typedef {object} Part
 * @property {string} name
 * @property {string} project of those in `vitest.config.ts`
 * @property {string} file
 * @property {number} [runs] `WEDGEWRIGHT_RUNS`: default 1, all that the file asks for
 * @property {boolean} [site] whether it needs the built site
 */

/** @type {readonly Part[]} */
const parts = [
  { name: '100,000 hostile documents', project: 'unit', file: 'tests/project/parse.test.ts', runs: 50 },
  { name: '100,000 hostile links', project: 'unit', file: 'tests/files/link.test.ts', runs: 250 },
  { name: '100,000 number entries', project: 'unit', file: 'tests/project/readEntry.test.ts', runs: 34 },
  { name: '5,000 projects with outlines', project: 'unit', file: 'tests/solution/anyStand.test.ts', runs: 2.5 },
  { name: 'sweeps: ribs, relief, recess', project: 'unit', file: 'tests/solution/sweeps.test.ts' },
  { name: '82 nestings', project: 'long', file: 'tests/long/nestings.long.ts' },
  { name: 'undo of 1,000 edits', project: 'long', file: 'tests/long/undo.long.ts' },
  { name: 'every property in full', project: 'unit', file: 'tests' },
  { name: 'workers that fail', project: 'browser', file: 'tests/browser/failing.test.ts', site: true },
  { name: 'reloads and three tabs', project: 'long-browser', file: 'tests/long/editing.page.ts', site: true },
];

/** A part may take hours on a slow machine, ms. */
const PATIENCE = 4 * 60 * 60 * 1000;

const reports = mkdtempSync(join(tmpdir(), 'wedgewright-'));

/** @param {Part} part */
function run({ name, project, file, runs = 1 }) {
  console.log(`\n== ${name}`);
  const report = join(reports, 'report.json');
  rmSync(report, { force: true });
  const start = performance.now();
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  const well = runTool('vitest', ['run', '--project', project, file, `--testTimeout=${PATIENCE}`, ...reporters], {
    env: { WEDGEWRIGHT_RUNS: String(runs) },
  });
  const { passed, failed } = countTests(report, well);
  return { part: name, runs, passed, failed, seconds: Math.round((performance.now() - start) / 100) / 10 };
}

const [wanted = ''] = process.argv.slice(2);
const chosen = parts.filter(({ name }) => name.includes(wanted));
const ready =
  bringUpToDate() && (!chosen.some(({ site }) => site) || runTool('vite', ['build'], { output: 'on failure' }));
const results = ready ? chosen.map(run) : [];

rmSync(reports, { recursive: true, force: true });
console.log(`\nSeed ${process.env['WEDGEWRIGHT_SEED'] ?? 'of the tests'}; runs: times as often as each property says.`);
console.table(results);
const bad = results.filter(({ failed }) => failed > 0).length;
console.log(`${results.length - bad} of ${chosen.length} parts passed`);
process.exitCode = ready && results.length > 0 && bad === 0 ? 0 : 1;
