import type { DimensionStyle } from './dimensionStyle.ts';
import type { Pen } from './view.ts';

/** How a pen draws, in paper units. */
export interface PenStroke {
  readonly width: number;
  /** Dashes and gaps in turn; empty for a continuous line. */
  readonly dashes: readonly number[];
}

/** Lengths in line widths after ISO 128-2: dash 12, long dash 24, gap 3. A dot is drawn as long as the line is wide. */
const DASH = 12;
const LONG = 24;
const GAP = 3;
const DOT = 1;
/** Of another layout: shorter than those of a hidden edge, so that neither passes for the other. */
const SHORT = 5;
/** An axis of a loudspeaker is drawn between narrow and wide, in narrow widths: it is what the drawing is about. */
const AIM = 1.4;

const PATTERN: Record<Pen, readonly number[]> = {
  wide: [],
  narrow: [],
  hidden: [DASH, GAP],
  centre: [LONG, GAP, DOT, GAP],
  phantom: [LONG, GAP, DOT, GAP, DOT, GAP],
  aim: [LONG, GAP, DOT, GAP],
  sight: [LONG, GAP, DOT, GAP],
  other: [SHORT, GAP],
};

/** The stroke of a pen on a paper. */
export function penStroke(pen: Pen, { narrow, wide }: DimensionStyle): PenStroke {
  const width = pen === 'wide' ? wide : pen === 'aim' ? AIM * narrow : narrow;
  return { width, dashes: PATTERN[pen].map((part) => part * width) };
}
