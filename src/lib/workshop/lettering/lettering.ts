import type { Path } from '$lib/geometry/contour.ts';
import { findGlyph, lettersOf, replacementGlyph, SPACING, type Glyph } from './glyph.ts';

/** Where a line of text goes. Lengths in mm. */
export interface LetteringPlace {
  /** Height of the capitals, over 0. The stroke reads well at a tenth of it. */
  readonly height: number;
  /** The anchor, on the baseline. */
  readonly x: number;
  readonly y: number;
  /** Which point of the line the anchor is. */
  readonly anchor: 'start' | 'middle' | 'end';
  /** Radians, counter-clockwise about the anchor; default 0. */
  readonly turn?: number;
}

/** How far a line may reach above and below its baseline, as a share of the letter height: accents and tails. */
export const LETTERING_ABOVE = 1.3;
export const LETTERING_BELOW = 0.3;

/**
 * Single-stroke lettering as open paths for the `engrave` layer, arcs as true arcs. What has no shape of its own is drawn
 * as a crossed box, one for each letter, never left out; see `canLetter`.
 *
 * @throws RangeError for a height that is not over 0 or a place that is not finite.
 */
export function letter(text: string, place: LetteringPlace): Path[] {
  const { height, x, y, anchor, turn = 0 } = place;
  for (const [name, value] of Object.entries({ height, x, y, turn })) {
    if (!Number.isFinite(value)) throw new RangeError(`lettering: expected a finite ${name}, got ${value}`);
  }
  if (height <= 0) throw new RangeError(`lettering: expected a height over 0 mm, got ${height}`);
  const unit = height / 10;
  const shift = { start: 0, middle: 0.5, end: 1 }[anchor] * letteringWidth(text, height);
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return line(text).flatMap(({ glyph, left }) =>
    glyph.paths.map((path) => ({
      ...path,
      vertices: path.vertices.map((vertex) => {
        const along = (left + vertex.x) * unit - shift;
        const up = vertex.y * unit;
        return { x: x + along * cos - up * sin, y: y + along * sin + up * cos, bulge: vertex.bulge };
      }),
    })),
  );
}

/** Length of the line of text from its first letter's left edge to its last one's right, mm; 0 for no text. */
export function letteringWidth(text: string, height: number): number {
  const last = line(text).at(-1);
  return last ? ((last.left + last.glyph.width) * height) / 10 : 0;
}

/** Whether every letter of the text has a shape of its own, so that nothing comes out as a crossed box. */
export function canLetter(text: string): boolean {
  return lettersOf(text).every((one) => findGlyph(one) !== null);
}

/** The letters of some texts that come out as a crossed box, each once. */
export const unlettered = (texts: readonly string[]): readonly string[] => [
  ...new Set(texts.flatMap(lettersOf).filter((one) => findGlyph(one) === null)),
];

function line(text: string): { glyph: Glyph; left: number }[] {
  let left = 0;
  return lettersOf(text).map((one) => {
    const glyph = findGlyph(one) ?? replacementGlyph;
    const placed = { glyph, left };
    left += glyph.width + SPACING;
    return placed;
  });
}
