import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { findBrowser } from '../../tools/findBrowser.mjs';
import { root } from '../../tools/root.mjs';
import { serveFolder } from '../../tools/serve.mjs';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Where the built site is, with a slash at its end. */
    site: string;
    /** The browser's program; null for Playwright's own copy. */
    browser: string | null;
  }
}

/** Below a sub-folder, for the site must work wherever somebody puts it. */
const BASE = '/some/where/';

/**
 * Serves the built site for the browser tests, and finds their browser.
 * @returns what ends the serving
 */
export default async function setUp(project: TestProject): Promise<() => Promise<void>> {
  const folder = join(root, 'build');
  if (!existsSync(join(folder, 'index.html'))) {
    throw new Error('There is no built site to test: run "npm run build" first.');
  }
  const [browser, site] = [await findBrowser(), await serveFolder({ folder, base: BASE })];
  project.provide('site', site.address);
  project.provide('browser', browser.path);
  return site.close;
}
