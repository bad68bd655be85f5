import { mkdirSync, mkdtempSync, readdirSync, renameSync, rmdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';

export interface NamedFile {
  /** Relative to the folder, `/` between the parts. */
  readonly path: string;
  readonly content: string | Uint8Array;
}

/** Tries whether a folder can be made and written to, and leaves everything as it was. Throws the file system's own error. */
export function tryFolder(folder: string): void {
  const made = makeFolder(resolve(folder));
  try {
    rmdirSync(mkdtempSync(join(folder, '.writing-')));
  } finally {
    for (const path of made.reverse()) rmdirSync(path);
  }
}

/**
 * Makes a folder and those above it that are missing; says which, the outermost first. Step by step, as Node's own way
 * asks for ever where a file system answers that the parent is missing although it is there, as `/proc` does.
 */
function makeFolder(path: string): string[] {
  if (statSync(path, { throwIfNoEntry: false })?.isDirectory()) return [];
  const above = makeFolder(dirname(path));
  mkdirSync(path);
  return [...above, path];
}

/**
 * Writes all files below a folder or none: first into a folder of its own beside their places, then by renaming, so that
 * a full disk or a missing right leaves what was there as it was. Throws the file system's own error.
 */
export function writeWhole(folder: string, files: readonly NamedFile[]): void {
  makeFolder(resolve(folder));
  const waiting = mkdtempSync(join(folder, '.writing-'));
  try {
    for (const { path, content } of files) {
      mkdirSync(dirname(join(waiting, path)), { recursive: true });
      writeFileSync(join(waiting, path), content);
      refuseFolderInTheWay(join(folder, path));
    }
    for (const { path } of files) mkdirSync(dirname(join(folder, path)), { recursive: true });
    for (const { path } of files) renameSync(join(waiting, path), join(folder, path));
  } finally {
    rmSync(waiting, { recursive: true, force: true });
  }
}

function refuseFolderInTheWay(path: string): void {
  if (statSync(path, { throwIfNoEntry: false })?.isDirectory()) throw new Error(`a folder is in the way at ${path}`);
}

/** Files that an earlier run may have left in the folders written to, and that do not belong to this one. */
export function strangers(folder: string, files: readonly NamedFile[]): string[] {
  const ours = new Set(files.map(({ path }) => path));
  const folders = new Set(files.map(({ path }) => dirname(path)).filter((below) => below !== '.'));
  return [...folders].flatMap((below) =>
    readdirSync(join(folder, below))
      .map((name) => `${below}/${name}`)
      .filter((path) => !ours.has(path)),
  );
}
