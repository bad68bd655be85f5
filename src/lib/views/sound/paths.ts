import type { Vec3 } from '$lib/geometry/point.ts';
import type { Plan } from '$lib/solution/document.ts';
import type { NotchPlan, SoundPlan } from '$lib/solution/soundDocument.ts';
import type { SideName } from '$lib/project/project.ts';

/** A way that sound takes, from a driver to the head. */
export interface SoundPath {
  readonly side: SideName;
  readonly points: readonly Vec3[];
}

type Cause = Pick<NotchPlan, 'cause' | 'monitor'>;

/** The ways that make a notch: over its surface, from each driver that lands on it; else the direct ones. */
export const pathsOf = (
  { cause, monitor }: Cause,
  sides: readonly SideName[],
  plan: Plan,
  sound: SoundPlan,
): SoundPath[] =>
  sides.flatMap((side): SoundPath[] => {
    const { drivers, aimedPoint } = plan.sides[side];
    if (cause === 'pair') return [{ side, points: [aimedPoint, plan.head] }];
    if (cause === 'drivers' || cause === null) {
      return drivers.map(({ acousticCentre }) => ({ side, points: [acousticCentre, plan.head] }));
    }
    return sound.sides[side].reflections
      .filter(({ surface, monitor: of, lands }) => surface === cause && of === monitor && lands)
      .flatMap(({ driver, point }) => {
        const from = drivers.find(({ name }) => name === driver);
        return from ? [{ side, points: [from.position, point, plan.head] }] : [];
      });
  });
