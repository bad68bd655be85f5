import { crossoverSums } from '$lib/acoustics/crossover.ts';
import { designPointOf } from '$lib/acoustics/designPoint.ts';
import { hearingAt, strainOf, type HeadCriterion } from '$lib/acoustics/headHearing.ts';
import { degrees } from '$lib/geometry/angle.ts';
import { angleBetween, subtract, type Vec3 } from '$lib/geometry/point.ts';
import { sixSided } from '$lib/geometry/solid.ts';
import { placeSide, type AimedLayout } from '$lib/layout/place.ts';
import type { Pose } from '$lib/layout/pose.ts';
import { placeFaults } from '$lib/layout/soundness.ts';
import { sideNames, type Layout, type SideName, type Speaker } from '$lib/project/project.ts';
import { asStood } from '$lib/project/stood.ts';
import type { Plan, SidePlan } from '$lib/solution/document.ts';
import { sumChanges, worstChange } from './sumChange.ts';

/** What the stands of one layout miss by when they are put under the loudspeakers of another; of the worse side each. */
export interface StandFit {
  /** Names of the layouts: whose stands, and where they are put. */
  readonly from: string;
  readonly to: string;
  /** Slope of the stand less the one that is needed, degrees. */
  readonly tilt: number;
  /** The same of the turn; 0 for a stand that turns with its loudspeaker. Only a base square to the desk fixes it. */
  readonly toe: number;
  /** Height of the stand less the one that is needed, mm. */
  readonly lift: number;
  /** What the axis passes the head by, mm, and the angle between them at the aimed point, degrees. */
  readonly miss: number;
  readonly offAxis: number;
  /** The limit of the safe zone that is used up most at the head, and how much of it: over 1 is too much. */
  readonly by: HeadCriterion;
  readonly used: number;
  /** Whether the head is inside the safe zone and clear of the cabinets. */
  readonly fits: boolean;
}

/** A pair of stands, and the layout that they are of: slope and turn in degrees, height in mm. */
export interface StandsOf {
  readonly project: { readonly speaker: Speaker };
  readonly layout: { readonly name: string; readonly stand: Pick<Layout['stand'], 'base'> };
  readonly sides: Readonly<Record<SideName, Pick<SidePlan, 'tilt' | 'toe' | 'lift'>>>;
}

/**
 * The stands of one layout used in another, each under the loudspeaker of its own side at that layout's marks; null where
 * they cannot be aimed at all. Toe is set anew by the layout's own rule, unless the stand's base fixes it.
 */
export function standFit(from: StandsOf, to: Plan): StandFit | null {
  const speaker = asStood(from.project.speaker);
  const placed = sideNames.map((side) => placeSide(speaker, withStand(from, to.layout, side), side));
  const [left, right] = placed;
  if (!left?.ok || !right?.ok) return null;
  const poses = { left: left.value, right: right.value };
  const fixesToe = from.layout.stand.base === 'square-to-desk';
  const off = (of: (side: SideName) => number): number => largest(of('left'), of('right'));
  const { by, used } = strain(speaker, to, poses);
  const isClear = (): boolean => {
    const bodies = { left: sixSided(poses.left.cabinet), right: sixSided(poses.right.cabinet) };
    return placeFaults(to.layout, bodies).length === 0;
  };
  return {
    from: from.layout.name,
    to: to.layout.name,
    tilt: off((side) => from.sides[side].tilt - to.sides[side].tilt),
    toe: fixesToe ? off((side) => from.sides[side].toe - to.sides[side].toe) : 0,
    lift: off((side) => from.sides[side].lift - to.sides[side].lift),
    miss: off((side) => poses[side].miss),
    offAxis: off((side) => offAxis(poses[side], to.head)),
    by,
    used,
    fits: used <= 1 && isClear(),
  };
}

/** Of two deviations the one that is larger in size. */
const largest = (one: number, other: number): number => (Math.abs(other) > Math.abs(one) ? other : one);

const offAxis = ({ forward, aimedPoint }: Pose, head: Vec3): number =>
  degrees(angleBetween(forward, subtract(head, aimedPoint)));

/** What of a layout is aimed, with slope and height of another's stand set, and its turn where the base fixes that. */
function withStand({ sides, layout: { stand } }: StandsOf, to: Layout, side: SideName): AimedLayout {
  const { tilt, toe, lift } = sides[side];
  const turned = stand.base === 'square-to-desk' ? ({ rule: 'as-set', degrees: toe } as const) : to.aim.toe;
  const { desk, listener, surfaces, placement, aim } = to;
  return {
    desk,
    listener,
    surfaces,
    placement,
    aim: { ...aim, toe: turned, tilt: { rule: 'as-set', degrees: tilt } },
    stand: { lift },
  };
}

/** What is used up at the head, crossovers compared with what the layout's own stands give. */
function strain(speaker: Speaker, to: Plan, poses: Readonly<Record<SideName, Pose>>) {
  const changes = sideNames.flatMap((side) =>
    sumChanges(
      crossoverSums(speaker.crossovers, poses[side].drivers, designPointOf(speaker), to.head, to.speedOfSound),
      to.sides[side].crossovers,
    ),
  );
  // Its crossovers would be compared with the same stands at the same head.
  const hearing = hearingAt({ ...speaker, crossovers: [] }, poses, to.head, to.speedOfSound)(to.head);
  return strainOf({ ...hearing, crossover: worstChange(changes) });
}
