import { asTyped, needs, says } from '$lib/project/sentence.ts';
import type { WidthLayer } from './body.ts';
import { built, noAnswer, type Outcome } from './outcome.ts';
import { shownDown, SLACK } from './slack.ts';
import { present, widthOf } from './widths.ts';

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
  /** How the width adds up. */
  readonly widths: readonly WidthLayer[];
}

/** Outer layers of another thickness: so many on each side. */
export interface CheekLayers {
  readonly thickness: number;
  readonly count: number;
}

const NO_CHEEKS: CheekLayers = { thickness: 0, count: 0 };

/**
 * The whole number of layers that comes nearest to the width asked for, at least one. Without glue and veneer it is the
 * width over the thickness, rounded. No answer when veneer or cheeks alone fill the width, or over `MOST_LAYERS`.
 *
 * @param thickness Of a layer, measured, over 0 mm.
 * @param glue Of one joint.
 * @param veneer Of one side.
 * @param cheeks Each has a glue line of its own.
 */
export function stackOf(
  widthAsked: number,
  thickness: number,
  glue: number,
  veneer: number,
  cheeks: CheekLayers = NO_CHEEKS,
): Outcome<Stack> {
  const core = widthAsked - 2 * veneer;
  if (core <= 0) {
    return noAnswer(
      '/stand/veneer',
      needs(says`a veneer under half the stand’s width of ${shownDown(widthAsked)}`, asTyped(veneer)),
    );
  }
  const outer = 2 * cheeks.count;
  const inner = core - outer * (cheeks.thickness + glue);
  if (inner <= SLACK && outer > 0) {
    return noAnswer(
      '/stand/cheeks',
      needs(
        says`cheeks under the stand’s width of ${shownDown(widthAsked)}`,
        says`${outer} of ${asTyped(cheeks.thickness)}`,
        'use fewer, thinner ones or a wider stand',
      ),
    );
  }
  const layers = Math.max(1, Math.round((inner + glue) / (thickness + glue)));
  if (layers > MOST_LAYERS) {
    return noAnswer(
      '/stand/width',
      needs(
        says`at most ${MOST_LAYERS} layers`,
        layers,
        says`${shownDown(widthAsked)} of width from layers of ${asTyped(thickness)}; use thicker stock or a narrower stand`,
      ),
    );
  }
  const widths = present([
    { what: 'layer', each: thickness, count: layers },
    { what: 'cheek', each: cheeks.thickness, count: outer },
    { what: 'glue', each: glue, count: layers + outer - 1 },
    { what: 'veneer', each: veneer, count: 2 },
  ]);
  const width = widthOf(widths);
  return built({ layers, width, widthAsked, leftOver: widthAsked - width, widths });
}
