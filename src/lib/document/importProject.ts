import { utf8 } from '$lib/files/utf8.ts';
import { failure, type Result } from '$lib/project/fault.ts';
import { parseProject } from '$lib/project/parse.ts';
import type { Project } from '$lib/project/project.ts';
import { checkSize } from './fileSize.ts';

/**
 * The project in a file or a text, or its faults. Nothing that is open is touched: what to do with the project is the
 * caller's. Never throws: a file that is gone, that may not be read, or that is no text is a fault too.
 */
export async function readProject(source: Blob | string): Promise<Result<Project>> {
  if (typeof source === 'string') return parseProject(source);
  const small = checkSize(source.size);
  if (!small.ok) return small;
  try {
    return parseBytes(await source.arrayBuffer());
  } catch {
    return failure({
      pointer: '',
      message: 'expected a file that can be read, got one that is gone or may not be opened',
    });
  }
}

function parseBytes(bytes: ArrayBuffer): Result<Project> {
  const text = utf8(bytes);
  return text === null
    ? failure({ pointer: '', message: 'expected a text in UTF-8, got something else: is this a project file?' })
    : parseProject(text);
}
