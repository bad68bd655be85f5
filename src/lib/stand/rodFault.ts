import type { Point } from '$lib/geometry/point.ts';
import type { Rods } from '$lib/project/project.ts';
import * as fields from '$lib/project/fields/stand.ts';
import { asTyped, joined, onPage, says } from '$lib/project/sentence.ts';
import { noAnswer, type Refusal } from './outcome.ts';
import { shownDown, shownUp } from './slack.ts';
import { threshold } from './threshold.ts';

/**
 * The fault of rods that do not fit: the thickest rod that would in this profile, and how much more lift would take the
 * ones asked for. Either is left out when it lies outside what a project may hold.
 *
 * @param fits Whether rods fit a profile.
 */
export function noRoom(
  rods: Rods,
  core: readonly Point[],
  fits: (rods: Rods, core: readonly Point[]) => boolean,
): Refusal {
  const fitsThin = (diameter: number) => fits({ ...rods, diameter }, core);
  const fitsRaised = (lift: number) => fits(rods, raised(core, lift));
  const { min } = fields.rods.diameter;
  const { max } = fields.stand.lift;
  const remedies = [
    ...(fitsThin(min) ? [says`rods of at most ${shownDown(threshold(min, rods.diameter, fitsThin))}`] : []),
    ...(fitsRaised(max) ? [says`${shownUp(threshold(max, 0, fitsRaised))} more lift`] : []),
  ];
  const wanted = says`room for ${rods.count} rods of ${asTyped(rods.diameter)} with ${asTyped(rods.edge)} of wood round each hole and a hole’s width between them`;
  const remedy =
    remedies.length > 0 ? says`it would take ${joined(remedies, ' or ')}` : 'use fewer rods or leave less wood';
  return noAnswer(
    '/stand/rods',
    onPage(
      says`expected ${wanted}, got a profile too small for them: ${remedy}`,
      says`Needs ${wanted}, which this profile has not: ${remedy}`,
    ),
  );
}

/** The profile under the same top with more lift: its ends run on downwards. */
function raised(core: readonly Point[], lift: number): readonly Point[] {
  const [front = [0, 0], rear = [0, 0], topRear = [0, 0], topFront = [0, 0]] = core;
  const foot = ([u, z]: Point, top: Point): Point => [u + ((u - top[0]) * lift) / (top[1] - z), z - lift];
  return [foot(front, topFront), foot(rear, topRear), topRear, topFront];
}
