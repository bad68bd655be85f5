import type { Arrival } from '$lib/acoustics/arrivals.ts';
import { EARLY, earlyLevels } from '$lib/acoustics/early.ts';
import type { Field } from '$lib/acoustics/field.ts';
import { spreadingOf } from '$lib/acoustics/reflection.ts';
import type { RoomSurface } from '$lib/acoustics/surface.ts';
import type { ReflectionPlan } from '$lib/solution/document.ts';
import { leadingReflections, sameSurface } from '$lib/solution/leadingReflections.ts';
import type { EarlySound } from '$lib/solution/soundDocument.ts';

/**
 * Each surface against the rule for early reflections; those that send nothing are left out. One that the mirror image's
 * way misses may send something all the same, from its edges.
 */
export const earlySound = (
  field: Field,
  arrivals: readonly Arrival[],
  surfaces: readonly RoomSurface[],
  reflections: readonly ReflectionPlan[],
  speed: number,
): EarlySound[] =>
  earlyLevels(field).flatMap((level, index): EarlySound[] => {
    const surface = surfaces[index];
    if (level === null || !surface) return [];
    const ways = arrivals.filter(({ surface: by, lands }) => by === index && (lands || surface.plate !== null));
    if (ways.length === 0) return [];
    const delay = Math.min(...ways.map(({ excess }) => excess)) / speed;
    const leading = leadingReflections(reflections).find((one) =>
      sameSurface(one, { surface: surface.name, monitor: surface.monitor }),
    );
    const within = delay < EARLY.window;
    return [
      {
        surface: surface.name,
        monitor: surface.monitor,
        delay,
        level,
        spreading: Math.max(...ways.map(spreadingOf)),
        firstNotch:
          leading && leading.firstNotch !== null ? { frequency: leading.firstNotch, driver: leading.driver } : null,
        screenedBy: leading?.screenedBy ?? null,
        within,
        passes: !within || level <= EARLY.level,
      },
    ];
  });
