import { readFileSync, statSync } from 'node:fs';
import { failure, type Result } from '$lib/project/fault.ts';
import { LONGEST_FILE, parseProject } from '$lib/project/parse.ts';
import type { Project } from '$lib/project/project.ts';

const refused = (message: string): Result<never> => failure({ pointer: '', message });

/** The project in a file, or why there is none. The size is looked at before anything is read. */
export function readProject(path: string): Result<Project> {
  const text = readJsonFile(path, 'a project file');
  return text.ok ? parseProject(text.value) : text;
}

/** The text of a file. @param what It is expected to be, with its article. */
export function readJsonFile(path: string, what: string): Result<string> {
  const stat = statSync(path, { throwIfNoEntry: false });
  if (!stat) return refused(`expected ${what}, got ${JSON.stringify(path)}, which is not there`);
  if (!stat.isFile()) return refused(`expected ${what}, got ${JSON.stringify(path)}, which is not a file`);
  if (stat.size > LONGEST_FILE) {
    return refused(
      `expected ${what} of at most ${LONGEST_FILE / 1e6} MB, got one of ${(stat.size / 1e6).toFixed(1)} MB`,
    );
  }
  return readText(path);
}

function readText(path: string): Result<string> {
  try {
    return { ok: true, value: new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(path)) };
  } catch (error) {
    return refused(
      error instanceof TypeError
        ? 'expected text in UTF-8, got other bytes'
        : `expected a file that can be read, got ${JSON.stringify(path)}: ${error instanceof Error ? error.message : ''}`,
    );
  }
}
