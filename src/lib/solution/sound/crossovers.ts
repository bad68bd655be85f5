import { degrees, radians } from '$lib/geometry/angle.ts';
import type { Vec3 } from '$lib/geometry/point.ts';
import { isHighPass } from '$lib/acoustics/alignment.ts';
import { designPointOf, type DesignPoint } from '$lib/acoustics/designPoint.ts';
import { meetingOf, relativeDifference, sumLevelAt, withAlignment } from '$lib/acoustics/driversMeet.ts';
import { lineUp, PRICE_FREQUENCY, type TreblePrice } from '$lib/acoustics/lineUp.ts';
import { lobeOf, type Bounds, type Lobe } from '$lib/acoustics/lobe.ts';
import { lowerAndUpper } from '$lib/acoustics/pair.ts';
import type { PlacedDriver } from '$lib/layout/pose.ts';
import type { Crossover, Layout, SideName, Speaker } from '$lib/project/project.ts';
import type { CrossoverPlan, SidePlan } from '$lib/solution/document.ts';
import type {
  BoundsPlan,
  CrossoverSound,
  CrossoverSumSound,
  LobePlan,
  TreblePlan,
} from '$lib/solution/soundDocument.ts';

interface Standing {
  readonly speaker: Speaker;
  readonly layout: Layout;
  readonly side: SideName;
  readonly plan: SidePlan;
  readonly drivers: readonly PlacedDriver[];
  readonly head: Vec3;
  /** Of sound, m/s. */
  readonly speed: number;
}

/** A crossover at the head: its paths, as planned, and what is known of its sum. */
export function crossoverSound(standing: Standing, crossover: Crossover, planned: CrossoverPlan): CrossoverSound {
  const [lower, upper] = lowerAndUpper(crossover, standing.drivers);
  const point = designPointOf(standing.speaker);
  return {
    between: crossover.between,
    frequency: crossover.frequency,
    alignment: crossover.alignment,
    lower: lower.driver.name,
    upper: upper.driver.name,
    treble: (isHighPass(crossover, upper.driver, lower.driver) ? upper : lower).driver.name,
    pathDifference: planned.pathDifference,
    phase: planned.phase,
    sum: point && sumSound(standing, crossover, point),
  };
}

/** The sum as it is, over the angle, and what would line its drivers up. */
function sumSound(standing: Standing, crossover: Crossover, point: DesignPoint): CrossoverSumSound {
  const { plan, drivers, head, speed } = standing;
  const meeting = meetingOf(crossover, drivers, point, speed);
  const relative = relativeDifference(meeting, head);
  const phase = relative * meeting.perMillimetre;
  const lobe = lobeOf(meeting, plan.axis, head);
  const pose = { drivers, lift: plan.lift, tilt: radians(plan.tilt) };
  const { now, tilt, aimedPoint } = lineUp(standing, crossover, point, pose, head, speed);
  return {
    relativeDifference: relative,
    relativePhase: degrees(phase),
    level: sumLevelAt(meeting, phase),
    inPhaseLevel: sumLevelAt(withAlignment(meeting, 'in-phase'), phase),
    quadratureLevel: sumLevelAt(withAlignment(meeting, 'quadrature'), phase),
    lobe: lobe && lobePlan(lobe),
    lineUp: {
      now: treble(now),
      tilt: tilt && { value: degrees(tilt.value), price: treble(tilt.price) },
      aimedPoint: aimedPoint && { value: aimedPoint.value, price: treble(aimedPoint.price) },
    },
  };
}

const treble = ({ driver, offAxis, level, estimated }: TreblePrice): TreblePlan => ({
  driver,
  offAxis: degrees(offAxis),
  level,
  radiatingEstimated: estimated,
  frequency: PRICE_FREQUENCY,
});

const lobePlan = (lobe: Lobe): LobePlan => ({
  ...lobe,
  ear: degrees(lobe.ear),
  halfPower: boundsPlan(lobe.halfPower),
  nulls: boundsPlan(lobe.nulls),
  angles: lobe.angles.map(degrees),
});

const boundsPlan = ({ below, above }: Bounds): BoundsPlan => ({
  below: below === null ? null : degrees(below),
  above: above === null ? null : degrees(above),
});
