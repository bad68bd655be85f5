import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { root } from './root.mjs';
import { runTool } from './run.mjs';

/** Everything the bundles are made from. */
const SOURCES = [
  'src/lib',
  'src/command',
  'bench',
  'tests/randomProject.ts',
  'vite.cli.config.ts',
  'package.json',
  'package-lock.json',
];

/** How the folder that a process builds in is called, before its number. */
const BUILD_PREFIX = '.build-';

/** Chunks that no bundle names any more are kept this long, ms: a command that started before may still load them. */
const KEEP = 24 * 60 * 60 * 1000;

/**
 * @param {import('node:crypto').Hash} hash takes in the path, size and time of every file below it
 * @param {string} path
 */
function addTo(hash, path) {
  const stat = statSync(path, { throwIfNoEntry: false });
  if (!stat) return;
  if (stat.isDirectory()) for (const entry of readdirSync(path).sort()) addTo(hash, join(path, entry));
  else hash.update(`${path} ${stat.size} ${stat.mtimeMs}\n`);
}

/**
 * @param {string} home
 * @returns {string} changes whenever a source file is edited, added or removed
 */
function fingerprint(home) {
  const hash = createHash('sha256');
  for (const source of SOURCES) addTo(hash, join(home, source));
  return hash.digest('hex');
}

/**
 * @param {string} stamp
 * @returns {string} the fingerprint of the sources that `dist/` was built from; empty when there is none
 */
function builtFrom(stamp) {
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
 * @param {string} dist
 */
function moveIn(from, dist) {
  const files = readdirSync(from, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const chunksFirst = files.sort((a, b) => Number(a.parentPath === from) - Number(b.parentPath === from));
  for (const { parentPath, name } of chunksFirst) {
    const folder = join(dist, relative(from, parentPath));
    mkdirSync(folder, { recursive: true });
    renameSync(join(parentPath, name), join(folder, name));
  }
}

/**
 * Removes the chunks of builds long gone, and what a build that was cut short left behind.
 * @param {string} dist
 */
function prune(dist) {
  const chunks = join(dist, 'chunks');
  const leftovers = [
    ...(existsSync(chunks) ? readdirSync(chunks).map((name) => join(chunks, name)) : []),
    ...readdirSync(dist).flatMap((name) => (name.startsWith(BUILD_PREFIX) ? [join(dist, name)] : [])),
  ];
  for (const path of leftovers) {
    const stat = statSync(path, { throwIfNoEntry: false });
    if (stat && stat.mtimeMs < Date.now() - KEEP) rmSync(path, { recursive: true, force: true });
  }
}

/**
 * @param {string} folder
 * @returns {boolean}
 */
const bundle = (folder) =>
  runTool('vite', ['build', '--config', 'vite.cli.config.ts', '--outDir', folder], { output: 'on failure' });

/**
 * Builds the headless entries into `dist/` when a source has changed since the last time. Several processes may do so at
 * once: each builds in a folder of its own, and none sees a half-written one. A build that fails leaves `dist/` alone.
 * @param {object} [options]
 * @param {string} [options.home] the folder that holds the sources and `dist/`; default the repository
 * @param {(folder: string) => boolean} [options.build] writes the bundles into a folder, and says whether it could
 * @returns {boolean} whether `dist/` is there and current; when not, the reason is on standard error
 */
export function bringUpToDate({ home = root, build = bundle } = {}) {
  const dist = join(home, 'dist');
  const stamp = join(dist, '.sources');
  // Taken before the build: an edit made meanwhile then counts as not yet built.
  const mark = fingerprint(home);
  if (builtFrom(stamp) === mark) return true;
  const own = join(dist, `${BUILD_PREFIX}${process.pid}`);
  mkdirSync(own, { recursive: true });
  try {
    if (!build(own)) return false;
    moveIn(own, dist);
    writeFileSync(join(own, 'stamp'), mark);
    renameSync(join(own, 'stamp'), stamp);
    prune(dist);
    return true;
  } finally {
    rmSync(own, { recursive: true, force: true });
  }
}
