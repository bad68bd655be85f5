import { jinc } from '$lib/acoustics/bessel.ts';
import { alongDescent, detoursAt } from '$lib/acoustics/descent.ts';
import { scatteringOf } from '$lib/acoustics/diffraction.ts';
import { frequencies } from '$lib/acoustics/grid.ts';
import { rectangularPlate } from '$lib/acoustics/plate.ts';
import { silence } from '$lib/acoustics/wave.ts';
import { cross, distance, dot, length, scale, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { SidePlan } from '$lib/solution/document.ts';
import type { Solution } from '$lib/solution/solution.ts';
import { sideNames, type Driver, type Layout, type Project, type SideName } from '$lib/project/project.ts';
import { expi, plus, times, type Complex } from '../acoustics/complex.ts';
import { highPass, lowPass } from '../acoustics/filters.ts';
import { fresnel } from '../acoustics/fresnelSeries.ts';
import { rectangleOf } from '../rooms.ts';

/** A project, one of its layouts and its plan. */
export interface Planned {
  readonly project: Project;
  readonly layout: Layout;
  readonly plan: Solution;
}

/**
 * The pressure at the head from one side of a two-way loudspeaker (tweeter, woofer, one crossover), wave by wave: every
 * driver and every mirror image of it placed by hand, with its filter, its piston and its delay, and what bodies near its
 * way leave of it. For upright baffles.
 */
export function pressure({ project, layout, plan }: Planned, side: SideName, frequency: number): Complex {
  const { speaker } = project;
  const [crossover] = speaker.crossovers;
  if (!crossover) throw new Error('expected a crossover');
  const { aimedPoint, axis, drivers } = plan.sides[side];
  const wavenumber = (2 * Math.PI * frequency) / (1000 * plan.speedOfSound);
  const order = crossover.alignment === 'in-phase' ? 4 : 3;
  const around = (width: number, f: number): number =>
    1 / Math.hypot(1, (f * Math.PI * width) / (1000 * plan.speedOfSound));
  const narrow = Math.min(speaker.width, speaker.height);

  let sum: Complex = [0, 0];
  for (const driver of speaker.drivers) {
    const placed = drivers.find(({ name }) => name === driver.name);
    if (!placed) throw new Error('expected the driver in the plan');
    const u = frequency / crossover.frequency;
    const filter = driver.role === 'tweeter' ? highPass(order, u) : lowPass(order, u);
    const toDesign = pathToDesignPoint(project, driver);
    for (const { length: way, point, size: share, by } of [
      ...waysOf(layout, placed, plan.head),
      ...edgesOf(layout, placed, plan, frequency),
    ]) {
      const towards = subtract(point ?? plan.head, placed.position);
      const cosine = dot(towards, axis) / length(towards);
      const sine = cosine > 0 ? Math.sqrt(Math.max(0, 1 - cosine ** 2)) : 1;
      const across =
        driver.radiating ?? (driver.role === 'tweeter' ? Math.min(25, driver.diameter) : 0.78 * driver.diameter);
      const x = (wavenumber * across * sine) / 2;
      // Behind the baffle the piston's second order fills its nulls, a quarter turn later.
      const beam: Complex = [jinc(x), cosine < 0 ? Math.sqrt(-cosine) * secondOrder(x) : 0];
      const behind = cosine < 0 ? around(narrow, -cosine * frequency) : 1;
      const past = leftBy({ project, layout, plan }, side, placed.position, by, frequency);
      const strength = toDesign === null ? 1 : toDesign / (designOf(project)?.distance ?? NaN);
      const size = times(times([strength * behind, 0], past), beam);
      // Nobody said how they were lined up: both arrive together, as if from the aimed point.
      const advance = toDesign ?? distance(placed.acousticCentre, plan.head) - distance(aimedPoint, plan.head);
      const alone = times(times(filter, expi(-wavenumber * (way - advance))), size);
      sum = plus(sum, times(alone, share));
    }
  }
  return sum;
}

/** 2·J₂(x)/x by its power series. */
function secondOrder(x: number): number {
  let [term, sum] = [x / 4, 0];
  for (let k = 1; k < 80; k++) {
    sum += term;
    term *= -(x * x) / 4 / (k * (k + 2));
  }
  return sum;
}

/** Assumed of a maker: the first tweeter's axis, at 1 m. */
function designOf({ speaker: { designPoint, drivers } }: Pick<Project, 'speaker'>) {
  if (designPoint.rule === 'none') return null;
  if (designPoint.rule === 'measured') return designPoint;
  return { driver: drivers.find(({ role }) => role === 'tweeter')?.name, distance: 1000 };
}

function pathToDesignPoint({ speaker }: Project, driver: Driver): number | null {
  const designPoint = designOf({ speaker });
  const aimed = speaker.drivers.find(({ name }) => name === designPoint?.driver);
  if (!designPoint || !aimed) return null;
  const point = vec3(aimed.offset, -designPoint.distance, aimed.height);
  return distance(point, vec3(driver.offset, driver.acousticDepth, driver.height));
}

/** What sends sound back, and the point on whose ways what stands near them counts; null for the direct sound. */
interface Sender {
  readonly monitor: number | null;
  readonly point: Vec3;
}

interface By {
  readonly length: number;
  /** Where the straight line from the image to the head meets the mirror, or the point of an edge; null for the direct sound. */
  readonly point: Vec3 | null;
  /** What arrives of a source of strength 1, but for the phase that the length turns it by. */
  readonly size: Complex;
  readonly by: Sender | null;
}

const clamped = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

/** Where the way by a plane across an axis meets it. */
function meetingAt(axis: 'x' | 'y' | 'z', at: number, from: Vec3, head: Vec3): Vec3 {
  const [first, last] = [Math.abs(from[axis] - at), Math.abs(head[axis] - at)];
  const t = first / (first + last);
  const part = (key: 'x' | 'y' | 'z'): number => (key === axis ? at : from[key] + t * (head[key] - from[key]));
  return vec3(part('x'), part('y'), part('z'));
}

function nearestOnDesk({ desk }: Layout, met: Vec3): Sender {
  const { width, depth } = rectangleOf(desk);
  return {
    monitor: null,
    point: vec3(clamped(met.x, -width / 2, width / 2), clamped(met.y, 0, depth), 0),
  };
}

function nearestOnFace({ monitors }: Layout, monitor: number, met: Vec3): Sender {
  const { x, y, bottom, width, height } = monitors[monitor] ?? { x: 0, y: 0, bottom: 0, width: 0, height: 0 };
  return {
    monitor,
    point: vec3(clamped(met.x, x - width / 2, x + width / 2), y, clamped(met.z, bottom, bottom + height)),
  };
}

/** By the edges of desk and screens: the kernel's own waves, which are checked against other people's numbers by themselves. */
function edgesOf(layout: Layout, placed: Placed, plan: Solution, frequency: number): By[] {
  const { desk, monitors } = layout;
  const { width: across, depth: back } = rectangleOf(desk);
  const top = rectangularPlate(vec3(-across / 2, 0, 0), vec3(across, 0, 0), vec3(0, back, 0));
  const kept = Math.sqrt(1 - desk.absorption);
  const place = frequencies.indexOf(frequency);
  const plates = [
    { plate: top, kept, by: nearestOnDesk(layout, meetingAt('z', 0, placed.position, plan.head)) },
    ...monitors.map(({ x, y, bottom, width, height }, index) => ({
      plate: rectangularPlate(vec3(x - width / 2, y, bottom), vec3(width, 0, 0), vec3(0, 0, height)),
      kept: 1,
      by: nearestOnFace(layout, index, meetingAt('y', y, placed.position, plan.head)),
    })),
  ];
  return plates.flatMap(({ plate, kept: share, by }) =>
    share === 0
      ? []
      : scatteringOf(plate, placed.acousticCentre, plan.head, share, detoursAt(plan.speedOfSound)).edges.map(
          ({ length, point, theta }): By => {
            const { re, im } = alongDescent(theta, silence());
            return { length, point, size: [re[place] ?? NaN, im[place] ?? NaN], by };
          },
        ),
  );
}

type Placed = Pick<SidePlan['drivers'][number], 'position' | 'acousticCentre'>;

function waysOf(layout: Layout, placed: Placed, head: Vec3): By[] {
  const { desk, room, monitors } = layout;
  const aside = { behind: 'y', left: 'x', right: 'x' } as const;
  const from = placed.acousticCentre;
  const mirrored = (axis: 'x' | 'y' | 'z', at: number, keeps: number, sender?: Sender): By => {
    const image = { ...from, [axis]: 2 * at - from[axis] };
    const length = distance(image, head);
    const point = meetingAt(axis, at, from, head);
    return { length, point, size: [Math.sqrt(1 - keeps) / length, 0], by: sender ?? { monitor: null, point } };
  };
  const direct = distance(from, head);
  const met = meetingAt('z', 0, from, head);
  const size = rectangleOf(desk);
  const onDesk = Math.abs(met.x) <= size.width / 2 && met.y >= 0 && met.y <= size.depth;
  const sender = nearestOnDesk(layout, meetingAt('z', 0, placed.position, head));
  const faces = monitors.flatMap(({ x, y, bottom, width, height }, index): By[] => {
    const at = meetingAt('y', y, from, head);
    const by = nearestOnFace(layout, index, meetingAt('y', y, placed.position, head));
    if (Math.abs(at.x - x) > width / 2 || at.z < bottom || at.z > bottom + height) return [];
    // Behind the face it stops the direct sound, which still leaves for the head.
    return from.y <= y ? [mirrored('y', y, 0, by)] : [{ length: direct, point: null, size: [-1 / direct, 0], by }];
  });
  return [
    { length: direct, point: null, size: [1 / direct, 0], by: null },
    ...(onDesk ? [mirrored('z', 0, desk.absorption, sender)] : []),
    ...faces,
    // Of the walls of a plain room, which are square to an axis.
    ...room.walls.map(({ name, distance: far, absorption }) =>
      mirrored(aside[name as keyof typeof aside], name === 'left' ? -far : far, absorption),
    ),
    ...(room.ceiling === null ? [] : [mirrored('z', room.ceiling.height - desk.height, room.ceiling.absorption)]),
  ];
}

/** What cabinets and screens near a way leave of the sound on it. */
function leftBy({ layout, plan }: Planned, side: SideName, from: Vec3, by: Sender | null, frequency: number): Complex {
  const cabinet = (name: SideName) => plan.sides[name].cabinet;
  const others = sideNames.filter((name) => name !== side).map(cabinet);
  if (by === null) return leftAlong(from, plan.head, others, frequency, plan.speedOfSound);
  const boxes = layout.monitors
    .filter((_, index) => index !== by.monitor)
    .map(({ x, y, bottom, width, height, depth }) =>
      [x - width / 2, x + width / 2].flatMap((a) =>
        [y, y + depth].flatMap((b) => [bottom, bottom + height].map((c) => vec3(a, b, c))),
      ),
    );
  return times(
    leftAlong(from, by.point, [...boxes, ...others], frequency, plan.speedOfSound),
    leftAlong(by.point, plan.head, [...boxes, ...sideNames.map(cabinet)], frequency, plan.speedOfSound),
  );
}

/** 1 − w·j/2·∫∫ over the outline of each body, as the kernel says that it counts it, by the Fresnel integrals of a series. */
function leftAlong(
  from: Vec3,
  to: Vec3,
  bodies: readonly (readonly Vec3[])[],
  frequency: number,
  speed: number,
): Complex {
  const reach = distance(from, to);
  const ahead = scale(subtract(to, from), 1 / reach);
  const right = scale(cross(ahead, vec3(0, 0, 1)), 1 / length(cross(ahead, vec3(0, 0, 1))));
  const above = cross(right, ahead);
  return bodies.reduce<Complex>(
    (left, corners) => {
      const span = (axis: Vec3) => {
        const places = corners.map((corner) => dot(subtract(corner, from), axis));
        return [Math.min(...places), Math.max(...places)] as const;
      };
      const [near, far] = span(ahead);
      const [first, last] = [Math.max(near, 0), Math.min(far, reach)];
      if (last <= first) return left;
      const before = (first + last) / 2;
      const after = reach - before;
      const gap = ([low, high]: readonly [number, number]): number => (low > 0 ? low : high < 0 ? -high : 0);
      const beside = Math.hypot(gap(span(right)), gap(span(above)));
      const turn = Math.atan2(beside, before) + Math.atan2(beside, after);
      const weight = ((last - first) / (far - near)) * Math.max(0, 2 * Math.cos(turn) - 1);
      const over = (edges: readonly [number, number]): Complex => {
        const [low, high] = edges.map((off) => {
          const detour = Math.hypot(before, off) + Math.hypot(after, off) - reach;
          return fresnel(Math.sign(off) * 2 * Math.sqrt((detour * frequency) / (1000 * speed)));
        });
        if (!low || !high) throw new Error('a span has two ends');
        return [high[0] - low[0], high[1] - low[1]];
      };
      const taken = times([0, weight / 2], times(over(span(right)), over(span(above))));
      return times(left, [1 - taken[0], -taken[1]]);
    },
    [1, 0],
  );
}
