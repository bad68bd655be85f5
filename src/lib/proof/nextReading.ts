import { degrees } from '$lib/geometry/angle.ts';
import type { Vec3 } from '$lib/geometry/point.ts';
import type { Reading } from '$lib/project/project.ts';
import type { Fitted } from './fitStanding.ts';
import { expectedOf, type Surroundings } from './reading.ts';
import { isKnown, spreadOf, type Spread } from './spread.ts';
import { stood, type Cabinet } from './standing.ts';

/** A reading worth taking: how wide the pass would then be spread, and whether it would be known. */
export interface Advice {
  readonly reading: Reading;
  readonly then: Spread;
  readonly known: boolean;
}

/** How well each kind is usually read, half of what holds 95 of a hundred: common practice, no source. mm and degrees. */
const RULE = 0.5;
const TAPE = 1.5;
const LEVEL = 0.2;
const PROTRACTOR = 0.5;
const CARD = 4;

/** One reading of each kind, with nothing read yet. */
const kinds = (cabinet: Cabinet): readonly Reading[] => [
  { what: 'front-height', value: 0, sure: RULE },
  { what: 'rear-height', value: 0, sure: RULE },
  { what: 'inboard-height', value: 0, sure: RULE },
  { what: 'outboard-height', value: 0, sure: RULE },
  { what: 'slope', value: 0, sure: LEVEL },
  { what: 'toe', value: 0, sure: PROTRACTOR },
  { what: 'mark', x: 0, y: 0, sure: TAPE },
  { what: 'corner', which: 'rear-outboard', x: 0, y: 0, sure: TAPE },
  ...cabinet.drivers.slice(0, 1).map(({ name }): Reading => ({ what: 'driver-height', driver: name, value: 0, sure: TAPE })), // prettier-ignore
  { what: 'spot', on: 'top', x: 0, z: 0, sure: CARD },
  { what: 'spot', on: 'baffle', x: 0, z: 0, sure: CARD },
];

/**
 * The one further reading that would leave the axis' pass least spread, found by fitting as if it had been taken and had
 * agreed with the rest. Null when none can be reckoned with.
 */
export function nextReading(
  readings: readonly Reading[],
  fitted: Fitted,
  cabinet: Cabinet,
  around: Surroundings,
  head: Vec3,
  fit: (some: readonly Reading[]) => Fitted | null,
): Advice | null {
  const at = stood(cabinet, fitted.standing);
  const tried = kinds(cabinet).flatMap((kind): Advice[] => {
    const reading = answered(kind, expectedOf(kind, cabinet, at, around));
    const more = reading && fit([...readings, reading]);
    if (!reading || !more) return [];
    const then = spreadOf(more, cabinet, head);
    return [{ reading, then, known: isKnown(then) }];
  });
  const [first, ...rest] = tried;
  return first ? rest.reduce((best, one) => (one.then.pass.major < best.then.pass.major ? one : best), first) : null;
}

/** The reading as the standing that is known would give it. */
function answered(kind: Reading, [first = NaN, second = NaN]: readonly number[]): Reading | null {
  if (!Number.isFinite(first)) return null;
  switch (kind.what) {
    case 'slope':
    case 'lean':
    case 'toe':
      return { ...kind, value: degrees(first) };
    case 'mark':
    case 'corner':
      return { ...kind, x: first, y: second };
    case 'spot':
      return { ...kind, x: first, z: second };
    default:
      return { ...kind, value: first };
  }
}
