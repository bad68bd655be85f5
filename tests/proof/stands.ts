import { radians } from '$lib/geometry/angle.ts';
import { headOf } from '$lib/layout/ears.ts';
import { placeSide } from '$lib/layout/place.ts';
import type { Project, SideName } from '$lib/project/project.ts';
import { asLengths } from '$lib/proof/fitStanding.ts';
import { expectedOf, numbersOf } from '$lib/proof/reading.ts';
import { cabinetOf, plannedStanding, stood, type Standing } from '$lib/proof/standing.ts';
import type { Taken } from '$lib/proof/taken.ts';
import { firstLayout, project } from '../projects.ts';

/** A planned stand, with everything that readings of it are reckoned against. */
export function planned(side: SideName = 'right', of: Project = project()) {
  const layout = firstLayout(of);
  const pose = placeSide(of.speaker, layout, side);
  if (!pose.ok) throw new Error('the demo has an answer');
  const head = headOf(layout.listener, layout.desk);
  return {
    of,
    layout,
    pose: pose.value,
    head,
    cabinet: cabinetOf(of.speaker, pose.value),
    plan: plannedStanding(pose.value),
    around: { head, pad: layout.stand.pad },
  };
}

/** A stand off its plan by these: mm, and degrees for the angles. */
export const off = (
  plan: Standing,
  by: readonly [x: number, y: number, front: number, toe: number, tilt: number, roll: number],
): Standing => ({
  x: plan.x + by[0],
  y: plan.y + by[1],
  front: plan.front + by[2],
  toe: plan.toe + radians(by[3]),
  tilt: plan.tilt + radians(by[4]),
  roll: plan.roll + radians(by[5]),
});

export const blank = {
  front: { what: 'front-height', value: 0, sure: 0.3 },
  rear: { what: 'rear-height', value: 0, sure: 0.3 },
  inboard: { what: 'inboard-height', value: 0, sure: 0.3 },
  outboard: { what: 'outboard-height', value: 0, sure: 0.3 },
  slope: { what: 'slope', value: 0, sure: 0.2 },
  lean: { what: 'lean', value: 0, sure: 0.2 },
  toe: { what: 'toe', value: 0, sure: 0.5 },
  rise: { what: 'rise', value: 0, run: 150, sure: 0.5 },
  mark: { what: 'mark', x: 0, y: 0, sure: 1 },
  corner: { what: 'corner', which: 'rear-outboard', x: 0, y: 0, sure: 1 },
  inner: { what: 'corner', which: 'front-inboard', x: 0, y: 0, sure: 1 },
  driver: { what: 'driver-height', driver: 'tweeter', value: 0, sure: 1 },
  top: { what: 'spot', on: 'top', x: 0, z: 0, sure: 4 },
  baffle: { what: 'spot', on: 'baffle', x: 0, z: 0, sure: 4 },
} as const satisfies Record<string, Taken>;

type Setting = Pick<ReturnType<typeof planned>, 'cabinet' | 'around'>;

/** The readings that somebody without any error takes of a standing; `errors` in standard deviations, one a number. */
export function taken(
  kinds: readonly Taken[],
  standing: Standing,
  { cabinet, around }: Setting,
  error: () => number = () => 0,
): Taken[] {
  return kinds.map((kind) => {
    const { deviation } = numbersOf(kind);
    const [first = NaN, second = NaN] = expectedOf(kind, cabinet, stood(cabinet, standing), around).map(
      (one) => one + error() * deviation,
    );
    switch (kind.what) {
      case 'slope':
      case 'lean':
      case 'toe':
        return { ...kind, value: (first * 180) / Math.PI };
      case 'mark':
      case 'corner':
        return { ...kind, x: first, y: second };
      case 'spot':
        return { ...kind, x: first, z: second };
      default:
        return { ...kind, value: first };
    }
  });
}

/** By how much two standings differ, each of the six as a length. */
export const apart = (a: Standing, b: Standing): number =>
  Math.max(...asLengths(a).map((one, i) => Math.abs(one - (asLengths(b)[i] ?? NaN))));
