import { existsSync } from 'node:fs';
import { chromium } from 'playwright';
import { browserFlags } from './browserFlags.mjs';
import { DEBIAN_BROWSER, installBrowserDebian, whyNotDebian } from './installBrowserDebian.mjs';
import { usualPlaces } from './installedBrowsers.mjs';
import { runTool } from './run.mjs';

/**
 * A browser that has been seen to start.
 * @typedef {object} FoundBrowser
 * @property {string | null} path its program; null for Playwright's own copy, whose place Playwright knows
 * @property {string} version as it says itself
 */

/** Long enough for a first start on a slow, busy machine, ms. */
const START_TIMEOUT = 30_000;

/**
 * Starts the program in earnest and asks for its version. A bare `--version` would prove less (a library that is missing
 * only shows later) and opens a window on Windows.
 * @param {string | null} path
 * @returns {Promise<FoundBrowser | null>} null when it does not start
 */
async function tryStart(path) {
  try {
    const browser = await chromium.launch({
      ...(path === null ? {} : { executablePath: path }),
      args: browserFlags,
      timeout: START_TIMEOUT,
    });
    const version = browser.version();
    await browser.close();
    return { path, version };
  } catch {
    return null;
  }
}

/**
 * @param {readonly (string | null)[]} paths
 * @returns {Promise<FoundBrowser | null>} the first that starts
 */
async function firstThatStarts(paths) {
  for (const path of paths) {
    const found = path === null || existsSync(path) ? await tryStart(path) : null;
    if (found) return found;
  }
  return null;
}

/** @returns {Promise<FoundBrowser | null>} Playwright's own copy, once it has been fetched */
async function installOwn() {
  console.log('No browser found; fetching one: playwright install chromium --only-shell');
  const fetched = runTool('playwright', ['install', 'chromium', '--only-shell'], { output: 'none' });
  if (!fetched) console.log('It could not be fetched.');
  return fetched ? tryStart(null) : null;
}

/** @returns {Promise<FoundBrowser | null>} Debian's, once its package is in */
async function installDebian() {
  return whyNotDebian() === null && installBrowserDebian() ? firstThatStarts([DEBIAN_BROWSER]) : null;
}

/**
 * Finds a browser for the tests and, where there is none, installs one. In this order: the one CHROMIUM_PATH names,
 * Playwright's own copy, an installed Chrome, Chromium or Edge, a fresh copy of Playwright's, Debian's package (see
 * `installBrowserDebian`: it changes the system). One that does not start is passed over.
 * @returns {Promise<FoundBrowser>}
 * @throws {Error} when none starts: one line that says what to do
 */
export async function findBrowser() {
  const named = process.env['CHROMIUM_PATH'];
  if (named) {
    const found = await firstThatStarts([named]);
    if (found) return found;
    console.error(`CHROMIUM_PATH: ${named} does not start; looking elsewhere.`);
  }
  const found =
    (await firstThatStarts([null, ...usualPlaces(process.platform, process.env)])) ??
    (await installOwn()) ??
    (await installDebian());
  if (found) return found;
  const reason = whyNotDebian();
  throw new Error(
    `no browser for the tests: none starts here, Playwright's could not be fetched, and Debian's ` +
      `${reason === null ? 'package could not be installed' : `was not tried (${reason})`}. ` +
      'Install Chrome, Chromium or Edge, or set CHROMIUM_PATH to one.',
  );
}
