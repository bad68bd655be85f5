import { built, noAnswer, type Outcome } from './outcome.ts';
import { shownDown } from './slack.ts';

/** A stack this high is beyond anybody's patience, and a sign of a wrong thickness. */
export const MOST_LAYERS = 2000;

/** What the stack across the width comes to, mm. */
export interface Stack {
  readonly layers: number;
  /** Finished: the layers, the glue between them and the veneer on both sides. */
  readonly width: number;
  readonly widthAsked: number;
  /** Asked less built: negative when the stack comes out wider. */
  readonly leftOver: number;
}

/**
 * The whole number of layers that comes nearest to the width asked for, at least one. Without glue and veneer it is the
 * width over the thickness, rounded. No answer when the veneer alone fills the width, or over `MOST_LAYERS`.
 *
 * @param thickness Of a layer, measured, over 0 mm.
 * @param glue Of one joint.
 * @param veneer Of one side.
 */
export function stackOf(widthAsked: number, thickness: number, glue: number, veneer: number): Outcome<Stack> {
  const core = widthAsked - 2 * veneer;
  if (core <= 0) {
    return noAnswer(
      '/stand/veneer',
      `expected a veneer under half the stand’s width of ${shownDown(widthAsked)} mm, got ${veneer} mm`,
    );
  }
  const layers = Math.max(1, Math.round((core + glue) / (thickness + glue)));
  if (layers > MOST_LAYERS) {
    return noAnswer(
      '/stand/width',
      `expected at most ${MOST_LAYERS} layers, got ${layers}: ${shownDown(widthAsked)} mm of width from layers of ${thickness} mm; use thicker stock or a narrower stand`,
    );
  }
  const width = layers * thickness + (layers - 1) * glue + 2 * veneer;
  return built({ layers, width, widthAsked, leftOver: widthAsked - width });
}
