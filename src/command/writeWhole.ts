import { mkdirSync, mkdtempSync, readdirSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

export interface NamedFile {
  /** Relative to the folder, `/` between the parts. */
  readonly path: string;
  readonly content: string | Uint8Array;
}

/**
 * Writes all files below a folder or none: first into a folder of its own beside their places, then by renaming, so that
 * a full disk or a missing right leaves what was there as it was. Throws the file system's own error.
 */
export function writeWhole(folder: string, files: readonly NamedFile[]): void {
  mkdirSync(folder, { recursive: true });
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
