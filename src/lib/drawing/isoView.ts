import { along, distance, vec3, type Point } from '$lib/geometry/point.ts';
import type { Plan, SidePlan, StandPlan } from '$lib/solution/document.ts';
import type { SideName, Speaker } from '$lib/project/project.ts';
import { asStood } from '$lib/project/stood.ts';
import { cornerOf } from './cabinetFrame.ts';
import { extentOf } from './extent.ts';
import { isoCabinet, linesOf } from './isoCabinet.ts';
import { isometric, isometricOf } from './isometric.ts';
import { isoStand } from './isoStand.ts';
import type { Item, View } from './view.ts';

/**
 * One stand in isometric, from the front, the right and above, in its own axes whatever its toe; the cabinet on it as a
 * neighbour, an arrow on the desk for the front. Only what is in sight is drawn.
 */
export function isoView(given: Speaker, plan: Plan, side: SideName): View {
  const speaker = asStood(given);
  const [placed, stand] = [plan.sides[side], plan.stand[side]];
  const body = isoStand(stand);
  const drawn = body.flatMap((item) => (item.kind === 'outline' ? linesOf(item.points, item.closed) : []));
  const things: Item[] = [
    ...frontMark(stand),
    ...body,
    ...isoCabinet(speaker, placed, stand, side, drawn),
    axis(placed, side),
  ];
  return {
    name: `Isometric view, ${side} stand`,
    items: [...things, ...labels(stand)],
    extent: extentOf([...things, ...labels(stand)]),
  };
}

/** How much of the axis is drawn, as a share of the baffle's length: enough to show where it goes. */
const AXIS_SHARE = 0.45;

function axis(placed: SidePlan, side: SideName): Item {
  const { flat } = isometricOf(side, placed);
  const reach = AXIS_SHARE * distance(cornerOf(placed, 0), cornerOf(placed, 4));
  return {
    kind: 'outline',
    id: 'axis',
    subject: 'axis',
    pen: 'aim',
    points: [flat(placed.aimedPoint), flat(along(placed.aimedPoint, placed.axis, reach))],
    closed: false,
    filled: false,
  };
}

/** Sizes of the arrow on the desk and its place before the stand, mm. */
const ARROW = { from: 14, to: 62, head: 20, shaft: 5, barb: 12 };
/** From the arrow's tip to the middle of its word, and from the stand's foot to the line about it. mm. */
const WORD = 14;
const BELOW = 18;

/** What a length along an axis is drawn as, in figures that a rule can follow. */
const SHORTENED = Math.sqrt(2 / 3).toFixed(3);

const frontEdge = ({ profile }: StandPlan): number => Math.min(...profile.map(([u]) => u));
const rearEdge = ({ profile }: StandPlan): number => Math.max(...profile.map(([u]) => u));

function frontMark(stand: StandPlan): Item[] {
  const front = frontEdge(stand);
  const { from, to, head, shaft, barb } = ARROW;
  const corners: readonly Point[] = [
    [-shaft, from],
    [shaft, from],
    [shaft, to - head],
    [barb, to - head],
    [0, to],
    [-barb, to - head],
    [-shaft, to - head],
  ];
  return [
    {
      kind: 'outline',
      id: 'front-arrow',
      subject: 'desk',
      pen: 'narrow',
      points: corners.map(([x, before]) => isometric.flat(vec3(x, front - before, 0))),
      closed: true,
      filled: true,
    },
  ];
}

function labels(stand: StandPlan): Item[] {
  const { layers, stock, width } = stand;
  const front = frontEdge(stand);
  const [x, y] = isometric.flat(vec3(width / 2, (front + rearEdge(stand)) / 2, 0));
  return [
    {
      kind: 'label',
      id: 'front-label',
      subject: 'desk',
      at: isometric.flat(vec3(0, front - ARROW.to - WORD, 0)),
      text: 'front',
      anchor: 'end',
    },
    {
      kind: 'label',
      id: 'layers-label',
      subject: 'stand',
      at: [x, y - BELOW],
      text: layers === 1 ? `1 layer of ${stock}` : `${layers} layers of ${stock}`,
      anchor: 'start',
      rank: 2,
    },
    {
      kind: 'label',
      id: 'scale-label',
      subject: 'stand',
      at: [x, y - 2 * BELOW],
      text: `along the three axes × ${SHORTENED}`,
      anchor: 'start',
      rank: 4,
    },
  ];
}
