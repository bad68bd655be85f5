import { failure, success, type Result } from '$lib/project/fault.ts';
import { LONGEST_FILE } from '$lib/project/parse.ts';

const megabytes = (bytes: number): string => `${Number((bytes / 1e6).toFixed(1))} MB`;

/** Refuses a file by its size in bytes, before any of it is read. */
export function checkSize(bytes: number): Result<number> {
  if (bytes <= LONGEST_FILE) return success(bytes);
  return failure({
    pointer: '',
    message: `expected a project file of at most ${megabytes(LONGEST_FILE)}, got ${megabytes(bytes)}`,
  });
}
