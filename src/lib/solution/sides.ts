import { degrees } from '$lib/geometry/angle.ts';
import { along, dot, subtract, type Vec3 } from '$lib/geometry/point.ts';
import { crossoverSums } from '$lib/acoustics/crossover.ts';
import { designPointOf } from '$lib/acoustics/designPoint.ts';
import { radiatingOf } from '$lib/acoustics/radiating.ts';
import { arrivalsOf } from '$lib/acoustics/arrivals.ts';
import { bandsOf } from '$lib/acoustics/bands.ts';
import { reflectionsOf } from '$lib/acoustics/reflection.ts';
import type { Way } from '$lib/acoustics/screens.ts';
import { surfacesAround } from '$lib/acoustics/surface.ts';
import type { Pose } from '$lib/layout/pose.ts';
import { once } from '$lib/project/once.ts';
import type { Driver, Layout, Speaker } from '$lib/project/project.ts';
import type { DriverPlan, ReflectionPlan, SidePlan } from './document.ts';

/** What a driver radiates from, as documents say it. */
export function radiatingPlan(driver: Driver): Pick<DriverPlan, 'radiating' | 'radiatingEstimated'> {
  const { diameter, estimated } = radiatingOf(driver);
  return { radiating: diameter, radiatingEstimated: estimated };
}

/** One side of the plan from its pose: angles to degrees, and what reaches the head from it past what is in its way. */
export function sidePlan(
  speaker: Speaker,
  layout: Layout,
  pose: Pose,
  way: Way,
  head: Vec3,
  speedOfSound: number,
): SidePlan {
  const reach = dot(subtract(head, pose.aimedPoint), pose.forward);
  const reflections = once(() => reflectionPlans(speaker, layout, pose, way, head, speedOfSound));
  return {
    toe: degrees(pose.toe),
    tilt: degrees(pose.tilt),
    axisElevation: degrees(pose.elevation),
    lift: pose.lift,
    frontEdgeHeight: pose.frontEdgeHeight,
    rearEdgeHeight: pose.rearEdgeHeight,
    mark: pose.mark,
    aimedPoint: pose.aimedPoint,
    axis: pose.forward,
    nearest: along(pose.aimedPoint, pose.forward, reach),
    miss: pose.miss,
    drivers: pose.drivers.map(({ driver, position, acousticCentre, distance, offAxis }) => ({
      name: driver.name,
      position,
      acousticCentre,
      distance,
      offAxis: degrees(offAxis),
      ...radiatingPlan(driver),
    })),
    crossovers: crossoverSums(speaker.crossovers, pose.drivers, designPointOf(speaker), head, speedOfSound).map(
      (sum) => ({
        ...sum,
        phase: degrees(sum.phase),
      }),
    ),
    get reflections() {
      return reflections();
    },
    cabinet: pose.cabinet,
  };
}

function reflectionPlans(
  { drivers, crossovers }: Speaker,
  layout: Layout,
  pose: Pose,
  way: Way,
  head: Vec3,
  speed: number,
): ReflectionPlan[] {
  const surfaces = surfacesAround(layout);
  const arrivals = arrivalsOf(pose.drivers, pose.forward, surfaces, way, head);
  return reflectionsOf(arrivals, surfaces, bandsOf(drivers, crossovers), speed).map((one) => ({
    ...one,
    driver: drivers[one.driver]?.name ?? '',
    firstNotch: one.notches[0] ?? null,
  }));
}
