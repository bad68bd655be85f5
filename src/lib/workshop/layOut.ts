import { failure, pointerTo, success, type Fault, type Result } from '$lib/project/fault.ts';
import { cutterOf } from './beam.ts';
import { nested, type Nested } from './nest.ts';
import type { Arrangement, Project } from '$lib/project/project.ts';
import type { Part, Sheet } from './part.ts';

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

/** What a project wants that its sheets are not: a fault for each stock that is short, and for each held part that lies elsewhere. */
export const unmetBy = ({ short, released }: Nested, at: string): readonly Fault[] => [
  ...short,
  ...released.map(({ index, message }) => ({ pointer: at + pointerTo('locked', index), message })),
];
