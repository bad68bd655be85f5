import type { Arrival } from '$lib/acoustics/arrivals.ts';
import { EARLY, earlyLevel } from '$lib/acoustics/early.ts';
import type { Field } from '$lib/acoustics/field.ts';
import { spreadingOf } from '$lib/acoustics/reflection.ts';
import type { RoomSurface } from '$lib/acoustics/surface.ts';
import type { ReflectionPlan } from '$lib/solution/document.ts';
import { leadingReflections, sameSurface } from '$lib/solution/leadingReflections.ts';
import { once } from '$lib/project/once.ts';
import type { EarlySound } from '$lib/solution/soundDocument.ts';

/**
 * Each surface against the rule for early reflections; those that send nothing are left out. One that the mirror image's
 * way misses may send something all the same, from its edges. Levels are worked out when they are first read.
 */
export const earlySound = (
  field: Field,
  arrivals: readonly Arrival[],
  surfaces: readonly RoomSurface[],
  reflections: readonly ReflectionPlan[],
  speed: number,
): EarlySound[] =>
  surfaces.flatMap((surface, index): EarlySound[] => {
    const sent = field.bySurface[index];
    const ways = arrivals.filter(({ surface: by, lands }) => by === index && (lands || surface.plate !== null));
    if (!sent || ways.length === 0) return [];
    const delay = Math.min(...ways.map(({ excess }) => excess)) / speed;
    const leading = leadingReflections(reflections).find((one) =>
      sameSurface(one, { surface: surface.name, monitor: surface.monitor }),
    );
    const within = delay < EARLY.window;
    const level = once(() => earlyLevel(sent.sum, field.direct));
    return [
      {
        surface: surface.name,
        monitor: surface.monitor,
        delay,
        get level() {
          return level();
        },
        spreading: Math.max(...ways.map(spreadingOf)),
        firstNotch:
          leading && leading.firstNotch !== null ? { frequency: leading.firstNotch, driver: leading.driver } : null,
        screenedBy: leading?.screenedBy ?? null,
        within,
        get passes() {
          return !within || level() <= EARLY.level;
        },
      },
    ];
  });
