import { jinc } from '$lib/acoustics/bessel.ts';
import { alongDescent, detoursAt } from '$lib/acoustics/descent.ts';
import { scatteringOf } from '$lib/acoustics/diffraction.ts';
import { frequencies } from '$lib/acoustics/grid.ts';
import { rectangularPlate } from '$lib/acoustics/plate.ts';
import { silence } from '$lib/acoustics/wave.ts';
import { distance, dot, length, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { SidePlan } from '$lib/solution/document.ts';
import type { Solution } from '$lib/solution/solution.ts';
import { sideNames, type Driver, type Layout, type Project, type SideName } from '$lib/project/project.ts';
import { expi, plus, times, type Complex } from '../acoustics/complex.ts';
import { highPass, lowPass } from '../acoustics/filters.ts';
import { rectangleOf } from '../rooms.ts';

/** A project, one of its layouts and its plan. */
export interface Planned {
  readonly project: Project;
  readonly layout: Layout;
  readonly plan: Solution;
}

/**
 * The pressure at the head from one side of a two-way loudspeaker (tweeter, woofer, one crossover), wave by wave: every
 * driver and every mirror image of it placed by hand, with its filter, its piston and its delay, and what is in the way
 * found by walking along the path. For upright baffles, and rooms without a monitor's face in the way.
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
    for (const { length: way, point, size: share } of [
      ...waysOf(layout, placed.acousticCentre, plan.head),
      ...edgesOf(layout, placed.acousticCentre, plan, frequency),
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
      const widths = widthsOnce({ project, layout, plan }, side, placed.position, point);
      const past = widths.length === 0 ? 1 : around(Math.max(...widths), frequency);
      const strength = toDesign === null ? 1 : toDesign / (speaker.designPoint?.distance ?? NaN);
      const size = times([strength * behind * past, 0], beam);
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

function pathToDesignPoint({ speaker }: Project, driver: Driver): number | null {
  const { designPoint } = speaker;
  const aimed = speaker.drivers.find(({ name }) => name === designPoint?.driver);
  if (!designPoint || !aimed) return null;
  const point = vec3(aimed.offset, -designPoint.distance, aimed.height);
  return distance(point, vec3(driver.offset, driver.acousticDepth, driver.height));
}

interface By {
  readonly length: number;
  /** Where the straight line from the image to the head meets the mirror, or the point of an edge; null for the direct sound. */
  readonly point: Vec3 | null;
  /** What arrives of a source of strength 1, but for the phase that the length turns it by. */
  readonly size: Complex;
}

/** By the desk's edges: the kernel's own waves, which are checked against other people's numbers by themselves. */
function edgesOf({ desk }: Layout, from: Vec3, plan: Solution, frequency: number): By[] {
  const { width, depth } = rectangleOf(desk);
  const top = rectangularPlate(vec3(-width / 2, 0, 0), vec3(width, 0, 0), vec3(0, depth, 0));
  const kept = Math.sqrt(1 - desk.absorption);
  if (kept === 0) return [];
  const place = frequencies.indexOf(frequency);
  return scatteringOf(top, from, plan.head, kept, detoursAt(plan.speedOfSound)).edges.map(
    ({ length, point, theta }) => {
      const { re, im } = alongDescent(theta, silence());
      return { length, point, size: [re[place] ?? NaN, im[place] ?? NaN] };
    },
  );
}

function waysOf({ desk, room }: Layout, from: Vec3, head: Vec3): By[] {
  const { width, depth } = rectangleOf(desk);
  const aside = { behind: 'y', left: 'x', right: 'x' } as const;
  const meet = (image: Vec3, axis: 'x' | 'y' | 'z', at: number): Vec3 => {
    const t = (at - image[axis]) / (head[axis] - image[axis]);
    return vec3(image.x + t * (head.x - image.x), image.y + t * (head.y - image.y), image.z + t * (head.z - image.z));
  };
  const mirrored = (axis: 'x' | 'y' | 'z', at: number, keeps: number): By => {
    const image = { ...from, [axis]: 2 * at - from[axis] };
    const length = distance(image, head);
    return { length, point: meet(image, axis, at), size: [Math.sqrt(1 - keeps) / length, 0] };
  };
  const top = mirrored('z', 0, desk.absorption);
  const onDesk = top.point && Math.abs(top.point.x) <= width / 2 && top.point.y >= 0 && top.point.y <= depth;
  return [
    { length: distance(from, head), point: null, size: [1 / distance(from, head), 0] },
    ...(onDesk ? [top] : []),
    // Of the walls of a plain room, which are square to an axis.
    ...room.walls.map(({ name, distance: far, absorption }) =>
      mirrored(aside[name as keyof typeof aside], name === 'left' ? -far : far, absorption),
    ),
    ...(room.ceiling === null ? [] : [mirrored('z', room.ceiling.height - desk.height, room.ceiling.absorption)]),
  ];
}

const STEPS = 3000;

const walked = new WeakMap<Solution, Map<string, number[]>>();

/** `widthsInTheWay`, which no frequency changes, walked once. */
function widthsOnce(planned: Planned, side: SideName, from: Vec3, point: Vec3 | null): number[] {
  const known = walked.get(planned.plan) ?? new Map<string, number[]>();
  walked.set(planned.plan, known);
  const key = JSON.stringify([side, from, point]);
  const widths = known.get(key) ?? widthsInTheWay(planned, side, from, point);
  known.set(key, widths);
  return widths;
}

/** Narrower sides of the bodies that a walk from the baffle by the point to the head passes through. */
function widthsInTheWay({ project, layout, plan }: Planned, side: SideName, from: Vec3, point: Vec3 | null): number[] {
  const { speaker } = project;
  const legs = point ? [[from, point] as const, [point, plan.head] as const] : [[from, plan.head] as const];
  return legs.flatMap(([a, b], leg) => {
    const walk = Array.from({ length: STEPS - 1 }, (_, i) => {
      const t = (i + 1) / STEPS;
      return vec3(a.x + t * (b.x - a.x), a.y + t * (b.y - a.y), a.z + t * (b.z - a.z));
    });
    const cabinets = sideNames
      .filter((name) => leg > 0 || name !== side)
      .filter((name) => walk.some((at) => insideCabinet(plan.sides[name], at)))
      .map(() => Math.min(speaker.width, speaker.height));
    const monitors = layout.monitors
      .filter(({ x, y, bottom, width, height, depth }) =>
        walk.some(
          (at) =>
            Math.abs(at.x - x) < width / 2 && at.y > y && at.y < y + depth && at.z > bottom && at.z < bottom + height,
        ),
      )
      .map(({ width, height }) => Math.min(width, height));
    return [...cabinets, ...monitors];
  });
}

/** Between the three pairs of faces that meet in the first corner: a box, as the baffle is upright to its bottom. */
function insideCabinet({ cabinet }: SidePlan, at: Vec3): boolean {
  const [corner, along, , back, up] = cabinet;
  if (!corner || !along || !back || !up) throw new Error('expected the corners of a cabinet');
  return [along, back, up].every((other) => {
    const edge = subtract(other, corner);
    const share = dot(subtract(at, corner), edge) / dot(edge, edge);
    return share > 0 && share < 1;
  });
}
