import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, readdirSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { root } from './root.mjs';
import { runTool } from './run.mjs';

/** Everything the bundles are made from. */
const SOURCES = ['src/lib', 'src/command', 'bench', 'vite.cli.config.ts', 'package.json', 'package-lock.json'];
const dist = join(root, 'dist');
const stamp = join(dist, '.sources');

/** How the folder that a process builds in is called, before its number. */
const BUILD_PREFIX = '.build-';

/** Chunks that no bundle names any more are kept this long, ms: a command that started before may still load them. */
const KEEP = 24 * 60 * 60 * 1000;

/**
 * @param {string} path
 * @param {import('node:crypto').Hash} hash takes in the path, size and time of every file below it
 */
function addTo(hash, path) {
  const stat = statSync(join(root, path), { throwIfNoEntry: false });
  if (!stat) return;
  if (stat.isDirectory()) for (const entry of readdirSync(join(root, path)).sort()) addTo(hash, `${path}/${entry}`);
  else hash.update(`${path} ${stat.size} ${stat.mtimeMs}\n`);
}

/** @returns {string} changes whenever a source file is edited, added or removed */
function fingerprint() {
  const hash = createHash('sha256');
  for (const source of SOURCES) addTo(hash, source);
  return hash.digest('hex');
}

/** @returns {string} the fingerprint of the sources that `dist/` was built from; empty when there is none */
function built() {
  try {
    return readFileSync(stamp, 'utf8');
  } catch {
    return '';
  }
}

/**
 * Moves a finished build into place, file by file. A rename replaces a file at once, and chunks carry the hash of their
 * content in their names and go first, so that whoever reads `dist/` meanwhile, or builds the same beside us, always
 * finds an entry whose chunks are all there.
 * @param {string} from a folder on the same disk
 */
function moveIn(from) {
  const files = readdirSync(from, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const chunksFirst = files.sort((a, b) => Number(a.parentPath === from) - Number(b.parentPath === from));
  for (const { parentPath, name } of chunksFirst) {
    const folder = join(dist, relative(from, parentPath));
    mkdirSync(folder, { recursive: true });
    renameSync(join(parentPath, name), join(folder, name));
  }
}

/** Removes the chunks of builds long gone, and what a build that was cut short left behind. */
function prune() {
  const old = [
    ...readdirSync(join(dist, 'chunks')).map((name) => join(dist, 'chunks', name)),
    ...readdirSync(dist).flatMap((name) => (name.startsWith(BUILD_PREFIX) ? [join(dist, name)] : [])),
  ].filter((path) => (statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? Infinity) < Date.now() - KEEP);
  for (const path of old) rmSync(path, { recursive: true, force: true });
}

/**
 * Builds the headless entries into `dist/` when a source has changed since the last time. Several processes may do so at
 * once: each builds in a folder of its own, and none sees a half-written one.
 * @returns {boolean} whether `dist/` is there and current; when not, the reason is on standard error
 */
export function bringUpToDate() {
  // Taken before the build: an edit made meanwhile then counts as not yet built.
  const mark = fingerprint();
  if (built() === mark) return true;
  const own = join(dist, `${BUILD_PREFIX}${process.pid}`);
  try {
    if (!runTool('vite', ['build', '--config', 'vite.cli.config.ts', '--outDir', own], { quiet: true })) return false;
    mkdirSync(join(dist, 'chunks'), { recursive: true });
    moveIn(own);
    writeFileSync(join(own, 'stamp'), mark);
    renameSync(join(own, 'stamp'), stamp);
    prune();
    return true;
  } finally {
    rmSync(own, { recursive: true, force: true });
  }
}
