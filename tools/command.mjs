/**
 * Runs one of the headless entries, building `dist/` first when a source file has changed since.
 * Usage: node tools/command.mjs plan|compare|sweep|search|place|prove|schema|bench [arguments]
 */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { bringUpToDate } from './bundle.mjs';
import { root } from './root.mjs';

const ENTRIES = ['plan', 'compare', 'sweep', 'search', 'place', 'prove', 'schema', 'bench'];
const [name = '', ...rest] = process.argv.slice(2);

if (!ENTRIES.includes(name)) {
  console.error(`expected ${ENTRIES.join(', ')}, got ${JSON.stringify(name)}`);
  process.exitCode = 2;
} else if (!bringUpToDate()) {
  console.error(`${name}: the command could not be built`);
  process.exitCode = 1;
} else {
  const bundle = join(root, 'dist', `${name}.js`);
  // As if Node had been started with the bundle; a second process would double the time to start.
  process.argv = [process.execPath, bundle, ...rest];
  await import(pathToFileURL(bundle).href);
}
