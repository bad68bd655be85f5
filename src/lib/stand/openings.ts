import type { Point } from '$lib/geometry/point.ts';
import { notched, squareFloor } from '$lib/geometry/notch.ts';
import { minus, outer, shifted, unit } from '$lib/geometry/plane.ts';
import type { StandSettings } from '$lib/project/project.ts';
import { asTyped, needs, says } from '$lib/project/sentence.ts';
import { bareTop } from './bareTop.ts';
import { built, noAnswer, type Outcome } from './outcome.ts';
import type { Layer } from './layer.ts';
import { shownDown, shownUp, SLACK } from './slack.ts';
import type { CornerRelief } from './cornerRelief.ts';

/** A stretch along u, mm. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** A slice's polygon with the slot and the recess cut into it, and what they take from the wood round a window. */
export interface Opened {
  readonly points: readonly Point[];
  /** The slot's stretch of the base; null without one. */
  readonly slot: Stretch | null;
  /** How far the recess reaches in from each edge of the core: base, rear, top, front. */
  readonly taken: readonly [number, number, number, number];
}

type Details = Pick<StandSettings, 'cable' | 'recess' | 'minimumEdge'>;

/** A lip beside a recess thinner than this breaks off: common practice, no source. mm. */
const THINNEST_LIP = 1;

type Relief = Pick<CornerRelief, 'bite' | 'beside'>;

/**
 * Cuts the cable slot into the base and the recess for a mat into base or top. Over both and between the slot and the ends
 * stays at least the stand's least edge, between the recess and the ends at least `THINNEST_LIP` or the least edge where
 * that is less; no answer where it would not. Ends that lean take of it.
 *
 * @param relief What the relief of a square inner corner takes of the wood beside it.
 */
export function openedSlice(
  layer: Pick<Layer, 'slice' | 'core' | 'bare'>,
  details: Details,
  relief: Relief,
): Outcome<Opened> {
  const recessed = withRecess(layer, details, relief.bite);
  if (!recessed.ok) return recessed;
  return withSlot(recessed.value, layer.core, details, relief);
}

function withRecess(
  { slice, core, bare = bareTop({ slice, core }) }: Parameters<typeof openedSlice>[0],
  { recess, minimumEdge }: Details,
  bite: number,
): Outcome<Opened> {
  const plain: Opened = { points: slice, slot: null, taken: [0, 0, 0, 0] };
  if (!recess) return built(plain);
  const [from = [0, 0], to = [0, 0]] = recess.face === 'base' ? core : bare;
  const along = unit(minus(to, from));
  const mouth = [shifted(from, along, recess.border), shifted(to, along, -recess.border)] as const;
  const thin = thinnestUnder(core, mouth, recess) - bite;
  if (Math.hypot(...minus(to, from)) <= 2 * recess.border + SLACK) {
    const long = shownDown(Math.hypot(...minus(to, from)));
    return noAnswer(
      '/stand/recess/border',
      needs(says`a border under half the ${recess.face}’s length of ${long}`, asTyped(recess.border)),
    );
  }
  if (thin < minimumEdge - SLACK) {
    return noAnswer(
      '/stand/recess/depth',
      needs(
        says`a recess that leaves ${asTyped(minimumEdge)} of wood`,
        says`${asTyped(recess.depth)} deep with ${shownDown(thin)} left`,
        says`make it ${shownUp(minimumEdge - thin)} shallower, its border wider, or raise the lift`,
      ),
    );
  }
  const floor = squareFloor(mouth, recess.depth);
  const least = Math.min(THINNEST_LIP, minimumEdge);
  const lip = Math.min(recess.border, woodToEnds(core, [...mouth, ...floor]) - bite);
  if (lip < least - SLACK) {
    return noAnswer(
      '/stand/recess/border',
      needs(
        says`a border that leaves ${asTyped(least)} of wood between the recess and the ends`,
        says`${asTyped(recess.border)} with ${shownDown(lip)} left`,
        says`make it ${shownUp((least - lip) / woodPerWay(core, along))} wider${recess.depth > least ? ' or the recess shallower' : ''}`,
      ),
    );
  }
  const points = notched(slice, mouth, floor);
  if (!points) throw new Error('the core’s base and top lie on edges of the slice');
  return built({ ...plain, points, taken: recess.face === 'base' ? [recess.depth, 0, 0, 0] : [0, 0, recess.depth, 0] });
}

/** The least plumb height of wood that a recess leaves, at its ends, which are where a wedge is thinnest or thickest. */
function thinnestUnder(
  core: readonly Point[],
  mouth: readonly [Point, Point],
  { face, depth }: NonNullable<Details['recess']>,
): number {
  const [baseFront = [0, 0], , topRear = [0, 0], topFront = [0, 0]] = core;
  const slope = (topRear[1] - topFront[1]) / (topRear[0] - topFront[0]);
  const plumbDepth = face === 'base' ? depth : depth * Math.hypot(1, slope);
  return Math.min(...mouth.map(([u]) => topFront[1] + slope * (u - topFront[0]) - baseFront[1])) - plumbDepth;
}

/** Least wood between points and the lines of a core's two ends, mm; negative for one beyond them. */
function woodToEnds(
  [baseFront = ORIGIN, baseRear = ORIGIN, topRear = ORIGIN, topFront = ORIGIN]: readonly Point[],
  points: readonly Point[],
): number {
  const inside = (from: Point, to: Point) => (point: Point) => outer(unit(minus(to, from)), minus(point, from));
  const [fromRear, fromFront] = [inside(baseRear, topRear), inside(topFront, baseFront)];
  return Math.min(...points.flatMap((point) => [fromRear(point), fromFront(point)]));
}

/** How much of it a millimetre of way along a face makes. The ends are parallel. */
const woodPerWay = ([, baseRear = ORIGIN, topRear = ORIGIN]: readonly Point[], along: Point): number =>
  Math.abs(outer(unit(minus(topRear, baseRear)), along));

const ORIGIN: Point = [0, 0];

function withSlot(
  opened: Opened,
  core: readonly Point[],
  { cable, recess, minimumEdge }: Details,
  { bite, beside: besideSlot }: Relief,
): Outcome<Opened> {
  if (!cable) return built(opened);
  const [front = [0, 0], rear = [0, 0], topRear = [0, 0], topFront = [0, 0]] = core;
  const middle = rear[0] - cable.fromRear;
  const slot = { from: middle - cable.width / 2, to: middle + cable.width / 2 };
  const recessDepth = recess?.depth ?? 0;
  const floorRecess = recess?.face === 'base' ? recessDepth : 0;
  const border = floorRecess > 0 ? (recess?.border ?? 0) : 0;
  const land = border + minimumEdge;
  const short = Math.max(front[0] + land - slot.from, slot.to - (rear[0] - land));
  if (short > SLACK) {
    return noAnswer(
      '/stand/cable/fromRear',
      needs(
        says`a slot with ${shownUp(land)} of base before and behind it`,
        says`${shownUp(short)} less`,
        'move it or make it narrower',
      ),
    );
  }
  const slope = (topRear[1] - topFront[1]) / (topRear[0] - topFront[0]);
  const height = (u: number): number => topFront[1] + slope * (u - topFront[0]) - front[1];
  const topRecess = recess?.face === 'top' ? recessDepth * Math.hypot(1, slope) : 0;
  const over = Math.min(height(slot.from), height(slot.to)) - topRecess - cable.depth - bite;
  if (over < minimumEdge - SLACK) {
    return noAnswer(
      '/stand/cable/depth',
      needs(
        says`a slot with ${asTyped(minimumEdge)} of wood over it`,
        shownDown(over),
        says`make it ${shownUp(minimumEdge - over)} shallower or move it to the thick end`,
      ),
    );
  }
  if (cable.depth <= floorRecess + SLACK) {
    return noAnswer(
      '/stand/cable/depth',
      needs(says`a slot deeper than the recess of ${asTyped(floorRecess)} that it lies in`, asTyped(cable.depth)),
    );
  }
  const base = front[1] + floorRecess;
  const mouth = [
    [slot.from, base],
    [slot.to, base],
  ] as const;
  const floor = squareFloor(mouth, cable.depth - floorRecess);
  const beside = woodToEnds(core, floor) - besideSlot(cable.width);
  if (beside < minimumEdge - SLACK) {
    return noAnswer(
      '/stand/cable/fromRear',
      needs(
        says`a slot with ${asTyped(minimumEdge)} of wood to the leaning ends`,
        shownDown(beside),
        says`move it by ${shownUp((minimumEdge - beside) / woodPerWay(core, [1, 0]))} or make it shallower`,
      ),
    );
  }
  const points = notched(opened.points, mouth, floor);
  if (!points) throw new Error('the slot’s mouth lies on the base or on the recess’s floor');
  return built({ ...opened, points, slot });
}
