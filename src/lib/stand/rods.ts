import type { Point } from '$lib/geometry/point.ts';
import type { Rods } from '$lib/project/project.ts';
import { leastWood } from './leastWood.ts';
import { type MiddleLine, middleLineOf, stretchWith } from './middleLine.ts';
import { built, type Outcome } from './outcome.ts';
import type { Profile } from './profile.ts';
import { noRoom } from './rodFault.ts';
import { SLACK } from './slack.ts';
import { threshold } from './threshold.ts';

/** A hole through every layer. */
export interface RodHole {
  /** Centre in the profile's own axes. */
  readonly u: number;
  readonly z: number;
  /** Of the hole: rod and clearance. */
  readonly diameter: number;
}

export interface RodRow {
  /** From front to rear. */
  readonly holes: readonly RodHole[];
  /** Least wood between a hole's rim and the slice's edge, mm. */
  readonly edge: number;
}

/**
 * How much of the widest possible spread the outer holes keep when they move in for the sake of the wood round them: a
 * slice's play about its rods grows as the spread shrinks, so by a third at most.
 */
const SPREAD_KEPT = 3 / 4;

/**
 * A row of holes from front to rear, evenly spaced on the line equally far from base and slope. Between rims lies at
 * least one hole diameter, between a rim and the slice's edge at least `edge`; where the profile is generous the outer
 * holes move in until a hole diameter of wood is round them too, as far as `SPREAD_KEPT` and the holes between them
 * allow. The stop's own wood is not used: the lip has its load to carry.
 *
 * No answer when they do not fit; the fault says what would.
 */
export function rodRow(rods: Rods, { core, slice }: Pick<Profile, 'core' | 'slice'>): Outcome<RodRow> {
  const line = middleLineOf(core);
  const widest = stretchFor(rods, line, rods.edge);
  if (!widest) return noRoom(rods, core, fits);
  const diameter = holeOf(rods);
  const wideEnough = (wood: number) => {
    const stretch = stretchFor(rods, line, wood);
    return stretch !== null && lengthOf(stretch) >= SPREAD_KEPT * lengthOf(widest);
  };
  const wished = Math.max(rods.edge, diameter);
  const wood = wideEnough(wished) ? wished : threshold(rods.edge, wished, wideEnough);
  const centres = spaced(stretchFor(rods, line, wood) ?? widest, rods.count);
  return built({
    holes: centres.map(([u, z]) => ({ u, z, diameter })),
    edge: leastWood(slice, centres, diameter),
  });
}

type Stretch = readonly [Point, Point];

const holeOf = (rods: Rods): number => rods.diameter + rods.clearance;

const lengthOf = ([from, to]: Stretch): number => Math.hypot(to[0] - from[0], to[1] - from[1]);

const fits = (rods: Rods, core: readonly Point[]): boolean => stretchFor(rods, middleLineOf(core), rods.edge) !== null;

/** From the first centre to the last, with so much wood round each hole; null when they find no room for a row. */
function stretchFor(rods: Rods, line: MiddleLine, wood: number): Stretch | null {
  const diameter = holeOf(rods);
  const stretch = stretchWith(line, diameter / 2 + wood - SLACK);
  // One hole and one hole's width of wood from centre to centre.
  const needed = 2 * diameter * (rods.count - 1);
  return stretch && lengthOf(stretch) >= needed - SLACK ? stretch : null;
}

function spaced([from, to]: Stretch, count: number): readonly Point[] {
  const places: Point[] = [];
  for (let i = 0; i < count; i += 1) {
    const share = i / (count - 1);
    places.push([from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share]);
  }
  return places;
}
