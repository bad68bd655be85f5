import { failure, success, type Result } from '$lib/project/fault.ts';
import { cutterOf } from '$lib/workshop/beam.ts';
import { nested } from './nest.ts';
import { unmetBy } from './unmet.ts';
import type { Arrangement, Project } from '$lib/project/project.ts';
import type { Part, Sheet } from '$lib/workshop/part.ts';

/**
 * The sheets of a layout, the same wherever they are asked for: nested from its seed (the first one where it names none)
 * round what it locks in place, until the search ends or a fixed budget of work is spent. Faults as `arrange` has them, and
 * one for each locked part that does not fit where it is locked, below `at`, the pointer of the arrangement.
 */
export function layOut(
  parts: readonly Part[],
  project: Pick<Project, 'stock' | 'cutter' | 'shop'>,
  arrangement: Arrangement | null,
  at: string,
): Result<readonly Sheet[]> {
  const { stock } = project;
  const cutter = cutterOf(project);
  const laid = nested(parts, stock, cutter, arrangement ?? {});
  if (!laid.ok) return laid;
  const faults = unmetBy(laid.value, at);
  return faults.length > 0 ? failure(...faults) : success(laid.value.sheets);
}
