/**
 * Runs one of the headless entries, building `dist/` first when a source file is newer than the bundle.
 * Usage: node tools/command.mjs plan|schema|bench [arguments]
 */
import { spawnSync } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const [name = '', ...rest] = process.argv.slice(2);
const bundle = join(root, 'dist', `${name}.js`);

/** @param {string} path @returns {number} newest modification time below the path, in ms; 0 when it is not there */
function newest(path) {
  const stat = statSync(path, { throwIfNoEntry: false });
  if (!stat) return 0;
  if (!stat.isDirectory()) return stat.mtimeMs;
  return Math.max(0, ...readdirSync(path).map((entry) => newest(join(path, entry))));
}

const sources = ['src/lib', 'src/command', 'bench', 'vite.cli.config.ts', 'package.json', 'package-lock.json'];
if (newest(bundle) < Math.max(...sources.map((source) => newest(join(root, source))))) {
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  const built = spawnSync(process.execPath, [vite, 'build', '--config', 'vite.cli.config.ts'], {
    cwd: root,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  if (built.status !== 0) process.exit(built.status ?? 1);
}
const run = spawnSync(process.execPath, [bundle, ...rest], { stdio: 'inherit' });
process.exit(run.status ?? 1);
