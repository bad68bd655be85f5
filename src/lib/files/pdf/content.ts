import { radians } from '$lib/geometry/angle.ts';
import { edgesOf, pointAt, type ArcEdge } from '$lib/geometry/edge.ts';
import {
  contourOf,
  type CirclePrimitive,
  type LinePrimitive,
  type Primitive,
  type TextPrimitive,
} from '$lib/drawing/primitive.ts';
import { fixed } from '$lib/files/number.ts';
import { printedFill } from '$lib/files/printedFill.ts';
import { lettersIn, textLength, type Letter } from './pageFont.ts';

/** What is drawn on one page, mm, y down from its upper left. */
export interface PdfPage {
  readonly width: number;
  readonly height: number;
  /** Drawn whole. */
  readonly primitives: readonly Primitive[];
  /** Drawn only within a rectangle: its upper left and its size. */
  readonly within: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
    readonly primitives: readonly Primitive[];
  } | null;
}

/** PDF counts in points. */
export const POINT = 25.4 / 72;

/** Hundredths of a micrometre. */
const DECIMALS = 5;

/** An eighth of a turn as one curve strays from the arc by 4 millionths of its radius (computed); a quarter by 270. */
const WIDEST_CURVE = Math.PI / 4;

/** Names of the font and of the hatching pattern in a page's resources. */
export const FONT = '/F';
export const HATCH = '/H';

/**
 * The commands that draw a page.
 *
 * @param glyphOf the number of a letter's glyph.
 * @throws RangeError naming the document when a number is not finite.
 */
export function pageContent(page: PdfPage, title: string, glyphOf: (letter: Letter) => number): string {
  const number = (value: number): string => fixed(value, title, DECIMALS);
  const numbers = (...values: readonly number[]): string => values.map(number).join(' ');
  const draw = (primitive: Primitive): string[] =>
    primitive.kind === 'text' ? text(primitive, numbers, glyphOf) : shape(primitive, numbers);
  const { height, primitives, within } = page;
  const scale = 1 / POINT;
  return [
    // Millimetres and y down from here on; round ends and corners; the one font, an mm high.
    `${scale} 0 0 ${-scale} 0 ${height * scale} cm 1 J 1 j ${FONT} 1 Tf`,
    ...primitives.flatMap(draw),
    ...(within
      ? [
          `q ${numbers(within.x, within.y, within.width, within.height)} re W n`,
          ...within.primitives.flatMap(draw),
          'Q',
        ]
      : []),
  ].join('\n');
}

type Numbers = (...values: readonly number[]) => string;

function shape(primitive: LinePrimitive | CirclePrimitive, numbers: Numbers): string[] {
  const { width, dashes = [], fill } = primitive;
  const edges = edgesOf(contourOf(primitive));
  const [first] = edges;
  if (!first) return [];
  const colour = printedFill(fill, HATCH);
  const closed = primitive.kind === 'circle' || primitive.closed;
  // A straight way back to the start is what h draws.
  const drawn = closed && edges.at(-1)?.kind === 'straight' ? edges.slice(0, -1) : edges;
  const paint = colour === undefined ? (width === 0 ? 'n' : 'S') : width === 0 ? 'f' : 'B';
  return [
    `${numbers(width)} w [${numbers(...dashes)}] 0 d${colour === undefined ? '' : ` ${filling(colour)}`}`,
    `${numbers(...first.start)} m`,
    ...drawn.flatMap((edge) => (edge.kind === 'arc' ? curves(edge, numbers) : [`${numbers(...edge.end)} l`])),
    `${closed ? 'h ' : ''}${paint}`,
  ];
}

/** Four hexadecimal figures. */
export const hex = (value: number): string => value.toString(16).toUpperCase().padStart(4, '0');

/** `#f3f5f6` as the shares of red, green and blue. */
function filling(colour: string): string {
  if (colour === HATCH) return `/Pattern cs ${HATCH} scn`;
  const shares = [1, 3, 5].map((at) => fixed(parseInt(colour.slice(at, at + 2), 16) / 255, colour));
  return `${shares.join(' ')} rg`;
}

/** The arc as cubic curves that share its ends, directions and middles. */
function curves(arc: ArcEdge, numbers: Numbers): string[] {
  const count = Math.ceil(Math.abs(arc.sweep) / WIDEST_CURVE);
  const handle = (4 / 3) * Math.tan(arc.sweep / count / 4);
  return Array.from({ length: count }, (_, i) => {
    const from = pointAt(arc, i / count);
    const to = i + 1 === count ? arc.end : pointAt(arc, (i + 1) / count);
    const [fx, fy] = [from[0] - arc.centre[0], from[1] - arc.centre[1]];
    const [tx, ty] = [to[0] - arc.centre[0], to[1] - arc.centre[1]];
    return `${numbers(from[0] - handle * fy, from[1] + handle * fx, to[0] + handle * ty, to[1] - handle * tx, ...to)} c`;
  });
}

function text(
  { text: words, at: [x, y], turn = 0, anchor, size }: TextPrimitive,
  numbers: Numbers,
  glyphOf: (letter: Letter) => number,
): string[] {
  const letters = lettersIn(words);
  if (letters.length === 0) return [];
  const [cos, sin] = [Math.cos(radians(turn)), Math.sin(radians(turn))];
  const back = { start: 0, middle: 0.5, end: 1 }[anchor] * textLength(words, size);
  const codes = letters.map((letter) => hex(glyphOf(letter))).join('');
  const matrix = numbers(size * cos, size * sin, size * sin, -size * cos, x - back * cos, y - back * sin);
  return [`0 g BT ${matrix} Tm <${codes}> Tj ET`];
}
