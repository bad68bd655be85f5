import { EARLY, earlyLevel } from '$lib/acoustics/early.ts';
import { placesFrom } from '$lib/acoustics/grid.ts';
import { spreadingOf } from '$lib/acoustics/reflection.ts';
import { together } from '$lib/acoustics/wave.ts';
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
    if (surfaces.findIndex((other) => isOne(other, surface)) < index) return [];
    const early = earlyBy(heard, surfaces, index, speed);
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
      const early = surface.name === 'desk' ? earlyBy(sides[side], surfaces, index, standing.speedOfSound) : null;
      return early?.within && Number.isFinite(early.level()) ? [early.level()] : [];
    }),
  );
  return levels.length === 0 ? null : Math.max(...levels);
}

/** Whether two are one thing: the strips of a curved screen are. */
const isOne = (a: RoomSurface, b: RoomSurface): boolean => a === b || (a.monitor !== null && a.monitor === b.monitor);

/** What of a surface is early, with all strips of a curved one; null where it sends nothing. */
function earlyBy({ arrivals, field }: HeardSide, surfaces: readonly RoomSurface[], index: number, speed: number) {
  const own = surfaces[index];
  const places = surfaces.flatMap((other, place) => (own && isOne(other, own) ? [place] : []));
  const sent = places.flatMap((place) => field.bySurface[place] ?? []);
  const ways = arrivals.filter(
    ({ surface, lands }) =>
      surface !== null && places.includes(surface) && (lands || (surfaces[surface]?.plate ?? null) !== null),
  );
  if (sent.length === 0 || ways.length === 0) return null;
  const delay = Math.min(...ways.map(({ excess }) => excess)) / speed;
  const level = once(() => earlyLevel(together(sent), field.direct));
  return { delay, spreading: Math.max(...ways.map(spreadingOf)), within: delay < EARLY.window, level };
}
