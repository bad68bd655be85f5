import { edgesOf, pointAt } from '$lib/geometry/edge.ts';
import type { Path } from '$lib/geometry/contour.ts';
import { moved } from '$lib/geometry/moved.ts';
import { vec3, type Point, type Vec3 } from '$lib/geometry/point.ts';
import type { SideName } from '$lib/project/project.ts';
import type { StandPlan } from '$lib/solution/document.ts';
import type { Part } from '$lib/workshop/part.ts';
import { isoFace } from './isoFace.ts';
import type { Item } from './view.ts';

/** Where ribs stand: x of their middles from the left, y of the cross ribs' middles from the rear. */
interface Frame {
  readonly ribs: readonly { readonly x: number; readonly outside: Path }[];
  readonly crosses: readonly { readonly y: number; readonly height: (x: number) => number }[];
  readonly base: number;
  readonly thickness: number;
  readonly half: number;
}

/** Corners of the polygon that stands for a rounded corner, each. */
const ARC_STEPS = 6;
/** A corner of a part lies this near its end, mm: parts are moved to their origin with rounding. */
const SAME = 1e-6;

/**
 * Profile ribs and cross ribs, halved into each other. Drawn from what is farthest from the eye to what is nearest: between
 * planes square to x, and within those square to y, nothing hides what comes after it. A skin is left out, to show them.
 */
export function isoRibs(stand: StandPlan, parts: readonly Part[], side: SideName): Item[] {
  const frame = frameOf(stand, parts, side);
  const { ribs, half, thickness } = frame;
  const items = [...crossesBetween(frame, -half, (ribs[0]?.x ?? half) - thickness / 2)];
  for (const [i, rib] of ribs.entries()) {
    const next = ribs[i + 1];
    items.push(...ribItems(rib, i, frame));
    items.push(...crossesBetween(frame, rib.x + thickness / 2, next ? next.x - thickness / 2 : half));
  }
  return items;
}

function frameOf(stand: StandPlan, parts: readonly Part[], side: SideName): Frame {
  const { pieces, width, widths, thickness, slice } = stand;
  const mirror = side === 'right' ? 1 : -1;
  const wood = widths.find(({ what }) => what === 'rib span')?.each ?? width;
  const own = pieces.flatMap(({ part }) => parts.find(({ name }) => name === part) ?? []);
  const crossParts = own.filter(({ name }) => name.startsWith('cross-rib'));
  const ribParts = own.filter(({ name }) => name.startsWith('rib'));
  const corner: Point = [Math.min(...slice.map(([u]) => u)), Math.min(...slice.map(([, z]) => z))];
  const ribs = slotsOf(crossParts[0]).flatMap((across, i) => {
    const part = ribParts[i] ?? ribParts[0];
    return part ? [{ x: mirror * (across - wood / 2), outside: moved(part.outside, corner) }] : [];
  });
  const crosses = (ribParts[0]?.mark ?? []).flatMap((mark, i) => {
    const [along] = mark.kind === 'path' ? mark.vertices : [];
    const tops = (crossParts[i]?.outside.vertices ?? []).filter(({ y }) => y > 0);
    const [inboard, outboard] = [0, wood].map((end) => tops.find(({ x }) => Math.abs(x - end) <= SAME)?.y ?? 0);
    if (!along || inboard === undefined || outboard === undefined) return [];
    const height = (x: number): number => corner[1] + inboard + ((outboard - inboard) * (mirror * x + wood / 2)) / wood;
    return [{ y: along.x + corner[0], height }];
  });
  return {
    ribs: ribs.sort((a, b) => a.x - b.x),
    crosses: crosses.sort((a, b) => b.y - a.y),
    base: corner[1],
    thickness,
    half: wood / 2,
  };
}

/** Middles of the slots in a cross rib’s base, along it. */
function slotsOf(cross: Part | undefined): readonly number[] {
  const onBase = (cross?.outside.vertices ?? []).filter(({ y }) => y === 0).map(({ x }) => x);
  const inner = onBase.sort((a, b) => a - b).slice(1, -1);
  return inner.flatMap((from, i) => (i % 2 === 0 ? [(from + (inner[i + 1] ?? from)) / 2] : []));
}

/** The stretch of every cross rib between two planes: top, front, and its end where it is free. */
function crossesBetween({ crosses, base, thickness, half }: Frame, from: number, to: number): Item[] {
  if (to <= from) return [];
  return crosses.flatMap(({ y, height }, i) => {
    const [front, rear] = [y - thickness / 2, y + thickness / 2];
    const id = (what: string): string => `cross-${i}-${what}-${from.toFixed(2)}`;
    const top = [vec3(from, front, height(from)), vec3(to, front, height(to)), vec3(to, rear, height(to)), vec3(from, rear, height(from))]; // prettier-ignore
    const face = [vec3(from, front, base), vec3(to, front, base), vec3(to, front, height(to)), vec3(from, front, height(from))]; // prettier-ignore
    const end = [vec3(to, front, base), vec3(to, rear, base), vec3(to, rear, height(to)), vec3(to, front, height(to))]; // prettier-ignore
    return [isoFace(id('top'), top), isoFace(id('front'), face), ...(to === half ? [isoFace(id('end'), end)] : [])];
  });
}

/** A profile rib: the faces drawn out from its outline that look to the eye, rearmost first, then its near side. */
function ribItems({ x, outside }: Frame['ribs'][number], index: number, { thickness }: Frame): Item[] {
  const points = cornersOf(outside);
  const [far, near] = [x - thickness / 2, x + thickness / 2];
  const faces = points
    .map((from, i) => ({ from, to: points[(i + 1) % points.length] ?? from, i }))
    .filter(({ from, to }) => from[0] - to[0] + (from[1] - to[1]) > 0)
    .sort((a, b) => depth(b) - depth(a));
  return [
    ...faces.map(({ from, to, i }) =>
      isoFace(`rib-${index}-${i}`, [at(near, from), at(near, to), at(far, to), at(far, from)]),
    ),
    isoFace(
      `rib-${index}-side`,
      points.map((point) => at(near, point)),
    ),
  ];
}

/** How far back an edge lies along the way to the eye. */
const depth = ({ from, to }: { from: Point; to: Point }): number => from[0] + to[0] - from[1] - to[1];

const at = (x: number, [y, z]: Point): Vec3 => vec3(x, y, z);

const cornersOf = (path: Path): Point[] =>
  edgesOf(path).flatMap((edge) =>
    edge.kind === 'arc' ? Array.from({ length: ARC_STEPS }, (_, i) => pointAt(edge, i / ARC_STEPS)) : [edge.start],
  );
