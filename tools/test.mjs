/**
 * `npm test`: every check the project has. What needs no built site runs in two rows side by side, each step printed whole when
 * it has ended; the browser tests come last. A step that fails does not stop the ones after it, unless they need what it should
 * have made. Ends with one line, `N passed, N failed`: tests, and each failed step that is not made of tests as one more failure.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bringUpToDate } from './bundle.mjs';
import { findBrowser } from './findBrowser.mjs';
import { runBeside } from './run.mjs';
import { countTests, total } from './testCount.mjs';

/** @typedef {import('./testCount.mjs').Count} Count */
/** @typedef {(text: string) => void} Print takes what a step prints */
/** @typedef {Parameters<typeof runBeside>} Run */

const reports = mkdtempSync(join(tmpdir(), 'wedgewright-'));

/**
 * @param {boolean} well
 * @returns {Count}
 */
const step = (well) => ({ passed: 0, failed: well ? 0 : 1 });

/**
 * Tools one after the other, until one fails.
 * @param {...[Run[0], Run[1]]} tools
 * @returns {(print: Print) => Promise<Count>}
 */
const tools =
  (...tools) =>
  async (print) => {
    for (const [name, args] of tools) if (!(await runBeside(name, args, { print }))) return step(false);
    return step(true);
  };

/**
 * @param {readonly string[]} projects of those in `vitest.config.ts`
 * @param {Print} print
 * @param {Record<string, string>} [env]
 * @returns {Promise<Count>}
 */
async function vitest(projects, print, env = {}) {
  const report = join(reports, `${projects.join('-')}.json`);
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  const chosen = projects.flatMap((project) => ['--project', project]);
  return countTests(report, await runBeside('vitest', ['run', ...chosen, ...reporters], { print, env }));
}

/**
 * @param {Print} print
 * @returns {Promise<Count>}
 */
async function browserTests(print) {
  const { path, version } = await findBrowser();
  print(`Chromium ${version}${path === null ? '' : ` at ${path}`}\n`);
  return vitest(['browser'], print, path === null ? {} : { CHROMIUM_PATH: path });
}

/** @type {Print} */
const show = (text) => void process.stdout.write(text);

/**
 * Runs one step and prints its heading, what it printed, and how long it took, together: another may run beside it.
 * @param {string} heading
 * @param {(print: Print) => Count | Promise<Count>} run
 * @returns {Promise<Count>}
 */
async function beside(heading, run) {
  let printed = '';
  const count = await timed(heading, run, (text) => (printed += text));
  show(printed);
  return count;
}

/**
 * @param {string} heading
 * @param {(print: Print) => Count | Promise<Count>} run
 * @param {Print} [print]
 * @returns {Promise<Count>}
 */
async function timed(heading, run, print = show) {
  print(`\n== ${heading}\n`);
  const start = performance.now();
  const count = await Promise.resolve(print)
    .then(run)
    .catch((error) => {
      print(`${error instanceof Error ? error.message : error}\n`);
      return step(false);
    });
  const seconds = ((performance.now() - start) / 1000).toFixed(1);
  print(`== ${heading}: ${count.failed === 0 ? 'sound' : 'FAILED'} (${seconds} s)\n`);
  return count;
}

/** What writes into `.svelte-kit/` stands in one row, for two at once spoil each other. */
async function siteRow() {
  const types = await beside(
    'types',
    tools(
      ['svelte-kit', ['sync']],
      ['svelte-check', ['--fail-on-warnings', '--output=human']],
      ['tsc', ['--noEmit', '--project', 'src/service-worker']],
    ),
  );
  const site = await beside('the site', tools(['vite', ['build', '--logLevel=warn']]));
  const rest = [
    await beside('format', tools(['prettier', ['--check', '--log-level=warn', '.']])),
    await beside('lint', tools(['eslint', ['--max-warnings=0', '.']])),
    await beside('unused code', tools(['knip', []])),
  ];
  return { site, counts: [types, site, ...rest] };
}

async function unitRow() {
  return [
    await beside('the command', () => step(bringUpToDate())),
    await beside('unit tests', (print) => vitest(['unit', 'apart'], print)),
  ];
}

const [{ site, counts }, units] = await Promise.all([siteRow(), unitRow()]);
counts.push(...units);
if (site.failed === 0) counts.push(await timed('browser tests', browserTests));
else show('\n== browser tests: not run, for there is no site to test\n');

rmSync(reports, { recursive: true, force: true });
const { passed, failed } = total(counts);
show(`\n${passed} passed, ${failed} failed\n`);
process.exitCode = failed === 0 ? 0 : 1;
