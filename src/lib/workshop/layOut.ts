import { arrange } from './arrange.ts';
import { failure, pointerTo, success, type Result } from '$lib/project/fault.ts';
import { cutterOf } from './beam.ts';
import { nested } from './nest.ts';
import type { Arrangement, Project } from '$lib/project/project.ts';
import type { Part, Sheet } from './part.ts';

/**
 * The sheets of a layout, the same wherever they are asked for: in rows where the project says nothing of how its parts
 * lie, else nested from its seed round what it holds in place. Faults as `arrange` has them, and one for each held part
 * that does not fit where it is held, below `at`, the pointer of the arrangement.
 */
export function layOut(
  parts: readonly Part[],
  project: Pick<Project, 'stock' | 'cutter' | 'shop'>,
  arrangement: Arrangement | null,
  at: string,
): Result<readonly Sheet[]> {
  const { stock } = project;
  const cutter = cutterOf(project);
  if (arrangement === null) return arrange(parts, stock, cutter);
  const laid = nested(parts, stock, cutter, arrangement);
  if (!laid.ok) return laid;
  const { sheets, short, released } = laid.value;
  const faults = [
    ...short,
    ...released.map(({ index, message }) => ({ pointer: at + pointerTo('locked', index), message })),
  ];
  return faults.length > 0 ? failure(...faults) : success(sheets);
}
