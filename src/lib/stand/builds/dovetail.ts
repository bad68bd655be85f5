import { edgesOf, type Edge } from '$lib/geometry/edge.ts';
import { extentOf } from '$lib/geometry/extent.ts';
import type { Path, Vertex } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Printer, StandSettings } from '$lib/project/project.ts';
import type { Stretch } from '$lib/stand/openings.ts';
import { SLACK } from '$lib/stand/slack.ts';
import type { Layer } from '$lib/stand/layer.ts';
import { onBed, planOf } from './bed.ts';

/** A core cut in two across its length. */
export interface DovetailCut {
  /** u of the plumb cut. */
  readonly at: number;
  /** What the joint takes up, wood round it included: nothing else may be there. */
  readonly stretch: Stretch;
  /**
   * The two halves of an outline, counter-clockwise, both: the front one has the tail, the rear one the socket. The outline
   * may be higher than the one that was cut, its edges in the same order.
   */
  readonly halvesOf: (outside: Path) => { readonly front: Path; readonly rear: Path };
  /** Round the tail, mm. */
  readonly clearance: number;
}

/** Places tried for the cut: finer than a millimetre on any usual stand. */
const PLACES = 400;
/** Of the height at the cut: half the tail's neck and half its end, and its length; common practice, no source. */
const NECK = 1 / 8;
const END = 1 / 5;
const LONG = 1 / 3;
/** A longer tail wins nothing, mm: common practice, no source. */
const LONGEST = 15;
/** A tail shorter than this many clearances does not hold. */
const LEAST_CLEARANCES = 8;

/**
 * A plumb cut with a dovetail, as near to the middle as rods, slot and bed allow; null when there is none. The socket is
 * the tail with the clearance all round; the cut's plumb faces meet.
 *
 * @param outside The lowest outline: the tail has room in it.
 * @param highest The highest outline: its halves have to lie on the bed.
 */
export function dovetailCut(
  layer: Layer,
  outside: Path,
  highest: Path,
  settings: Pick<StandSettings, 'rods' | 'cable' | 'minimumEdge'>,
  printer: Printer,
): DovetailCut | null {
  const { left, right } = extentOf(outside);
  const edges = edgesOf(outside);
  const longest = Math.max(printer.bed.x, printer.bed.y);
  const middle = (left + right) / 2;
  const tries = Array.from({ length: PLACES - 1 }, (_, i) => left + ((i + 1) / PLACES) * (right - left))
    .filter((at) => Math.max(at - left, right - at) <= longest + SLACK)
    .sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle));
  for (const at of tries) {
    const cut = cutAt(at, layer, edges, settings, printer);
    if (cut === null) continue;
    const { front, rear } = cut.halvesOf(highest);
    if (onBed(planOf(front), printer) && onBed(planOf(rear), printer)) return cut;
  }
  return null;
}

function cutAt(
  at: number,
  { rods }: Layer,
  edges: readonly Edge[],
  settings: Pick<StandSettings, 'rods' | 'cable' | 'minimumEdge'>,
  { clearance }: Printer,
): DovetailCut | null {
  const here = crossings(edges, at);
  if (!here) return null;
  const high = here.top[1] - here.base[1];
  const long = Math.min(LONG * high, LONGEST);
  if (long < LEAST_CLEARANCES * clearance) return null;
  const reach = at + long + clearance;
  const wall = settings.rods?.edge ?? settings.minimumEdge;
  const stretch = { from: at - wall, to: reach + wall };
  const clear = rods.every(({ u, diameter }) => u + diameter / 2 <= stretch.from || u - diameter / 2 >= stretch.to);
  if (!clear) return null;
  const [before, there] = [crossings(edges, stretch.from), crossings(edges, stretch.to)];
  // Base and top run straight from before the cut to beyond the socket.
  const straight = [before, there].every((one) => one?.baseEdge === here.baseEdge && one.topEdge === here.topEdge);
  if (!there || !straight) return null;
  const low = Math.max(here.base[1], there.base[1]);
  const room = Math.min(here.top[1], there.top[1]) - low;
  const level = low + room / 2;
  const tail = { neck: NECK * room, end: END * room };
  const flare = (tail.end - tail.neck) / long;
  const wide = clearance * Math.hypot(1, flare);
  const socket = { neck: tail.neck + wide, end: tail.neck + flare * (long + clearance) + wide };
  if (room / 2 - socket.end < settings.minimumEdge / 2) return null;
  const key = ({ neck, end }: { neck: number; end: number }, to: number): Point[] => [
    [at, level - neck],
    [to, level - end],
    [to, level + end],
    [at, level + neck],
  ];
  return {
    at,
    stretch,
    clearance,
    halvesOf: (whole) => {
      const cut = crossings(edgesOf(whole), at);
      if (!cut) throw new Error('outlines of one core are all crossed alike');
      return {
        front: joined(side(whole, cut, 'front'), key(tail, at + long)),
        rear: joined(side(whole, cut, 'rear'), key(socket, reach).reverse()),
      };
    },
  };
}

interface Crossings {
  readonly base: Point;
  readonly top: Point;
  readonly baseEdge: number;
  readonly topEdge: number;
}

/** Where a plumb line crosses base and top; null unless it crosses exactly two edges, both straight. */
function crossings(edges: readonly Edge[], at: number): Crossings | null {
  const met = edges.flatMap((edge, index) => {
    const [a, b] = [edge.start, edge.end];
    if (Math.min(a[0], b[0]) > at || Math.max(a[0], b[0]) < at) return [];
    if (edge.kind === 'arc' || a[0] === b[0] || a[0] === at || b[0] === at) return [null];
    const z = a[1] + ((b[1] - a[1]) * (at - a[0])) / (b[0] - a[0]);
    return [{ index, point: [at, z] as const, rearwards: b[0] > a[0] }];
  });
  const base = met.find((one) => one?.rearwards);
  const top = met.find((one) => one && !one.rearwards);
  if (met.length !== 2 || !base || !top) return null;
  return { base: base.point, top: top.point, baseEdge: base.index, topEdge: top.index };
}

/** The vertices of one side of the cut, counter-clockwise, from one crossing to the other. */
function side(outside: Path, { base, top, baseEdge, topEdge }: Crossings, which: 'front' | 'rear'): readonly Vertex[] {
  const { vertices } = outside;
  const [first, last, from, to] = which === 'front' ? [top, base, topEdge, baseEdge] : [base, top, baseEdge, topEdge];
  const between: Vertex[] = [];
  for (let i = (from + 1) % vertices.length; ; i = (i + 1) % vertices.length) {
    const vertex = vertices[i];
    if (vertex) between.push(vertex);
    if (i === to) break;
  }
  return [corner(first), ...between, corner(last)];
}

const corner = ([x, y]: Point): Vertex => ({ x, y, bulge: 0 });

const joined = (vertices: readonly Vertex[], key: readonly Point[]): Path => ({
  kind: 'path',
  closed: true,
  vertices: [...vertices, ...key.map(corner)],
});
