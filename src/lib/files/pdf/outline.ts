/** A point of a letter's outline, font units, y up; off the curve it bends the edge as a quadratic curve's middle point. */
export interface OutlinePoint {
  readonly x: number;
  readonly y: number;
  readonly on: boolean;
}

/** The closed outlines of a letter, filled where they wind round a point at all. */
export type Outline = readonly (readonly OutlinePoint[])[];

/** Bits of a simple glyph's flags and of a composite's (OpenType, `glyf`). */
const ON_CURVE = 0x01;
const SHORT = [0x02, 0x04] as const;
const REPEAT = 0x08;
const SAME = [0x10, 0x20] as const;
const WORDS = 0x0001;
const OFFSETS = 0x0002;
const SCALED = 0x0008 | 0x0040 | 0x0080;
const MORE = 0x0020;

/**
 * The outline that a glyph's description in a TrueType font gives. `part`: description of another glyph, of which accented
 * letters are put together.
 *
 * @throws RangeError where parts are turned, scaled or matched by their points, which no letter of the page's font is.
 */
export function readOutline(glyph: Uint8Array, part: (id: number) => Uint8Array): Outline {
  if (glyph.length === 0) return [];
  const view = new DataView(glyph.buffer, glyph.byteOffset, glyph.byteLength);
  const contours = view.getInt16(0);
  return contours < 0 ? readComposite(view, part) : readSimple(view, contours);
}

function readSimple(view: DataView, contours: number): Outline {
  const ends = Array.from({ length: contours }, (_, i) => view.getUint16(10 + 2 * i));
  const count = (ends.at(-1) ?? -1) + 1;
  let at = 10 + 2 * contours;
  at += 2 + view.getUint16(at);
  const flags: number[] = [];
  while (flags.length < count) {
    const flag = view.getUint8(at++);
    const times = flag & REPEAT ? view.getUint8(at++) : 0;
    for (let i = 0; i <= times; i += 1) flags.push(flag);
  }
  const [xs = [], ys = []] = [0, 1].map((axis) => {
    const [short, same] = [SHORT[axis] ?? 0, SAME[axis] ?? 0];
    let value = 0;
    return flags.map((flag) => {
      if (flag & short) value += view.getUint8(at++) * (flag & same ? 1 : -1);
      else if (!(flag & same)) {
        value += view.getInt16(at);
        at += 2;
      }
      return value;
    });
  });
  const points = flags.map((flag, i) => ({ x: xs[i] ?? 0, y: ys[i] ?? 0, on: (flag & ON_CURVE) !== 0 }));
  return ends.map((end, i) => points.slice(i === 0 ? 0 : (ends[i - 1] ?? 0) + 1, end + 1));
}

function readComposite(view: DataView, part: (id: number) => Uint8Array): Outline {
  const outline: (readonly OutlinePoint[])[] = [];
  let at = 10;
  for (let more = true; more;) {
    const flags = view.getUint16(at);
    if (!(flags & OFFSETS) || flags & SCALED) throw new RangeError('expected a letter of parts that are only moved');
    const words = (flags & WORDS) !== 0;
    const [dx, dy] = words
      ? [view.getInt16(at + 4), view.getInt16(at + 6)]
      : [view.getInt8(at + 4), view.getInt8(at + 5)];
    const moved = readOutline(part(view.getUint16(at + 2)), part);
    outline.push(...moved.map((points) => points.map(({ x, y, on }) => ({ x: x + dx, y: y + dy, on }))));
    more = (flags & MORE) !== 0;
    at += words ? 8 : 6;
  }
  return outline;
}

/** The description of a simple glyph, without hints, its length a multiple of four. */
export function writeOutline(outline: Outline): Uint8Array {
  const points = outline.flat();
  if (points.length === 0) return new Uint8Array(0);
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const box = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
  let end = -1;
  const ends = outline.map(({ length }) => (end += length));
  const steps = (values: readonly number[]): number[] => values.map((value, i) => value - (values[i - 1] ?? 0));
  const [across, up] = [steps(xs), steps(ys)];
  const flags = points.map(({ on }, i) => (on ? ON_CURVE : 0) | (across[i] ? 0 : SAME[0]) | (up[i] ? 0 : SAME[1]));
  const words = (values: readonly number[]): number[] => values.flatMap((value) => [(value >> 8) & 0xff, value & 0xff]);
  const moves = (values: readonly number[]): number[] => words(values.filter((value) => value !== 0));
  const bytes = [...words([outline.length, ...box, ...ends, 0]), ...flags, ...moves(across), ...moves(up)];
  const glyph = new Uint8Array(4 * Math.ceil(bytes.length / 4));
  glyph.set(bytes);
  return glyph;
}
