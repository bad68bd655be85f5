import type { Point } from '$lib/geometry/point.ts';
import { degrees } from '$lib/geometry/angle.ts';
import { headOf } from '$lib/layout/ears.ts';
import { placeSide } from '$lib/layout/place.ts';
import { sideNames, type Layout, type Project, type SideName } from '$lib/project/project.ts';
import { withEdits, type Edit } from './input.ts';
import { asPlaced, markEdits, onStand } from './placing/asPlaced.ts';
import type { PlaceAsk } from './placing/ask.ts';
import type { Allowed } from './placing/hit.ts';
import type { Box } from './placing/leastMove.ts';
import { marksOf, nearestMark } from './placing/marks.ts';
import { packingOf, type Packing } from './placing/packing.ts';
import type { Region } from './placing/region.ts';
import { markSeen, seatsOf, type SeatPointer } from './placing/seats.ts';
import { sideOf, taskOf, type Side, type SideTask } from './placing/side.ts';
import { nearestIn, type Span } from './placing/span.ts';

/** Where stands that exist can be put. */
export interface Placing {
  readonly sides: Readonly<Record<SideName, SidePlacing>>;
  /** Whether the layout's marks are each other's mirror images: then they are moved as such. */
  readonly mirrored: boolean;
  /** Setbacks and ear heights at which both stands hit at their marks; null where the ask lets them be. */
  readonly setbacks: readonly Span[] | null;
  readonly earHeights: readonly Span[] | null;
  /** Ways of making both hit, what moves least first; of several that move alike, the one that misses less. None where nothing will do. */
  readonly ways: readonly Way[];
}

export interface SidePlacing {
  /** Marks at which this stand hits with the seat as it is, desk frame, mm; null where marks stay. */
  readonly regions: readonly Region[] | null;
  /** The nearest of them to the mark as it is, on its own; null where there is none, or marks stay. */
  readonly nearest: { readonly x: number; readonly y: number; readonly move: number } | null;
  /** What would make it hit where it is, the seat being where it is. */
  readonly packing: readonly Packing[];
}

/** One way of making both stands hit. */
export interface Way {
  readonly moves: 'nothing' | 'marks' | 'setback' | 'earHeight';
  /** Whether it aims as near as a rule can be read (`DEAD_ON`), or only within what is allowed. */
  readonly deadOn: boolean;
  readonly edits: readonly Edit[];
  /** How far each is moved, and all of it, mm. */
  readonly moved: Readonly<Record<SideName | 'head', number>>;
  readonly total: number;
  readonly at: Readonly<Record<SideName, Stood>>;
  /** The layout with the stands and the edits, not checked; null where left and right stands differ, which a layout cannot hold. */
  readonly layout: Layout | null;
}

/** How one loudspeaker then stands. */
export interface Stood {
  readonly mark: { readonly x: number; readonly y: number };
  /** Degrees. */
  readonly toe: number;
  /** By which the axis passes over the target, square to it, mm; negative under it. What the stand misses by. */
  readonly over: number;
  /** Shortest distance from the axis to the head, mm: more than the former where the toe rule aims beside the head. */
  readonly miss: number;
}

/** An axis that misses by no more than this is dead on, mm. */
export const DEAD_ON = 0.5;

/** What is told apart of two ways, mm. */
const SAME_MOVE = 1e-6;

/**
 * Where stands that exist can be put, with loudspeakers and seat within the bounds of an ask. Toe is set by the layout's
 * rule wherever a loudspeaker stands, unless the stand's base fixes it. Nothing is moved but marks, or setback, or ears at
 * a time. `layout` must be of the project, and `ask` of this layout. Pure; some hundred milliseconds.
 */
export function placeExisting(project: Project, layout: Layout, ask: PlaceAsk): Placing {
  const task = taskOf(project, layout, ask);
  const { allowed } = ask;
  const sides = bothSides((side) => sideOf(task, side, allowed));
  const mirrored = isMirrored(layout);
  return {
    sides: bothSides((side) => sidePlacing(task, sides[side])),
    mirrored,
    setbacks: ask.setback && seatsOf(task, '/listener/setback', ask.setback, allowed),
    earHeights: ask.earHeight && seatsOf(task, '/listener/earHeight', ask.earHeight, allowed),
    ways: waysOf(task, mirrored),
  };
}

const bothSides = <Value>(of: (side: SideName) => Value): Record<SideName, Value> => ({ left: of('left'), right: of('right') }); // prettier-ignore

/** Marks apart by the dust of rounding, mm, are mirror images still. */
const MIRROR_DUST = 1e-9;

const isMirrored = ({ placement: { left, right } }: Layout): boolean =>
  Math.abs(left.x + right.x) <= MIRROR_DUST && Math.abs(left.y - right.y) <= MIRROR_DUST;

function sidePlacing(task: SideTask, side: Side): SidePlacing {
  const { layout, ask } = task;
  const from = markSeen(layout, side.side);
  const nearest = ask.marks && nearestMark([side], from, ask.marks);
  const run = side.chart.turned(from)?.run;
  const flip = ([x, y]: Point): Point => (side.side === 'left' ? [0 - x, y] : [x, y]);
  const flipped = (ring: readonly Point[]): readonly Point[] => side.side === 'left' ? ring.map(flip).reverse() : ring; // prettier-ignore
  return {
    regions:
      ask.marks &&
      marksOf(side, ask.marks).map(({ outline, holes }) => ({ outline: flipped(outline), holes: holes.map(flipped) })),
    nearest: nearest && { x: flip(nearest)[0], y: nearest[1], move: Math.hypot(nearest[0] - from[0], nearest[1] - from[1]) }, // prettier-ignore
    packing: run === undefined ? [] : packingOf(task, side, run, ask.allowed),
  };
}

function waysOf(task: SideTask, mirrored: boolean): Way[] {
  const within = waysWithin(task, mirrored, task.ask.allowed);
  const [first] = within;
  // Where nothing has to move, nothing is asked of anybody but to aim better.
  const exact = waysWithin(task, mirrored, { miss: DEAD_ON }).map((way) => ({ ...way, deadOn: true }));
  const better = exact.filter((way) => !within.some((one) => one.moves === way.moves && one.total >= way.total - SAME_MOVE)); // prettier-ignore
  const same = within.map((way) => ({ ...way, deadOn: isDeadOn(way) }));
  const all = first?.moves === 'nothing' && isDeadOn(first) ? same : [...same, ...better];
  return all.sort((a, b) => (Math.abs(a.total - b.total) > SAME_MOVE ? a.total - b.total : missOf(a) - missOf(b)));
}

const missOf = ({ at }: Way): number => Math.max(...sideNames.map((side) => Math.abs(at[side].over)));
const isDeadOn = (way: Way): boolean => missOf(way) <= DEAD_ON;

function waysWithin(task: SideTask, mirrored: boolean, allowed: Allowed): Way[] {
  const { layout, ask } = task;
  const sides = bothSides((side) => sideOf(task, side, allowed));
  const here = sideNames.every((side) => sides[side].room(markSeen(layout, side)) >= 0);
  if (here) return [wayOf(task, 'nothing', [])];
  const marks = ask.marks && markWay(layout, sides, mirrored, ask.marks);
  return [
    ...(marks ? [wayOf(task, 'marks', marks)] : []),
    ...seatWay(task, 'setback', ask.setback, allowed),
    ...seatWay(task, 'earHeight', ask.earHeight, allowed),
  ];
}

/** The marks that move least; those of a mirrored pair stay one. */
function markWay(layout: Layout, sides: Record<SideName, Side>, mirrored: boolean, box: Box): Edit[] | null {
  if (mirrored) {
    const mark = nearestMark([sides.right, sides.left], markSeen(layout, 'right'), box);
    return mark && sideNames.flatMap((side) => markEdits(side, mark));
  }
  const edits = sideNames.map((side) => {
    const mark = nearestMark([sides[side]], markSeen(layout, side), box);
    return mark && markEdits(side, mark);
  });
  return edits.every((one) => one !== null) ? edits.flat() : null;
}

function seatWay(task: SideTask, moves: 'setback' | 'earHeight', span: Span | null, allowed: Allowed): Way[] {
  const pointer: SeatPointer = `/listener/${moves}`;
  const spans = span && seatsOf(task, pointer, span, allowed);
  const value = spans && nearestIn(spans, task.layout.listener[moves]);
  return value === null ? [] : [wayOf(task, moves, [{ pointer, value }])];
}

function wayOf(task: SideTask, moves: Way['moves'], edits: readonly Edit[]): Way {
  const { speaker, layout, ask } = task;
  const then = withEdits(layout, edits);
  const [from, to] = [headOf(layout.listener, layout.desk), headOf(then.listener, then.desk)];
  const away = (side: SideName): number => Math.hypot(then.placement[side].x - layout.placement[side].x, then.placement[side].y - layout.placement[side].y); // prettier-ignore
  const moved = { ...bothSides(away), head: Math.hypot(to.x - from.x, to.y - from.y, to.z - from.z) };
  const at = bothSides((side): Stood => {
    const pose = placeSide(speaker, onStand(then, ask.stands[side]), side);
    if (!pose.ok) throw new Error('a mark that hits can be aimed from');
    const { aim, chart, ear } = sideOf({ ...task, layout: then }, side, ask.allowed);
    const run = chart.turned(markSeen(then, side))?.run ?? NaN;
    const { x, y } = then.placement[side];
    return { mark: { x, y }, toe: degrees(pose.value.toe), over: aim.miss(run, ear), miss: pose.value.miss };
  });
  return {
    moves,
    deadOn: false,
    edits,
    moved,
    total: moved.left + moved.right + moved.head,
    at,
    layout: asPlaced(layout, ask, edits),
  };
}
