import { cross, dot, length, subtract, type Vec3 } from '$lib/geometry/point.ts';
import { driversOn } from '$lib/layout/place.ts';
import { earsOf } from '$lib/layout/ears.ts';
import type { DriverPlan, SidePlan } from '$lib/solution/document.ts';
import type { Quantity, Subject, Unit } from './term.ts';
import { asStood } from '$lib/project/stood.ts';

export const quantity = (name: string, says: string, unit: Unit, of: (subject: Subject) => number): Quantity => {
  const [letter = '', below] = name.split('_');
  return below === undefined ? { letter, says, unit, of } : { letter, below, says, unit, of };
};

export const sideOf = ({ plan, side }: Subject): SidePlan => plan.sides[side];

/** Seen as a right loudspeaker: x counts outwards from the desk's middle. */
export const outwards = ({ side }: Subject, x: number): number => (side === 'right' ? x : -x);

/** What the toe rule points at: the head, its own side's ear, or a point behind the head. */
export function targetOf({ layout, plan, side }: Subject): Vec3 {
  const { toe } = layout.aim;
  if (toe.rule === 'to-ear') return earsOf(layout.listener, layout.desk)[side];
  return toe.rule === 'behind-head' ? { ...plan.head, y: plan.head.y - toe.distance } : plan.head;
}

/** The aimed point on the baffle, as the drivers are given: up it from its bottom edge, inboard of its middle. */
export function aimedOnBaffle({ project, layout, side }: Subject): { height: number; offset: number } {
  const drivers = driversOn(asStood(project.speaker), side);
  const { through } = layout.aim;
  const of = (name: string) => drivers.find((driver) => driver.name === name) ?? { height: NaN, offset: NaN };
  const [a, b] = typeof through === 'string' ? [of(through), of(through)] : through.between.map(of);
  const fraction = typeof through === 'string' ? 0 : through.fraction;
  const between = (from = NaN, to = NaN): number => from + (to - from) * fraction;
  return { height: between(a?.height, b?.height), offset: between(a?.offset, b?.offset) };
}

/** The driver that a subject's index speaks of. */
export function driverOf(subject: Subject): DriverPlan {
  const driver = sideOf(subject).drivers[subject.index];
  if (!driver) throw new Error(`no driver has the place ${subject.index}`);
  return driver;
}

/** How far the head is from an axis, and how far along it. */
export function aside(from: Vec3, axis: Vec3, head: Vec3): { across: number; ahead: number } {
  const way = subtract(head, from);
  return { across: length(cross(way, axis)), ahead: dot(way, axis) };
}

/** Millimetres in a millisecond, so that paths and times go with it as they are: the same number as metres in a second. */
export const c = quantity('c', 'speed of sound', 'mm/ms', ({ plan }) => plan.speedOfSound);
export const lift = quantity('l', 'lift', 'mm', (s) => sideOf(s).lift);
export const tilt = quantity('θ', 'tilt', '°', (s) => sideOf(s).tilt);
export const toe = quantity('φ', 'toe', '°', (s) => sideOf(s).toe);
export const elevation = quantity('α', 'axis elevation: tilt and baffle rake', '°', (s) => sideOf(s).axisElevation);
export const depth = quantity('D', 'cabinet’s depth', 'mm', ({ project }) => asStood(project.speaker).depth);
export const frontEdge = quantity(
  'h_f',
  'front bottom edge over what the stand is on',
  'mm',
  (s) => sideOf(s).frontEdgeHeight,
);
export const aimedHeight = quantity('h', 'aimed point, up the baffle', 'mm', (s) => aimedOnBaffle(s).height);
export const earOverDesk = quantity(
  'e',
  'ear over what the stand is on',
  'mm',
  (s) => s.plan.head.z - sideOf(s).mark.z,
);
export const leftPath = quantity('d_L', 'left aimed point to the head', 'mm', ({ plan }) => plan.triangle.leftDistance);
export const rightPath = quantity(
  'd_R',
  'right aimed point to the head',
  'mm',
  ({ plan }) => plan.triangle.rightDistance,
);

/** Differences of two points along the frame's axes, for a distance. */
export const apart = (a: (s: Subject) => Vec3, b: (s: Subject) => Vec3, says: string) => ({
  x: quantity('Δ_x', `${says}, sideways`, 'mm', (s) => a(s).x - b(s).x),
  y: quantity('Δ_y', `${says}, front to back`, 'mm', (s) => a(s).y - b(s).y),
  z: quantity('Δ_z', `${says}, up`, 'mm', (s) => a(s).z - b(s).z),
});
