import { crossoverSums } from '$lib/acoustics/crossover.ts';
import { designPointOf } from '$lib/acoustics/designPoint.ts';
import { hearingAt, strainOf } from '$lib/acoustics/headHearing.ts';
import { speedOfSound } from '$lib/acoustics/air.ts';
import { degrees, radians } from '$lib/geometry/angle.ts';
import { vec3 } from '$lib/geometry/point.ts';
import { aimedPointOf, driversOn, placeSide, type OnBaffle } from '$lib/layout/place.ts';
import { axisOverLift } from '$lib/layout/tilt.ts';
import type { Layout, SideName, Speaker } from '$lib/project/project.ts';
import type { SidePlan } from '$lib/solution/document.ts';
import { sumChanges, worstChange } from '$lib/study/sumChange.ts';
import { spansWhere, type Span } from './span.ts';

/** A stand that exists: tilt in radians, positive with the front high; lift in mm. */
export interface Stand {
  readonly tilt: number;
  readonly lift: number;
}

/**
 * What a stand may miss by: so many mm; or what keeps the target inside the safe zone: treble and crossovers within
 * their limits, crossovers compared with what the layout's own stands give at its own marks.
 */
export type Allowed = { readonly miss: number } | 'safe-zone';

/**
 * How well a stand aims. Toe is set when the loudspeaker is put down, so a stand by itself decides only how high the axis
 * passes the point that the layout's tilt rule aims at (the target): the head, for toe to the ear that ear, seen where
 * the axis passes it in plan. That hangs on nothing but the run to it and the height of the ears.
 */
export interface Aim {
  /** Height of the axis over the desk where it has run so far from the mark, mm. */
  readonly height: (run: number) => number;
  /** Shortest distance from the axis to the target in the axis's own plumb plane, mm; positive: the axis passes over it. */
  readonly miss: (run: number, ear: number) => number;
  /** How much of what is allowed is left, mm or a share of it; negative where the stand misses. */
  readonly left: (run: number, ear: number) => number;
  /** The stretches of run at which it hits. */
  readonly runs: (ear: number) => Span[];
}

/** Least and most run that is looked at, mm: nearer, the cabinet is in the listener's face; further is no desk. */
const NEAREST_RUN = 100;
const FURTHEST_RUN = 6000;
/** Of the safe zone: each place is by this factor further than the one before. */
const RUN_STEP = 1.01;
/** tan of the elevation under which the axis counts as level. */
const LEVEL = 1e-12;

/** @param sums Crossovers of the layout's own stands on this side; null where it has no plan: then they limit nothing. */
export function aimOf(
  speaker: Speaker,
  layout: Layout,
  side: SideName,
  stand: Stand,
  allowed: Allowed,
  sums: SidePlan['crossovers'] | null,
): Aim {
  const { tilt, lift } = stand;
  const rake = radians(speaker.baffleRake);
  const { cos, tan } = { cos: Math.cos(tilt + rake), tan: Math.tan(tilt + rake) };
  const aimed = aimedPointOf(layout.aim.through, driversOn(speaker, side));
  const height = (run: number): number =>
    lift + axisOverLift({ depth: speaker.depth, rake, height: aimed.height, run }, tilt);
  const miss = (run: number, ear: number): number => (height(run) - ear) * cos;
  // A baffle that leans forward has its aimed point before the mark.
  const least = Math.max(NEAREST_RUN, 1 - aimed.height * Math.sin(tilt + rake));
  const exactRun = (ear: number): number | null => (Math.abs(tan) < LEVEL ? null : (ear - height(0)) / tan);
  if (allowed !== 'safe-zone') {
    const left = (run: number, ear: number): number => allowed.miss - Math.abs(miss(run, ear));
    return { height, miss, left, runs: (ear) => closedRuns(exactRun(ear), allowed.miss / cos / Math.abs(tan), left(least, ear) >= 0, least) }; // prettier-ignore
  }
  const left = (run: number, ear: number): number => 1 - used(speaker, layout, side, stand, aimed, sums, run, ear);
  return {
    height,
    miss,
    left,
    runs: (ear) => {
      const exact = exactRun(ear);
      const places = exact === null || exact < least || exact > FURTHEST_RUN ? [] : [exact];
      for (let run = least; run < FURTHEST_RUN; run *= RUN_STEP) places.push(run);
      return spansWhere((run) => left(run, ear), [...places, FURTHEST_RUN].sort((a, b) => a - b)); // prettier-ignore
    },
  };
}

/** The axis is a straight line: it hits from so far before the run of no miss to as far behind it. */
function closedRuns(exact: number | null, reach: number, levelHits: boolean, least: number): Span[] {
  if (exact === null) return levelHits ? [{ from: least, to: FURTHEST_RUN }] : [];
  const [from, to] = [Math.max(least, exact - reach), Math.min(FURTHEST_RUN, exact + reach)];
  return from <= to ? [{ from, to }] : [];
}

/** How much of the safe zone's limits is used up at the target, its run and height given; 1 is all of it. */
function used(
  speaker: Speaker,
  layout: Layout,
  side: SideName,
  { tilt, lift }: Stand,
  { offset }: OnBaffle,
  sums: SidePlan['crossovers'] | null,
  run: number,
  ear: number,
): number {
  // Untoed at a mark straight before the target: the same seen from the axis wherever the loudspeaker is.
  const flip = side === 'left' ? -1 : 1;
  const straight: Layout = {
    ...layout,
    placement: { ...layout.placement, [side]: { ...layout.placement[side], x: flip * offset, y: run } },
    aim: { ...layout.aim, over: null, toe: { rule: 'straight' }, tilt: { rule: 'as-set', degrees: degrees(tilt) } },
    stand: { ...layout.stand, lift },
  };
  const posed = placeSide(speaker, straight, side);
  if (!posed.ok) return Infinity;
  const pose = posed.value;
  const target = vec3(0, 0, pose.mark.z + ear);
  const speed = speedOfSound(layout.air.temperature);
  const { treble } = hearingAt({ ...speaker, crossovers: [] }, { left: pose, right: pose }, target, speed)(target);
  const now = crossoverSums(speaker.crossovers, pose.drivers, designPointOf(speaker), target, speed);
  return strainOf({ treble, crossover: sums && worstChange(sumChanges(now, sums)), time: 0, level: 0 }).used;
}
