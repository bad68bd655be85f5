import type { Vec3 } from '$lib/geometry/point.ts';
import type { Speaker } from '$lib/project/project.ts';
import { hearingAt, strainOf, type HeadCriterion, type Voices } from './headHearing.ts';
import { headMap, type HeadMap, type Stretch } from './headMap.ts';
import { reachOf, stepFor, type HeadReach, type HeadWay } from './headReach.ts';

/** A way of sitting: where the head is, desk frame, mm. */
export interface Seat {
  /** Null for the planned, upright one. */
  readonly posture: string | null;
  readonly head: Vec3;
}

/** How far the head may move from one seat. */
export interface SeatRoom extends Seat {
  /** The limit that is over at the seat itself; null when all is well there. */
  readonly out: HeadCriterion | null;
  /** Each way by itself: moving two ways at once leaves less. */
  readonly reach: Readonly<Record<HeadWay, HeadReach>>;
  /** In plan, at the height of this head. */
  readonly plan: HeadMap;
}

export interface ListeningArea {
  readonly seats: readonly SeatRoom[];
  /** Each way the least of all seats, and the posture that has it (null for the upright one). */
  readonly box: Readonly<Record<HeadWay, HeadReach & { readonly posture: string | null }>>;
  /** From the side, in the plane of the planned head; every posture's head lies in it. */
  readonly side: HeadMap;
}

/** How far the maps reach round the heads, mm. */
const ROUND = 300;

/**
 * How far the head may move before the treble, a crossover, or the image between the two loudspeakers gives out
 * (`HEAD_LIMITS`), from every seat; crossovers are compared with the planned seat, which comes first. In steps of
 * some milliseconds, one for each seat and a last one: each yields the share that is done, 0…1.
 */
export function* listeningAreaSteps(
  speaker: Pick<Speaker, 'crossovers' | 'designPoint' | 'drivers'>,
  voices: Voices,
  [planned, ...postures]: readonly [Seat, ...Seat[]],
  speed: number,
): Generator<number, ListeningArea> {
  const hear = hearingAt(speaker, voices, planned.head, speed);
  const step = stepFor(Math.max(0, ...speaker.crossovers.map(({ frequency }) => frequency)), speed);
  const seats = [planned, ...postures];
  const along = (axis: 'x' | 'y' | 'z'): Stretch => {
    const places = seats.map(({ head }) => head[axis]);
    return [Math.min(...places) - ROUND, Math.max(...places) + ROUND];
  };
  const [x, y, z] = [along('x'), along('y'), along('z')];
  const roomOf = (seat: Seat): SeatRoom => {
    const { by, used } = strainOf(hear(seat.head));
    return {
      ...seat,
      out: used > 1 ? by : null,
      reach: everyWay((way) => reachOf(hear, seat.head, way, step)),
      plan: headMap(hear, { plane: 'plan', at: seat.head.z, across: x, up: y }),
    };
  };
  const first = roomOf(planned);
  const rest: SeatRoom[] = [];
  for (const seat of postures) {
    yield (1 + rest.length) / (1 + seats.length);
    rest.push(roomOf(seat));
  }
  yield seats.length / (1 + seats.length);
  return {
    seats: [first, ...rest],
    box: everyWay((way) =>
      rest.reduce(
        (least, { posture, reach }) => (reach[way].distance < least.distance ? { ...reach[way], posture } : least),
        {
          ...first.reach[way],
          posture: first.posture,
        },
      ),
    ),
    side: headMap(hear, { plane: 'side', at: planned.head.x, across: y, up: z }),
  };
}

const everyWay = <Value>(make: (way: HeadWay) => Value): Record<HeadWay, Value> => ({
  left: make('left'),
  right: make('right'),
  forward: make('forward'),
  back: make('back'),
  up: make('up'),
  down: make('down'),
});
