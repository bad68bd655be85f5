import { edgeExtent, extentOf, type Extent } from '$lib/geometry/extent.ts';
import { edgeGap } from '$lib/geometry/edgeGap.ts';
import { edgesOf, type Edge } from '$lib/geometry/edge.ts';
import { isInsideEdges } from '$lib/geometry/inside.ts';
import { asFixed, asTyped, says } from '$lib/project/sentence.ts';
import { overlap, TOUCH } from './overlap.ts';
import { placedContour } from './placed.ts';
import { pointerTo, type Fault } from '$lib/project/fault.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import type { Part, Sheet } from '$lib/workshop/part.ts';

/**
 * What is wrong with an arrangement: nothing when every copy of every part lies on a sheet of its stock, inside the margin,
 * no outline within `spacing` mm of another, none over or inside another. Measured on the finished outlines themselves,
 * arcs included, and sharing no step with the arranging. Lengths may miss by `TOUCH`. Pointers start at the list of sheets.
 */
export const layoutFaults = (...given: Parameters<typeof layoutFaultsSteps>): Fault[] =>
  toTheEnd(layoutFaultsSteps(...given));

/** The same with a pause after every two neighbours. */
export function* layoutFaultsSteps(
  sheets: readonly Sheet[],
  parts: readonly Part[],
  spacing: number,
  margin: number,
): Generator<undefined, Fault[]> {
  const laid = new Map<string, number>();
  for (const { placements } of sheets) for (const { part } of placements) laid.set(part, (laid.get(part) ?? 0) + 1);
  const faults = yield* sheetsFaultsSteps(sheets, parts, spacing, margin);
  return [...faults, ...parts.flatMap((part) => countFaults(part, laid))];
}

/** How a fault names a part's neighbour: as a file has it, or as the sheet on show does. */
type Named = (copy: { readonly name: string; readonly pointer: string }) => string;
const byPointer: Named = ({ name, pointer }) => `"${name}" (${pointer})`;
export const byName: Named = ({ name }) => `"${name}"`;

/** The same for sheets that need not hold every copy. */
export function* sheetsFaultsSteps(
  sheets: readonly Sheet[],
  parts: readonly Part[],
  spacing: number,
  margin: number,
  named = byPointer,
): Generator<undefined, Fault[]> {
  const known = new Map(parts.map((part) => [part.name, part]));
  const faults: Fault[] = [];
  for (const [index, sheet] of sheets.entries()) {
    faults.push(...(yield* sheetFaults(sheet, index, known, { spacing, margin, named })));
  }
  return faults;
}

function countFaults({ name, quantity }: Part, laid: ReadonlyMap<string, number>): Fault[] {
  const got = laid.get(name) ?? 0;
  const message = `expected ${quantity} of part "${name}", got ${got}`;
  return got === quantity ? [] : [{ pointer: '/sheets', message }];
}

interface Copy {
  readonly pointer: string;
  readonly name: string;
  readonly edges: readonly Edge[];
  readonly boxes: readonly Extent[];
  readonly extent: Extent;
}

function* sheetFaults(
  sheet: Sheet,
  index: number,
  known: ReadonlyMap<string, Part>,
  { spacing, margin, named }: { readonly spacing: number; readonly margin: number; readonly named: Named },
): Generator<undefined, Fault[]> {
  const faults: Fault[] = [];
  const copies: Copy[] = [];
  sheet.placements.forEach((placement, i) => {
    const pointer = pointerTo('sheets', index, 'placements', i);
    const part = known.get(placement.part);
    if (part?.stock !== sheet.stock) {
      const message = `expected a part of "${sheet.stock}", got "${placement.part}"`;
      faults.push({ pointer, message });
      return;
    }
    const outline = placedContour(part.outside, placement);
    const edges = edgesOf(outline);
    copies.push({ pointer, name: part.name, edges, boxes: edges.map(edgeExtent), extent: extentOf(outline) });
  });
  faults.push(...copies.flatMap((copy) => marginFaults(copy, sheet, margin)));
  for (const [a, b] of neighbours(copies, spacing)) {
    yield;
    faults.push(...pairFaults(a, b, spacing, named));
  }
  return faults;
}

function marginFaults({ pointer, name, extent }: Copy, { width, height }: Sheet, margin: number): Fault[] {
  const { left, bottom, right, top } = extent;
  const least = Math.min(left, bottom, width - right, height - top);
  // Written so that NaN fails as well.
  if (least >= margin - TOUCH) return [];
  const message = says`expected part "${name}" at least ${asTyped(margin)} from the sheet's edge, got ${asFixed(least, 3)}`;
  return [{ pointer, message }];
}

/** Pairs whose boxes come within the spacing: swept from left to right. */
function neighbours(copies: readonly Copy[], spacing: number): [Copy, Copy][] {
  const sorted = [...copies].sort((a, b) => a.extent.left - b.extent.left);
  return sorted.flatMap((copy, i) => {
    const near: [Copy, Copy][] = [];
    for (let j = i + 1; j < sorted.length; j++) {
      const other = sorted[j];
      if (other === undefined || other.extent.left > copy.extent.right + spacing) break;
      if (boxGap(copy.extent, other.extent) <= spacing) near.push([copy, other]);
    }
    return near;
  });
}

const boxGap = (a: Extent, b: Extent): number =>
  Math.max(a.left - b.right, b.left - a.right, a.bottom - b.top, b.bottom - a.top);

function pairFaults(a: Copy, b: Copy, spacing: number, named: Named): Fault[] {
  const gap = outlineGap(a, b, spacing);
  const over = gap <= TOUCH ? overlap(a.edges, b.edges) : contains(a, b) || contains(b, a);
  if (!over && gap >= spacing - TOUCH) return [];
  const message = over
    ? `expected part "${a.name}" clear of ${named(b)}, got an overlap`
    : says`expected ${asTyped(spacing)} between part "${a.name}" and ${named(b)}, got ${asFixed(gap, 3)}`;
  return [{ pointer: a.pointer, message }];
}

/** The distance between two outlines where it is under the spacing; else anything not under it. */
function outlineGap(a: Copy, b: Copy, spacing: number): number {
  let least = Infinity;
  a.edges.forEach((edge, i) => {
    b.edges.forEach((other, j) => {
      const [box, otherBox] = [a.boxes[i], b.boxes[j]];
      if (box === undefined || otherBox === undefined || boxGap(box, otherBox) > spacing + TOUCH) return;
      least = Math.min(least, edgeGap(edge, other));
    });
  });
  return least;
}

/** For outlines that do not meet: one corner inside means all of it. */
const contains = (outer: Copy, inner: Copy): boolean =>
  inner.edges.slice(0, 1).some(({ start }) => isInsideEdges(start, outer.edges));
