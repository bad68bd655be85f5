import { add, angleBetween, distance, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { degrees } from '$lib/geometry/angle.ts';
import type { Layout, Project, SideName } from '$lib/project/project.ts';
import type { SureKey } from '$lib/project/sure.ts';
import type { Plan, SidePlan } from './document.ts';
import type { NotchPlan, NotchRange, ResponseBand, ResponsePlan, SoundPlan } from './soundDocument.ts';

/** What a response hangs on: where everything stands, and where the head is. */
export interface Stood {
  readonly layout: Layout;
  readonly plan: Pick<Plan, 'sides' | 'head' | 'speedOfSound'>;
}

/** The responses that are told: of either loudspeaker and of both. */
export type Voice = SideName | 'both';

export type Bands = Record<Voice, ResponseBand>;

export const responsesOf = ({ sides, both }: SoundPlan) => ({
  left: sides.left.response,
  right: sides.right.response,
  both,
});

/** A notch is the same one where it lies within this of where it was, octaves. */
const SAME = 1 / 3;

/**
 * Where each response may lie when the measured values are off by as much as the project's `sure` admits, with stands as
 * they are cut: to first order, each value once too large and once too small, and what they change as the root of the sum
 * of squares, upwards and downwards apart, as of errors that know nothing of each other. Both marks count as off by the
 * same. What `hear` hears of what stands so; yields the share done.
 */
export function* bandSteps(
  { sure }: Pick<Project, 'sure'>,
  stood: Stood,
  now: SoundPlan,
  hear: (stood: Stood) => SoundPlan,
): Generator<number, Bands> {
  const off = moves.filter(([key]) => sure[key] > 0);
  const heard: Pair[] = [];
  for (const [key, move] of off) {
    const [less, more] = [hear(move(stood, -sure[key])), hear(move(stood, sure[key]))];
    heard.push([responsesOf(less), responsesOf(more)]);
    yield heard.length / off.length;
  }
  const band = (voice: Voice): ResponseBand =>
    bandOf(
      responsesOf(now)[voice],
      heard.map(([less, more]) => [less[voice], more[voice]]),
    );
  return { left: band('left'), right: band('right'), both: band('both') };
}

type Pair = readonly [ReturnType<typeof responsesOf>, ReturnType<typeof responsesOf>];
type Ends = readonly (readonly [ResponsePlan, ResponsePlan])[];

/** The measured values that move what is heard most, and how all stands with one of them off by so much. */
const moves: readonly (readonly [key: SureKey, move: (stood: Stood, by: number) => Stood])[] = [
  ['earHeight', (stood, by) => withHead(stood, vec3(0, 0, by))],
  ['deskHeight', (stood, by) => withHead(stood, vec3(0, 0, -by))],
  ['setback', (stood, by) => withHead(stood, vec3(0, -by, 0))],
  ['headOffset', (stood, by) => withHead(stood, vec3(by, 0, 0))],
  ['markX', (stood, by) => withLoudspeakers(stood, vec3(by, 0, 0))],
  ['markY', (stood, by) => withLoudspeakers(stood, vec3(0, by, 0))],
  ['wallGap', withWalls],
  ['monitor', withScreens],
];

/** The same with the head, or a microphone in its place, moved by so much. */
export const withHead = ({ layout, plan }: Stood, by: Vec3): Stood => stoodAt(layout, plan, vec3(0, 0, 0), by);
const withLoudspeakers = ({ layout, plan }: Stood, by: Vec3): Stood => stoodAt(layout, plan, by, vec3(0, 0, 0));

/** All walls farther off, or all nearer. */
function withWalls({ layout, plan }: Stood, by: number): Stood {
  const { room } = layout;
  const walls = room.walls.map((wall) => ({ ...wall, distance: wall.distance + by }));
  return { plan, layout: { ...layout, room: { ...room, walls } } };
}

function withScreens({ layout, plan }: Stood, by: number): Stood {
  return { plan, layout: { ...layout, monitors: layout.monitors.map((one) => ({ ...one, y: one.y + by })) } };
}

function stoodAt(layout: Layout, { sides, head: before, speedOfSound }: Stood['plan'], by: Vec3, headBy: Vec3): Stood {
  const head = add(before, headBy);
  const moved = (side: SidePlan): SidePlan => ({
    ...side,
    aimedPoint: add(side.aimedPoint, by),
    cabinet: side.cabinet.map((corner) => add(corner, by)),
    drivers: side.drivers.map((driver) => {
      const position = add(driver.position, by);
      const acousticCentre = add(driver.acousticCentre, by);
      const offAxis = degrees(angleBetween(side.axis, subtract(head, position)));
      return { ...driver, position, acousticCentre, distance: distance(acousticCentre, head), offAxis };
    }),
  });
  return { layout, plan: { speedOfSound, head, sides: { left: moved(sides.left), right: moved(sides.right) } } };
}

function bandOf(now: ResponsePlan, ends: Ends): ResponseBand {
  const [least, most] = [Float64Array.from(now.fine), Float64Array.from(now.fine)];
  now.fine.forEach((level, i) => {
    const { down, up } = spreadOf(
      level,
      ends.map((pair) => pair.map(({ fine }) => fine[i] ?? level)),
    );
    least[i] = level - down;
    most[i] = level + up;
  });
  return { least, most, notches: now.notches.map((notch) => rangeOf(notch, ends, least)) };
}

/** How far a value lies under and over, by the root of the sum of squares of the worse end of each pair. */
function spreadOf(value: number, ends: readonly (readonly number[])[]): { readonly down: number; readonly up: number } {
  return {
    down: Math.hypot(...ends.map((pair) => Math.max(0, ...pair.map((end) => value - end)))),
    up: Math.hypot(...ends.map((pair) => Math.max(0, ...pair.map((end) => end - value)))),
  };
}

/** Where a notch may lie and how deep it may be, no deeper than the band is there. */
function rangeOf(notch: NotchPlan, ends: Ends, least: Float64Array): NotchRange {
  const matches = ends.map((pair) => pair.map((response) => sameNotch(notch, response)));
  const place = Math.log2(notch.frequency);
  const across = spreadOf(
    place,
    matches.map((pair) => pair.map((found) => (found ? Math.log2(found.frequency) : place))),
  );
  const deep = spreadOf(
    notch.depth,
    matches.map((pair) => pair.map((found) => found?.depth ?? 0)),
  );
  const frequency = [2 ** (place - across.down), 2 ** (place + across.up)] as const;
  const all = matches.flat();
  return {
    frequency,
    depth: [Math.max(0, notch.depth - deep.down), Math.min(notch.depth + deep.up, notch.depth + below(notch, least))],
    same: all.filter((found) => found?.cause === notch.cause && found.monitor === notch.monitor).length,
    of: all.length,
  };
}

/** How far the band reaches below a notch, within the width of a notch, dB. */
function below({ index, level }: NotchPlan, least: Float64Array): number {
  const [from, to] = [Math.max(0, index - WIDTH), index + WIDTH + 1];
  return Math.max(0, level - Math.min(...least.subarray(from, to)));
}

/** Of the grid's places: a sixth of an octave. */
const WIDTH = 8;

function sameNotch({ frequency }: NotchPlan, { notches }: ResponsePlan): NotchPlan | null {
  let nearest: NotchPlan | null = null;
  const apart = (notch: NotchPlan): number => Math.abs(Math.log2(notch.frequency / frequency));
  for (const notch of notches) {
    if (apart(notch) <= SAME && (nearest === null || apart(notch) < apart(nearest))) nearest = notch;
  }
  return nearest;
}
