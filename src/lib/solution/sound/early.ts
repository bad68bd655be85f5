import { EARLY, earlyLevel } from '$lib/acoustics/early.ts';
import { placesFrom } from '$lib/acoustics/grid.ts';
import { spreadingOf } from '$lib/acoustics/reflection.ts';
import type { RoomSurface } from '$lib/acoustics/surface.ts';
import { sideNames } from '$lib/project/project.ts';
import type { ReflectionPlan } from '$lib/solution/document.ts';
import { leadingReflections, sameSurface } from '$lib/solution/leadingReflections.ts';
import { once } from '$lib/project/once.ts';
import type { EarlySound } from '$lib/solution/soundDocument.ts';
import { heardOf, type HeardSide, type Standing } from './heard.ts';

/**
 * Each surface against the rule for early reflections; those that send nothing are left out. One that the mirror image's
 * way misses may send something all the same, from its edges. Levels are worked out when they are first read.
 */
export const earlySound = (
  heard: HeardSide,
  surfaces: readonly RoomSurface[],
  reflections: readonly ReflectionPlan[],
  speed: number,
): EarlySound[] =>
  surfaces.flatMap((surface, index): EarlySound[] => {
    const early = earlyBy(heard, surface, index, speed);
    if (!early) return [];
    const { delay, spreading, within, level } = early;
    const leading = leadingReflections(reflections).find((one) =>
      sameSurface(one, { surface: surface.name, monitor: surface.monitor }),
    );
    return [
      {
        surface: surface.name,
        monitor: surface.monitor,
        delay,
        get level() {
          return level();
        },
        spreading,
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

const band = placesFrom(...EARLY.band);

/**
 * The level of the early reflection from the desk, as `earlySound` has it of the louder side, dB, with no more worked out than
 * it hangs on; null where none arrives within the window.
 */
export function deskLevel(standing: Standing): number | null {
  const { surfaces, sides } = heardOf(standing, band);
  const levels = sideNames.flatMap((side) =>
    surfaces.flatMap((surface, index) => {
      const early = surface.name === 'desk' ? earlyBy(sides[side], surface, index, standing.speedOfSound) : null;
      return early?.within && Number.isFinite(early.level()) ? [early.level()] : [];
    }),
  );
  return levels.length === 0 ? null : Math.max(...levels);
}

/** What of a surface is early; null where it sends nothing. */
function earlyBy({ arrivals, field }: HeardSide, { plate }: RoomSurface, index: number, speed: number) {
  const sent = field.bySurface[index];
  const ways = arrivals.filter(({ surface, lands }) => surface === index && (lands || plate !== null));
  if (!sent || ways.length === 0) return null;
  const delay = Math.min(...ways.map(({ excess }) => excess)) / speed;
  const level = once(() => earlyLevel(sent.sum, field.direct));
  return { delay, spreading: Math.max(...ways.map(spreadingOf)), within: delay < EARLY.window, level };
}
