import type { Path, Vertex } from '$lib/geometry/contour.ts';
import { accents, hasTail, isTall, turnedComma, type Accent } from './accents.ts';
import { smallLetters } from './smallLetters.ts';
import { lookalikes, replacement, shapes, type Shape } from './strokes.ts';

/** One letter ready to place: open paths in tenths of the letter height, from the left edge and the baseline. */
export interface Glyph {
  readonly width: number;
  readonly paths: readonly Path[];
}

/** Gap between the letters’ boxes, in tenths of the height. */
export const SPACING = 2.6;

/** Height over the baseline that accents stand on, over capitals and over small letters. */
const ACCENT_ON_CAPITAL = 10.9;
const ACCENT_ON_SMALL = 8;

/** The text cut into letters, each with the accents that belong to it. */
export function lettersOf(text: string): string[] {
  return text.normalize('NFC').match(/\P{M}\p{M}*|\p{M}/gu) ?? [];
}

/** Glyphs drawn so far: labels ask for the same few again while they look for their size. Only what has a shape is kept. */
const drawn = new Map<string, Glyph>();

/** The glyph of one letter with its accents, or null where there is no shape for it. */
export function findGlyph(letter: string): Glyph | null {
  const glyph = drawn.get(letter) ?? makeGlyph(letter);
  if (glyph) drawn.set(letter, glyph);
  return glyph;
}

function makeGlyph(letter: string): Glyph | null {
  const [first = '', ...rest] = lookalikes.get(letter) ?? letter;
  const whole = shapes.get(first);
  if (whole && rest.length === 0) return draw(whole);
  const [base = '', ...marks] = letter.normalize('NFD');
  const shape = shapes.get(base);
  const found = marks.map((mark) => (mark === CEDILLA && hasTail(base) ? turnedComma : accents.get(mark)));
  const joined = found.filter((accent) => accent !== undefined);
  if (shape && joined.length === found.length && fits(base, joined)) return joinAccents(base, shape, joined);
  return inARow(letter);
}

const CEDILLA = '\u0327';

/**
 * A letter that Unicode takes for several, or for one of another size: `½`, `™`, `ﬁ`, `Ǆ`. Null where it does not, or where
 * one of them has no shape.
 */
function inARow(letter: string): Glyph | null {
  const several = letter.normalize('NFKD').replaceAll('\u2044', '/');
  const row =
    smallLetters.get(letter) ??
    (several === letter.normalize('NFD') ? [] : lettersOf(several).map((text) => ({ text, scale: 1, raise: 0 })));
  if (row.length === 0) return null;
  let [end, before] = [0, 0];
  const paths: Path[] = [];
  for (const { text, scale, raise } of row) {
    for (const one of lettersOf(text)) {
      const glyph = findGlyph(one);
      if (glyph === null) return null;
      const left = end + SPACING * Math.min(before, scale);
      paths.push(...moved(scaled(glyph, scale), left, raise));
      [end, before] = [left + glyph.width * scale, scale];
    }
  }
  return { width: end, paths };
}

const scaled = ({ width, paths }: Glyph, by: number): Glyph => ({
  width: width * by,
  paths: paths.map((path) => ({ ...path, vertices: path.vertices.map((v) => ({ ...v, x: v.x * by, y: v.y * by })) })),
});

/** One accent above and one below a letter is what the line of text has room for. */
function fits(base: string, joined: readonly Accent[]): boolean {
  const below = joined.filter((accent) => accent.where === 'below').length;
  return /\p{L}/u.test(base) && joined.length - below <= 1 && below <= (hasTail(base) ? 0 : 1);
}

function joinAccents(base: string, shape: Shape, joined: readonly Accent[]): Glyph {
  const raised = joined.some((accent) => accent.where === 'above');
  const body = (raised && shapes.get(dotless.get(base) ?? '')) || shape;
  const width = Math.max(body[0], ...joined.map((accent) => accent.shape[0]));
  const shelf = isTall(base) ? ACCENT_ON_CAPITAL : ACCENT_ON_SMALL;
  return {
    width,
    paths: [
      ...moved(draw(body), (width - body[0]) / 2, 0),
      ...joined.flatMap((accent) => moved(draw(accent.shape), width / 2, accent.where === 'above' ? shelf : 0)),
    ],
  };
}

/** An accent takes the place of the dot. */
const dotless: ReadonlyMap<string, string> = new Map([
  ['i', 'ı'],
  ['j', 'ȷ'],
]);

function moved(glyph: Glyph, x: number, y: number): Path[] {
  return glyph.paths.map((path) => ({
    ...path,
    vertices: path.vertices.map((vertex) => ({ ...vertex, x: vertex.x + x, y: vertex.y + y })),
  }));
}

function draw([width, strokes]: Shape): Glyph {
  const written = strokes.split(';').filter((stroke) => stroke.trim() !== '');
  return { width, paths: written.map((stroke) => ({ kind: 'path', closed: false, vertices: verticesOf(stroke) })) };
}

function verticesOf(stroke: string): Vertex[] {
  const ring = /^\s*([-\d.]+),([-\d.]+),([\d.]+)\s*$/.exec(stroke);
  if (ring) return ringOf(Number(ring[1]), Number(ring[2]), Number(ring[3]));
  return stroke
    .trim()
    .split(' ')
    .map((point) => {
      const [place = '', turn = '0'] = point.split('@');
      const [x, y] = place.split(',');
      return { x: Number(x), y: Number(y), bulge: bulgeOf(Number(turn)) };
    });
}

/** A whole circle as one stroke of two half turns. */
const ringOf = (x: number, y: number, radius: number): Vertex[] => [
  { x: x - radius, y, bulge: 1 },
  { x: x + radius, y, bulge: 1 },
  { x: x - radius, y, bulge: 0 },
];

const bulgeOf = (degrees: number): number => Math.tan((degrees * Math.PI) / 720);

/** What stands in for a letter without a shape. */
export const replacementGlyph: Glyph = draw(replacement);
