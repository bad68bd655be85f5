import type { Vec3 } from '$lib/geometry/point.ts';
import { covarianceWith, type Fitted } from './fitStanding.ts';
import { readingsOf } from './kinds.ts';
import { readAt, type Surroundings } from './reading.ts';
import { isKnown, spreadOf, type Spread } from './spread.ts';
import { stood, type Cabinet } from './standing.ts';
import type { Taken } from './taken.ts';

/** A reading worth taking: how wide the pass would then be spread, and whether it would be known. */
export interface Advice {
  readonly reading: Taken;
  readonly then: Spread;
  readonly known: boolean;
}

/**
 * The one further reading that would leave the axis' pass least spread, as if it had been taken and had agreed with the rest. Null when none can be reckoned with.
 */
export function nextReading(fitted: Fitted, cabinet: Cabinet, around: Surroundings, head: Vec3): Advice | null {
  const at = stood(cabinet, fitted.standing);
  const tried = readingsOf(cabinet).flatMap((kind): Advice[] => {
    const reading = readAt(kind, cabinet, at, around);
    if (!reading) return [];
    const then = spreadOf({ ...fitted, covariance: covarianceWith(fitted, reading, cabinet, around) }, cabinet, head);
    return [{ reading, then, known: isKnown(then) }];
  });
  const [first, ...rest] = tried;
  return first ? rest.reduce((best, one) => (one.then.pass.major < best.then.pass.major ? one : best), first) : null;
}
