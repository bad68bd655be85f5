import { radians } from '$lib/geometry/angle.ts';
import type { Contour, Path } from '$lib/geometry/contour.ts';
import { extentOf } from '$lib/geometry/extent.ts';
import type { Point } from '$lib/geometry/point.ts';
import { boxOf, type Box } from './box.ts';
import { textWidth } from './dimensionStyle.ts';
import type { Subject } from './view.ts';

/**
 * What is drawn on a paper: a line, a circle or a line of text. Paper units, mm in a file and px on a screen; y down. Screen, SVG
 * and PDF draw the same.
 */
export type Primitive = LinePrimitive | CirclePrimitive | TextPrimitive;

/** What an area is filled with: ink, the paper itself, hatching, or the tint of what it is a picture of. */
export type Fill = 'ink' | 'paper' | 'hatch' | Subject;

/** What of a dimension a line is, for a screen that tells them apart by colour. */
export type Part = 'extension' | 'line' | 'arrow';

interface Drawn {
  /** Line width; 0 for none. */
  readonly width: number;
  /** Dashes and gaps in turn; default a continuous line. */
  readonly dashes?: readonly number[];
  /** Default nothing. */
  readonly fill?: Fill;
  readonly part?: Part;
}

export interface LinePrimitive extends Drawn {
  readonly kind: 'line';
  readonly points: readonly Point[];
  readonly closed: boolean;
  /** How the edge that leaves each point is bent, as a contour's vertices say it, in the paper's axes; default all straight. */
  readonly bulges?: readonly number[];
}

export interface CirclePrimitive extends Drawn {
  readonly kind: 'circle';
  readonly centre: Point;
  readonly radius: number;
}

export interface TextPrimitive {
  readonly kind: 'text';
  readonly text: string;
  /** On the base line. */
  readonly at: Point;
  /** Degrees clockwise; default 0. */
  readonly turn?: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Height of the font; capitals are about 0.72 of it. */
  readonly size: number;
}

export const line = (points: readonly Point[], width: number): LinePrimitive => ({
  kind: 'line',
  points,
  closed: false,
  width,
});

/** The contour as it runs on the paper. */
export function contourOf(primitive: LinePrimitive | CirclePrimitive): Contour {
  if (primitive.kind === 'circle') return primitive;
  const { points, bulges, closed } = primitive;
  const vertices = points.map(([x, y], index) => ({ x, y, bulge: bulges?.[index] ?? 0 }));
  return { kind: 'path', closed, vertices };
}

/** A contour as a line or a circle to draw, in the axes that it is given in. */
export const contourPrimitive = (contour: Contour, width: number): LinePrimitive | CirclePrimitive =>
  contour.kind === 'circle' ? { ...contour, width } : pathPrimitive(contour, width);

export const pathPrimitive = ({ vertices, closed }: Path, width: number): LinePrimitive => ({
  kind: 'line',
  points: vertices.map(({ x, y }): Point => [x, y]),
  bulges: vertices.map(({ bulge }) => bulge),
  closed,
  width,
});

/** How far a line of text reaches below its base line and above it, as a share of the font's height. */
const BELOW = 0.25;
const ABOVE = 0.8;

/** The box round primitives with their line widths, `[left, top, right, bottom]`; texts count with the room they are given. */
export const primitivesBox = (primitives: readonly Primitive[]): Box => boxOf(primitives.flatMap(cornersOf));

function cornersOf(primitive: Primitive): Point[] {
  if (primitive.kind === 'text') return textCorners(primitive);
  const by = primitive.width / 2;
  if (primitive.kind === 'line' && !primitive.bulges) return primitive.points.flatMap((point) => around(point, by));
  const { left, bottom, right, top } = extentOf(contourOf(primitive));
  return [
    [left - by, bottom - by],
    [right + by, top + by],
  ];
}

const around = ([x, y]: Point, by: number): Point[] => [
  [x - by, y - by],
  [x + by, y + by],
];

function textCorners({ text, at, turn = 0, anchor, size }: TextPrimitive): Point[] {
  const room = textWidth(text, { textSize: size });
  const start = { start: 0, middle: -room / 2, end: -room }[anchor];
  const [cos, sin] = [Math.cos(radians(turn)), Math.sin(radians(turn))];
  return [start, start + room].flatMap((x) =>
    [-ABOVE * size, BELOW * size].map((y): Point => [at[0] + x * cos - y * sin, at[1] + x * sin + y * cos]),
  );
}

/** The primitives elsewhere on the paper. */
export function movePrimitives(primitives: readonly Primitive[], [dx, dy]: Point): Primitive[] {
  const moved = ([x, y]: Point): Point => [x + dx, y + dy];
  return primitives.map((primitive) => {
    if (primitive.kind === 'line') return { ...primitive, points: primitive.points.map(moved) };
    if (primitive.kind === 'circle') return { ...primitive, centre: moved(primitive.centre) };
    return { ...primitive, at: moved(primitive.at) };
  });
}

/** What is drawn with y up from a paper's lower edge, on that paper of a height. */
export function flipPrimitives(primitives: readonly Primitive[], height: number): Primitive[] {
  const flipped = ([x, y]: Point): Point => [x, height - y];
  return primitives.map((primitive) => {
    if (primitive.kind === 'circle') return { ...primitive, centre: flipped(primitive.centre) };
    if (primitive.kind === 'text') return { ...primitive, at: flipped(primitive.at), turn: -(primitive.turn ?? 0) };
    const { points, bulges } = primitive;
    return { ...primitive, points: points.map(flipped), ...(bulges ? { bulges: bulges.map((bulge) => -bulge) } : {}) };
  });
}

const LEAST_SIZE = 2.5;

/** A text no longer than its room: set smaller, down to 2.5 mm, then cut with an ellipsis. */
export function fittedText(primitive: TextPrimitive, room: number): TextPrimitive {
  const { text } = primitive;
  const asked = primitive.size;
  const size = Math.max(
    Math.min(LEAST_SIZE, asked),
    Math.min(asked, (asked * room) / textWidth(text, { textSize: asked })),
  );
  const fits = (words: string): boolean => textWidth(words, { textSize: size }) <= room * (1 + Number.EPSILON * 4);
  if (fits(text)) return { ...primitive, size };
  const kept = [...text];
  while (kept.length > 0 && !fits(`${kept.join('')}…`)) kept.pop();
  return { ...primitive, size, text: `${kept.join('').trimEnd()}…` };
}
