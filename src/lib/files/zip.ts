import { strToU8, zipSync } from 'fflate';
import { folded } from './fileName.ts';

export interface ZipEntry {
  /** Relative, `/` between folders. */
  readonly path: string;
  readonly content: string | Uint8Array;
}

/**
 * The earliest time a zip archive can hold, so that the same entries always give the same bytes. Local time, because
 * that is what the format stores.
 */
const TIME = new Date(1980, 0, 1);

/**
 * The entries as one zip archive, texts as UTF-8.
 *
 * @throws Error naming the path when it leaves the archive's folder, could be taken for something other than a plain
 * name, or meets another entry.
 */
export function zipFile(entries: readonly ZipEntry[]): Uint8Array {
  refuseClashes(entries.map((entry) => entry.path));
  return packed(entries);
}

/** The entries as one zip archive whatever their paths: for file formats that are archives and name their own entries. */
export function packed(entries: readonly ZipEntry[]): Uint8Array {
  const files: Record<string, Uint8Array> = {};
  for (const { path, content } of entries) files[path] = typeof content === 'string' ? strToU8(content) : content;
  return zipSync(files, { level: 6, mtime: TIME });
}

function refuseClashes(paths: readonly string[]): void {
  const taken = new Set<string>();
  for (const path of paths) {
    if (!isSafe(path)) throw new Error(`zip: expected a plain relative path, got ${JSON.stringify(path)}`);
    if (taken.has(folded(path))) throw new Error(`zip: expected every path once, got ${JSON.stringify(path)} twice`);
    taken.add(folded(path));
  }
  for (const path of paths) {
    const above = parents(folded(path)).find((folder) => taken.has(folder));
    if (above) throw new Error(`zip: expected a file or a folder, got both at ${JSON.stringify(above)}`);
  }
}

const parents = (path: string): string[] =>
  [...path.matchAll(/\//g)].map((separator) => path.slice(0, separator.index));

const isSafe = (path: string): boolean => path !== '__proto__' && path.split('/').every(isSafeName);

/** Not empty, no `.` or `..`, nothing that Windows reads as a drive or a separator, no controls, no end it drops. */
const isSafeName = (name: string): boolean => /^[^\p{C}\\:*?"<>|]{1,255}$/u.test(name) && !/^\.|[. ]$/.test(name);
