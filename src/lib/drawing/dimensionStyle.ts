import type { Fineness } from './dimensionText.ts';

/** Sizes of everything that keeps its size while the drawing is scaled, in units of the paper: mm in a file, px on a screen. */
export interface DimensionStyle {
  /** One paper millimetre. */
  readonly unit: number;
  readonly textSize: number;
  /** Between a number and the line it stands on. */
  readonly textGap: number;
  readonly arrow: number;
  /** Half the width of an arrowhead at its tail. */
  readonly arrowHalf: number;
  /** Between the object and the beginning of its extension line; how far that runs past the dimension line. */
  readonly gap: number;
  readonly overrun: number;
  /** From the outline to the first row; from row to row. */
  readonly first: number;
  readonly step: number;
  /** Round a view, beyond its dimensions. */
  readonly margin: number;
  readonly narrow: number;
  readonly wide: number;
  /** How finely worked-out numbers are shown. */
  readonly fineness: Fineness;
}

/** Lettering of 2.5 mm capitals, whose letters are about 0.72 of the text size high. */
const TEXT_SIZE = 3.4;
/**
 * Advances as shares of the text size, the greater of the page's lettering and of the one it falls back to, as their files
 * have them: how text is given room before it is set. Figures and the signs that go with them; then letters at the most.
 */
const ADVANCES: ReadonlyMap<string, number> = new Map([
  ...Array.from('0123456789', (figure) => [figure, 0.65] as const),
  ...Array.from('≈−←→', (sign) => [sign, 0.84] as const),
  ...Array.from('▲✕', (sign) => [sign, 1] as const),
  ['/', 0.55],
  ['°', 0.5],
  ['(', 0.45],
  [')', 0.45],
  ['″', 0.4],
  [' ', 0.35],
  ['\u00a0', 0.35],
  ['.', 0.32],
  [',', 0.32],
  ['\u202f', 0.2],
]);
const ADVANCE = 0.66;
/** Paper mm. */
const MARGIN = 2;
/** Half the included angle of an arrowhead, about 18° in all: slender, within the 15° to 30° of ISO 129-1 (from memory). */
const ARROW_SLOPE = 0.16;

/**
 * Sizes after ISO 128 and ISO 129-1 as drawing textbooks give them: lines of 0.25 and 0.5 mm, arrowheads of 3 mm, the
 * first row 10 mm from the outline and 8 mm from row to row. `unit`: one paper millimetre in the paper's units; `textSize`
 * in the same units, when a small screen asks for more than 3.4 mm.
 */
export const dimensionStyle = (unit: number, textSize = TEXT_SIZE * unit): DimensionStyle => ({
  unit,
  textSize,
  textGap: 0.8 * unit,
  arrow: 3 * unit,
  arrowHalf: 3 * ARROW_SLOPE * unit,
  gap: unit,
  overrun: 1.5 * unit,
  first: 10 * unit,
  step: 8 * unit,
  margin: MARGIN * unit,
  narrow: 0.25 * unit,
  wide: 0.5 * unit,
  fineness: 'paper',
});

/** Text of a drawing on a screen by the width of its sheet, px: it grows with the window, and is never too small to read. */
const TEXT_STEPS = [
  { from: 1250, textSize: 16 },
  { from: 940, textSize: 15 },
  { from: 560, textSize: 14 },
  { from: 0, textSize: 13 },
] as const;

/** Below this width of the sheet, px, rows come closer together. */
const NARROW_SHEET = 560;

/** Sizes of a drawing on a screen, px. `width`: of the sheet. */
export function screenStyle(width: number): DimensionStyle {
  const textSize = TEXT_STEPS.find(({ from }) => width >= from)?.textSize ?? 13;
  const small = width < NARROW_SHEET;
  return {
    unit: textSize / 4.5,
    textSize,
    textGap: 4,
    arrow: small ? 8 : 10,
    arrowHalf: small ? 1.4 : 1.7,
    gap: 4,
    overrun: 5,
    first: small ? 16 : 28,
    step: small ? 20 : 24,
    // What is taken hold of at an edge keeps its size.
    margin: small ? 8 : (MARGIN * textSize) / 4.5,
    narrow: 1,
    wide: 2,
    fineness: 'screen',
  };
}

/** Room that a text takes along its line. */
export function textWidth(text: string, { textSize }: Pick<DimensionStyle, 'textSize'>): number {
  let width = 0;
  for (const sign of text) width += ADVANCES.get(sign) ?? ADVANCE;
  return width * textSize;
}
