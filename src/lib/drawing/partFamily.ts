import type { Part } from '$lib/workshop/part.ts';
import { setOut, type SetOut } from './partPoints.ts';

/** Parts that are alike but for a few sizes, as the slices of a stand whose base is square to the desk. */
export interface Family {
  readonly first: Part;
  /** In their order, without the first. */
  readonly others: readonly Part[];
  /** What differs: the points by their names, along (0) or up (1). Empty for a part by itself. */
  readonly varies: readonly { readonly point: string; readonly axis: 0 | 1 }[];
}

/** So few are drawn one by one. */
const FEW = 3;
/** More columns than this are too narrow for their numbers on a page. */
const MOST_VARY = 5;
/** Sizes that differ by less, mm, print alike. */
const ALIKE = 0.001;

/** Parts in families, where neighbours are alike but for a few sizes; the others each by itself. */
export function partFamilies(parts: readonly Part[]): readonly Family[] {
  const groups: Part[][] = [];
  for (const part of parts) {
    const [before] = groups.at(-1) ?? [];
    if (before && sameKind(before, part)) groups.at(-1)?.push(part);
    else groups.push([part]);
  }
  return groups.flatMap((group): readonly Family[] => {
    const [first, ...others] = group;
    const varies = varying(group.map(setOut));
    return first && group.length >= FEW && varies.length <= MOST_VARY
      ? [{ first, others, varies }]
      : group.map((part) => ({ first: part, others: [], varies: [] }));
  });
}

/** The same board, corners and holes, wherever those are. */
function sameKind(a: Part, b: Part): boolean {
  const [one, other] = [setOut(a), setOut(b)];
  return (
    a.stock === b.stock &&
    a.labels === b.labels &&
    one.length === other.length &&
    one.every(({ name, diameter, radius }, i) => {
      const twin = other[i];
      return (
        twin?.name === name &&
        Math.abs(twin.radius - radius) < ALIKE &&
        (twin.diameter === null) === (diameter === null) &&
        Math.abs((twin.diameter ?? 0) - (diameter ?? 0)) < ALIKE
      );
    })
  );
}

function varying([first = [], ...others]: readonly (readonly SetOut[])[]): Family['varies'] {
  return first.flatMap(({ name, at }, i) =>
    ([0, 1] as const).flatMap((axis) =>
      others.some((points) => Math.abs((points[i]?.at[axis] ?? NaN) - at[axis]) >= ALIKE)
        ? [{ point: name, axis }]
        : [],
    ),
  );
}
