import { degrees } from '$lib/geometry/angle.ts';
import { polygonPath } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Stock } from '$lib/project/project.ts';
import { labelInside } from '$lib/workshop/lettering/label.ts';
import type { Part } from './part.ts';

/** How long a stretch of an edge or of the baffle a gauge lies on, mm: as much as is easily seen to be without a gap. */
const LONG = 120;
/** The shortest stretch that still shows an angle, mm. */
const SHORT = 20;
/** A gauge that is higher is a board that bends, mm: common practice, no source. */
const HIGH = 450;
/** Width of a gauge’s foot and of its head, mm: enough to stand by itself. */
const FOOT = 40;
const HEAD = 20;
/** What a gauge keeps clear of everything that it does not check, mm. */
const CLEAR = 3;
/** Beyond this a baffle’s gauge would be a spike, radians. */
const STEEPEST = (65 * Math.PI) / 180;

type Board = Pick<Stock, 'name' | 'thickness'>;

/** One upper edge of a stand as it runs over the desk, mm. */
export interface StandEdge {
  /** On the desk, from the end that the gauge begins at to the other. */
  readonly length: number;
  /** Of the wood’s top over the desk, at both ends. */
  readonly start: number;
  readonly end: number;
}

/** The edge’s rise from its far end to the end that the gauge begins at, radians: positive where that end is high. */
const slopeOfEdge = ({ length, start, end }: StandEdge): number => Math.atan2(start - end, length);

/**
 * A gauge that stands on the desk against a face of the stand, flush with the face’s end: its top is that of the wood, in
 * slope and in height. Null for an edge that no gauge shows: too short, or higher than a gauge stands.
 *
 * @param start What is at the end that it begins at, its left: `front`.
 */
export function edgeGauge(name: string, start: string, edge: StandEdge, board: Board): Part | null {
  const length = Math.min(LONG, edge.length);
  const far = edge.start + ((edge.end - edge.start) * length) / edge.length;
  const fits = length >= SHORT && Math.min(edge.start, far) > 0 && Math.max(edge.start, far) <= HIGH;
  if (!fits) return null;
  const angle = slopeOfEdge(edge);
  return gauge(name, [`← ${start.toUpperCase()} · `, '← '], angle, board, { from: 0, to: length }, [
    [0, 0],
    [length, 0],
    [length, far],
    [0, edge.start],
  ]);
}

/** A baffle, seen from its side, and what stands before it. mm. */
export interface BaffleFace {
  /** Of the axis, radians: tilt and rake. The face leans back by it. */
  readonly elevation: number;
  /** Of the baffle’s lower edge over the desk, and of its upper one over that. */
  readonly foot: number;
  readonly height: number;
  /** How far the stand reaches out before the lower edge, and how high it is there: 0 where it does not. */
  readonly before: number;
  readonly wood: number;
  /** Room on the desk before the lower edge. */
  readonly room: number;
}

/**
 * A gauge that stands on the desk before the loudspeaker, its foot clear of the stand, its head over it: the head’s right
 * edge lies on the baffle from just over its lower edge. Null for a baffle that no gauge shows: too steep, too high, or
 * without room before it.
 */
export function baffleGauge(name: string, baffle: BaffleFace, board: Board): Part | null {
  const { elevation, foot, height, before, wood, room } = baffle;
  if (!(Math.abs(elevation) <= STEEPEST)) return null;
  const lean = Math.tan(elevation);
  /** Of the face at a height over the desk, back from the baffle’s lower edge. */
  const face = (z: number): number => (z - foot) * lean;
  const low = Math.max(foot, before > 0 ? wood : 0) + CLEAR;
  const high = Math.min(low + LONG, foot + height, HIGH);
  if (high - low < SHORT) return null;
  const inner = -Math.max(before, 0, -face(low)) - CLEAR;
  const outer = Math.min(inner - FOOT, face(high) - HEAD);
  if (-outer > room) return null;
  const points: Point[] = [
    [outer, 0],
    [inner, 0],
    [inner, low],
    [face(low), low],
    [face(high), high],
    [outer, high],
  ];
  const standing = points.map(([x, y]): Point => [x - outer, y]);
  const width = Math.max(...standing.map(([x]) => x));
  const head = [[0, low], [face(low) - outer, low], [face(high) - outer, high], [0, high]] as const; // prettier-ignore
  return gauge(name, [''], elevation, board, { from: 0, to: width }, standing, head);
}

/** @param lettered Where its lettering may stand: a part of the outline, convex; default all of it. */
function gauge(
  name: string,
  prefixes: readonly string[],
  angle: number,
  { name: stock, thickness }: Board,
  span: { readonly from: number; readonly to: number },
  outline: readonly Point[],
  lettered: readonly Point[] = outline,
): Part {
  const shown = `${degrees(angle).toFixed(2)}°`;
  const texts = [...prefixes.map((prefix) => `${prefix}${name.toUpperCase()} ${shown}`), shown];
  return {
    name,
    stock,
    thickness,
    quantity: 1,
    outside: polygonPath(outline),
    inside: [],
    mark: [],
    labels: labelInside(lettered, span, texts),
  };
}
