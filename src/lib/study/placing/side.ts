import type { Point } from '$lib/geometry/point.ts';
import { mirrorX } from '$lib/geometry/point.ts';
import { headOf } from '$lib/layout/ears.ts';
import { aimedPointOf, driversOn, placeSide } from '$lib/layout/place.ts';
import { once } from '$lib/project/once.ts';
import type { Layout, Project, SideName, Speaker } from '$lib/project/project.ts';
import { standsAt } from '$lib/project/surface.ts';
import { asStood } from '$lib/project/stood.ts';
import type { SidePlan } from '$lib/solution/document.ts';
import { plan } from '$lib/solution/plan.ts';
import { onStand } from './asPlaced.ts';
import type { ExistingStand, PlaceAsk } from './ask.ts';
import { chartOf, type Chart } from './chart.ts';
import { aimOf, type Aim, type Allowed } from './hit.ts';
import { nearestIn, depthIn, type Span } from './span.ts';
import { reachOf, spaceOf, type StoodSet } from './space.ts';

/** One loudspeaker on the stand that exists, the seat being where it is. Seen as a right one. */
export interface Side {
  readonly side: SideName;
  readonly stand: ExistingStand;
  readonly aim: Aim;
  readonly chart: Chart;
  /** Height of the ears over what the stand is on, mm. */
  readonly ear: number;
  /** Stretches of run at which the stand hits. */
  readonly runs: readonly Span[];
  /** Room around it, mm: negative where it cannot stand. */
  readonly space: (mark: Point, toe: number) => number;
  /** 0 or more where it may stand and hits. */
  readonly room: (mark: Point) => number;
  /** Whether no mark so near to this one will do: true only where that is certain. */
  readonly hopeless: (mark: Point, radius: number) => boolean;
}

export interface SideTask {
  readonly speaker: Speaker;
  readonly layout: Layout;
  readonly ask: PlaceAsk;
  /** Crossovers of the layout's own stands, for the safe zone; null where it has no plan. */
  readonly sums: Readonly<Record<SideName, SidePlan['crossovers']>> | null;
  readonly sets: Readonly<Record<SideName, StoodSet>>;
}

/** `layout` must be of the project. */
export function taskOf(project: Project, layout: Layout, ask: PlaceAsk): SideTask {
  const speaker = asStood(project.speaker);
  const now = plan(project, layout, false);
  const setFor = (side: SideName): StoodSet => setOf(speaker, layout, side, ask.stands[side]);
  return {
    speaker,
    layout,
    ask,
    sums: now.ok ? { left: now.value.sides.left.crossovers, right: now.value.sides.right.crossovers } : null,
    sets: { left: setFor('left'), right: setFor('right') },
  };
}

/** Room of a mark that no toe answers, mm: under 0, and next to nothing, as it may be a hair from one that will do. */
const NO_TOE = -1e-9;

export function sideOf({ speaker, layout, ask, sums, sets }: SideTask, side: SideName, allowed: Allowed): Side {
  const stand = ask.stands[side];
  const set = sets[side];
  const { listener, desk, aim: rules } = onStand(layout, stand);
  const head = headOf(listener, desk);
  const chart = chartOf({
    rule: rules.toe,
    head: [side === 'left' ? -head.x : head.x, head.y],
    earOffset: listener.headWidth / 2,
    inboard: aimedPointOf(rules.through, driversOn(speaker, side)).offset,
  });
  const ear = head.z - standsAt(layout, side);
  const aim = aimOf(speaker, layout, side, stand, allowed, sums?.[side] ?? null);
  const runs = once(() => aim.runs(ear));
  const space = spaceOf(layout, side, set, ask.clear);
  const room = (mark: Point): number => {
    const turned = chart.turned(mark);
    if (turned === null) return NO_TOE;
    const hits = Math.min(depthIn(runs(), turned.run), turned.facing);
    return hits < 0 ? hits : Math.min(hits, space(mark, turned.toe));
  };
  const reach = reachOf(set);
  const leastRun = once(() => Math.min(...runs().map(({ from }) => from)));
  const hopeless = (mark: Point, radius: number): boolean =>
    chart.longestRun(mark, radius) < leastRun() || -room(mark) > chart.fastest(mark, radius, reach) * radius;
  return {
    side,
    stand,
    aim,
    chart,
    ear,
    get runs() {
      return runs();
    },
    space,
    room,
    hopeless,
  };
}

/** Cabinet and base about the mark (0, 0), untoed. */
function setOf(speaker: Speaker, layout: Layout, side: SideName, stand: ExistingStand): StoodSet {
  const set = onStand(layout, { ...stand, toe: 0 });
  const at = { ...set.placement[side], x: 0, y: 0 };
  const pose = placeSide(speaker, { ...set, placement: { ...set.placement, [side]: at } }, side);
  if (!pose.ok) throw new Error('slope and height are set: nothing is solved that could have no answer');
  const cabinet = side === 'left' ? pose.value.cabinet.map(mirrorX) : pose.value.cabinet;
  return { cabinet, footprint: stand.footprint ?? cabinet.slice(0, 4).map(({ x, y }) => [x, y] as const) };
}

/** Marks nearest to another at which the stand hits, whatever is around it, each on an end of a stretch; none without a closed form. */
export function nearestOnEnds({ chart, runs }: Side, from: Point): Point[] {
  const { nearest } = chart;
  const run = chart.turned(from)?.run;
  if (!nearest || run === undefined) return [];
  const ends = runs.map(({ from: least, to: most }) => nearestIn([{ from: least + INSIDE, to: most - INSIDE }], run) ?? run); // prettier-ignore
  return ends.map((end) => nearest(from, end));
}

/** So far inside the end of a stretch, mm, that rounding does not put it outside. */
const INSIDE = 1e-9;
