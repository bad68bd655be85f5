import { pointerTo } from '$lib/project/fault.ts';
import type { Layout } from '$lib/project/project.ts';

/** One input that is not the same in all layouts. */
export interface Difference {
  /** Within the layout. */
  readonly pointer: string;
  /** One a layout; null where it is none, or where what it belongs to is not there. */
  readonly values: readonly (string | number | boolean | null)[];
}

/** What differs in the input of some layouts, and only that, in the order of the file. */
export function differencesOf(layouts: readonly Layout[]): Difference[] {
  const leaves = layouts.map((layout) => new Map(leavesOf(layout, [])));
  const pointers = new Set(leaves.flatMap((of) => [...of.keys()]));
  return [...pointers].flatMap((pointer) => {
    const values = leaves.map((of) => of.get(pointer) ?? null);
    return values.some((value) => value !== values[0]) ? [{ pointer, values }] : [];
  });
}

type Leaf = readonly [pointer: string, value: string | number | boolean | null];

function leavesOf(value: unknown, steps: readonly string[]): Leaf[] {
  if (typeof value === 'object' && value !== null) {
    return Object.entries(value).flatMap(([key, held]) =>
      isRecord(steps, key) ? [] : leavesOf(held, [...steps, key]),
    );
  }
  const isValue =
    value === null || typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean';
  return isValue ? [[pointerTo(...steps), value]] : [];
}

/** What says nothing of the arrangement: the layout's own name, which values somebody typed, and what was read of the finished stands. */
const isRecord = (steps: readonly string[], key: string): boolean =>
  key === 'entered' || (steps.length === 0 && (key === 'name' || key === 'built'));
