import { arrivalsOf, type Arrival } from '$lib/acoustics/arrivals.ts';
import { fieldOf, sourceOf, type Field, type Source } from '$lib/acoustics/field.ts';
import { EVERYWHERE } from '$lib/acoustics/grid.ts';
import { scatteredBy } from '$lib/acoustics/scattered.ts';
import { surfacesAround, type RoomSurface } from '$lib/acoustics/surface.ts';
import { distance, type Vec3 } from '$lib/geometry/point.ts';
import { sixSided } from '$lib/geometry/solid.ts';
import type { Pose } from '$lib/layout/pose.ts';
import type { Layout, SideName, Speaker } from '$lib/project/project.ts';
import { once } from '$lib/project/once.ts';
import type { Plan } from '$lib/solution/document.ts';
import { placedDrivers } from '$lib/solution/placedDrivers.ts';
import { screensAround } from '$lib/solution/screensAround.ts';

/** A pair that is aimed, and where the head is: all that its sound at the head hangs on. Lengths in mm, desk frame. */
export interface Standing {
  readonly speaker: Speaker;
  /** Of this speaker. */
  readonly source: Source;
  readonly layout: Layout;
  readonly head: Vec3;
  /** m/s. */
  readonly speedOfSound: number;
  readonly sides: Readonly<Record<SideName, Pick<Pose, 'forward' | 'aimedPoint' | 'drivers' | 'cabinet'>>>;
}

/** The same of a plan. */
export function standingOf(
  speaker: Speaker,
  layout: Layout,
  { head, speedOfSound, sides }: Pick<Plan, 'head' | 'speedOfSound' | 'sides'>,
): Standing {
  const of = (side: SideName): Standing['sides'][SideName] => {
    const { axis, aimedPoint, cabinet } = sides[side];
    return { forward: axis, aimedPoint, cabinet, drivers: placedDrivers(speaker, sides[side]) };
  };
  const source = once(() => sourceOf(speaker, speedOfSound));
  return {
    speaker,
    get source() {
      return source();
    },
    layout,
    head,
    speedOfSound,
    sides: { left: of('left'), right: of('right') },
  };
}

/** What reaches the head from both loudspeakers. */
export interface Heard {
  readonly surfaces: readonly RoomSurface[];
  readonly sides: Readonly<Record<SideName, HeardSide>>;
}

export interface HeardSide {
  readonly arrivals: readonly Arrival[];
  readonly field: Field;
  /** What counts as 0 dB: a source of strength 1 at the aimed point. */
  readonly reference: number;
}

/** What reaches the head at some places of the grid; each sum is worked out when it is first read. */
export function heardOf(standing: Standing, places = EVERYWHERE): Heard {
  const { speaker, source, layout, head, speedOfSound, sides } = standing;
  const surfaces = surfacesAround(layout);
  const screens = screensAround(speaker, layout, {
    left: sixSided(sides.left.cabinet),
    right: sixSided(sides.right.cabinet),
  });
  const hear = (side: SideName): HeardSide => {
    const { drivers, forward, aimedPoint } = sides[side];
    const way = { screens, side };
    const arrivals = arrivalsOf(drivers, forward, surfaces, way, head);
    const aimed = distance(aimedPoint, head);
    const scattered = scatteredBy(drivers, forward, surfaces, head, speedOfSound);
    const field = fieldOf(source, drivers, arrivals, scattered, surfaces, way, head, aimed, speedOfSound, places);
    return { arrivals, field, reference: 1 / aimed };
  };
  return { surfaces, sides: { left: hear('left'), right: hear('right') } };
}
