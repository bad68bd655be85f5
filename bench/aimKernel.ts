import { demoProject } from '$lib/project/demo.ts';
import { checkProject } from '$lib/project/parse.ts';
import { sideNames } from '$lib/project/project.ts';
import { aimKernel, aimPair, type AimKernel } from '$lib/study/aimKernel.ts';
import type { AimedSide } from '$lib/study/measure.ts';
import { medianTime, seeded, type Measured } from './measure.ts';

const PAIRS = 4096;
/** ms for one pair: a million a second. */
const LIMIT = 0.001;
/** How much faster than the general solver the kernel has to be in the same run, and how close to it, mm and degrees. */
const FASTER = 5;
const CLOSE = 1e-9;

const pointers = ['/listener/setback', '/placement/right/x', '/placement/left/x', '/stand/lift', '/listener/earHeight'];

/** Aims of a pair by the kernel of the search and by the general solver, at the same places. */
export function benchAimKernel(): readonly Measured[] {
  const parsed = checkProject(demoProject);
  const layout = parsed.ok ? parsed.value.layouts[0] : undefined;
  if (!parsed.ok || !layout) throw new Error('the demo is sound');
  const { speaker } = parsed.value;
  const kernel = aimKernel(speaker, layout, pointers);
  if (!kernel) throw new Error('the kernel sets all of these');
  const next = seeded(20260501);
  const places = Array.from({ length: PAIRS }, () => [400 * next(), 350 + 200 * next(), -350 - 200 * next(), 80 * next(), 1050 + 250 * next()]); // prettier-ignore
  const layouts = places.map(([setback = 0, right = 0, left = 0, lift = 0, earHeight = 0]) => ({
    ...layout,
    listener: { ...layout.listener, setback, earHeight },
    placement: { left: { ...layout.placement.left, x: left }, right: { ...layout.placement.right, x: right } },
    stand: { ...layout.stand, lift },
  }));
  let sum = 0;
  places.forEach((values, i) => {
    const [fast, general] = [kernel.aim(values), aimPair(speaker, layouts[i] ?? layout)];
    if (!fast || !general) throw new Error('every benchmark pair can be aimed');
    for (const side of sideNames) {
      if (apart(fast.sides[side], general.sides[side]) > CLOSE) throw new Error('the kernel is not the general solver');
      sum += fast.sides[side].tilt + fast.sides[side].toe;
    }
  });
  let turn = 0;
  let seen = 0;
  /** Angles are worked out when they are read. */
  const fast = medianTime(() => (seen += sumOf(kernel.aim(places[turn++ % PAIRS] ?? []))), 60, PAIRS);
  const general = medianTime(() => (seen += aimPair(speaker, layouts[turn++ % PAIRS] ?? layout)?.sides.left.tilt ?? 0), 30, PAIRS); // prettier-ignore
  if (!Number.isFinite(seen)) throw new Error('every benchmark pair can be aimed');
  const checksum = sum.toFixed(6);
  return [
    { name: `aim of a pair, ${Math.round(1 / fast)} a ms`, median: fast, limit: LIMIT, checksum },
    {
      name: `the same by the general solver, a ${FASTER}th of its time`,
      median: fast,
      limit: general / FASTER,
      checksum,
    },
  ];
}

const sumOf = (pair: ReturnType<AimKernel['aim']>): number => {
  if (!pair) return NaN;
  const { left, right } = pair.sides;
  return left.toe + left.tilt + left.miss + right.toe + right.tilt + right.miss;
};

const apart = (a: AimedSide, b: AimedSide): number =>
  Math.max(
    ...(['toe', 'tilt', 'lift', 'miss'] as const).map((key) => Math.abs(a[key] - b[key])),
    ...(['x', 'y', 'z'] as const).flatMap((axis) => [Math.abs(a.aimedPoint[axis] - b.aimedPoint[axis]), Math.abs(a.axis[axis] - b.axis[axis])]), // prettier-ignore
  );
