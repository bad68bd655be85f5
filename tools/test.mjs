/**
 * `npm test`: every check the project has, one after the other. A step that fails does not stop the ones after it, unless
 * they need what it should have made. Ends with one line, `N passed, N failed`: tests, and each failed step that is not
 * made of tests as one more failure.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bringUpToDate } from './bundle.mjs';
import { findBrowser } from './findBrowser.mjs';
import { runTool } from './run.mjs';
import { countTests, total } from './testCount.mjs';

/** @typedef {import('./testCount.mjs').Count} Count */

const reports = mkdtempSync(join(tmpdir(), 'wedgewright-'));

/**
 * @param {boolean} well
 * @returns {Count}
 */
const step = (well) => ({ passed: 0, failed: well ? 0 : 1 });

/**
 * @param {string} project one of the projects in `vite.config.ts`
 * @param {Record<string, string>} [env]
 * @returns {Count}
 */
function vitest(project, env = {}) {
  const report = join(reports, `${project}.json`);
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  return countTests(report, runTool('vitest', ['run', '--project', project, ...reporters], { env }));
}

/** @returns {Promise<Count>} */
async function browserTests() {
  const { path, version } = await findBrowser();
  console.log(`Chromium ${version}${path === null ? '' : ` at ${path}`}`);
  return vitest('browser', path === null ? {} : { CHROMIUM_PATH: path });
}

/**
 * Runs one step under its heading and says how long it took.
 * @param {string} heading
 * @param {() => Count | Promise<Count>} run
 * @returns {Promise<Count>}
 */
async function timed(heading, run) {
  console.log(`\n== ${heading}`);
  const start = performance.now();
  const count = await Promise.resolve()
    .then(run)
    .catch((error) => {
      console.error(error instanceof Error ? error.message : error);
      return step(false);
    });
  const seconds = ((performance.now() - start) / 1000).toFixed(1);
  console.log(`== ${heading}: ${count.failed === 0 ? 'sound' : 'FAILED'} (${seconds} s)`);
  return count;
}

const counts = [
  await timed('format', () => step(runTool('prettier', ['--check', '--log-level=warn', '.']))),
  await timed('lint', () => step(runTool('eslint', ['--max-warnings=0', '.']))),
  await timed('types', () =>
    step(
      runTool('svelte-kit', ['sync']) &&
        runTool('svelte-check', ['--fail-on-warnings', '--output=human']) &&
        runTool('tsc', ['--noEmit', '--project', 'src/service-worker']),
    ),
  ),
  await timed('unused code', () => step(runTool('knip', []))),
  await timed('the command', () => step(bringUpToDate())),
  await timed('unit tests', () => vitest('unit')),
];
const site = await timed('the site', () => step(runTool('vite', ['build'], { output: 'on failure' })));
counts.push(site);
if (site.failed === 0) counts.push(await timed('browser tests', browserTests));
else console.log('\n== browser tests: not run, for there is no site to test');

rmSync(reports, { recursive: true, force: true });
const { passed, failed } = total(counts);
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
