import type { Contour } from '$lib/geometry/contour.ts';
import { letter, letteringWidth, type LetteringPlace } from '$lib/workshop/lettering.ts';

/** One line on paper. Origin at the page's lower left, x right, y up, mm. */
export interface Stroke {
  readonly contour: Contour;
  /** Of the line, mm; 0 for none. */
  readonly width: number;
  /** Lengths of dashes and gaps in turn; default a full line. */
  readonly dash?: readonly number[];
  /** What its area is filled with: the paper’s white, which hides what was drawn before, or ink. Default nothing. */
  readonly fill?: 'paper' | 'ink';
}

/** What is drawn on one page. */
export interface StrokePage {
  readonly width: number;
  readonly height: number;
  /** Drawn whole. */
  readonly strokes: readonly Stroke[];
  /** Drawn only within a rectangle: its lower left and its size. */
  readonly within: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
    readonly strokes: readonly Stroke[];
  } | null;
}

/** A stroke of a tenth of its height reads well. */
const STROKE_SHARE = 0.1;

/**
 * A line of lettering, made smaller where it would be longer than `most` mm. Letters are strokes, not text of a font, so
 * that every script with shapes here shows alike on every printer.
 */
export function words(text: string, place: LetteringPlace, most: number): Stroke[] {
  const long = letteringWidth(text, place.height);
  const height = long > most ? (place.height * most) / long : place.height;
  return letter(text, { ...place, height }).map((contour) => ({ contour, width: height * STROKE_SHARE }));
}
