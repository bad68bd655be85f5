import { dot, subtract, type Point } from '$lib/geometry/point.ts';
import type { Plan, SidePlan, StandPlan } from '$lib/solution/document.ts';
import { baffleLength } from '$lib/project/cabinet.ts';
import type { SideName, Speaker } from '$lib/project/project.ts';
import { driversOn } from '$lib/layout/place.ts';
import { asStood } from '$lib/project/stood.ts';
import { cabinetFrame, cornerOf } from './cabinetFrame.ts';
import { cabinetItems } from './cabinetItems.ts';
import type { Segment } from './coincide.ts';
import { extentOf } from './extent.ts';
import { frontDimensions } from './frontDimensions.ts';
import { CENTRE_BEYOND, frontDriverItems, frontDrivers, type FrontDriver } from './frontDrivers.ts';
import { convexHull } from './hull.ts';
import { squareToBaffle } from './squareToBaffle.ts';
import { standSolid } from './standItems.ts';
import type { Item, View } from './view.ts';

/** An aimed point nearer to a driver's centre than this is that centre, mm. */
const SAME = 0.05;

/**
 * The front of one cabinet, seen square to the baffle from the axis: first axis to the right of whoever sits there, second
 * along the baffle from its bottom edge. The stand shows below as a neighbour.
 */
export function frontView(given: Speaker, plan: Plan, side: SideName): View {
  const stood = asStood(given);
  const speaker = stood.laid ? { ...stood, drivers: driversOn(stood, side) } : stood;
  const placed = plan.sides[side];
  const projection = squareToBaffle(placed);
  const drivers = frontDrivers(speaker, placed);
  const aimed = projection.flat(placed.aimedPoint);
  const between = isCentre(aimed, drivers) ? null : aimed;
  const middle = middleLine(speaker);
  const things: Item[] = [
    ...standBehind(placed, plan.stand[side], side),
    ...cabinet(placed, side),
    ...standBefore(placed, plan.stand[side], side),
    ...frontDriverItems(drivers, middle),
    {
      kind: 'outline',
      id: 'cabinet-middle',
      subject: 'cabinet',
      pen: 'centre',
      points: middle,
      closed: false,
      filled: false,
    },
    { kind: 'spot', id: 'aimed-point', subject: 'axis', at: aimed, mark: 'dot' },
  ];
  return {
    name: `Front view, ${side} loudspeaker`,
    items: [...things, ...labels(speaker, side, drivers, between), ...frontDimensions(speaker, drivers, between)],
    extent: extentOf(things),
  };
}

const isCentre = ([x, y]: Point, drivers: readonly FrontDriver[]): boolean =>
  drivers.some(({ centre }) => Math.hypot(x - centre[0], y - centre[1]) < SAME);

const middleLine = (speaker: Speaker): Segment => [
  [0, -CENTRE_BEYOND],
  [0, baffleLength(speaker) + CENTRE_BEYOND],
];

/** The cabinet with the edges that face the eye: the baffle's, and of a leaning one those of the top or the bottom. */
function cabinet(placed: SidePlan, side: SideName): Item[] {
  const seen = cabinetItems(side, placed, squareToBaffle(placed)).filter(
    (item) => item.kind === 'outline' && item.pen !== 'hidden',
  );
  // The outline alone says it all when the baffle is the only face in sight.
  return seen.length === 2 ? seen.slice(0, 1) : seen;
}

const phantom = (id: string, points: readonly Point[], filled: boolean): Item => ({
  kind: 'outline',
  id,
  subject: 'stand',
  pen: 'phantom',
  points,
  closed: true,
  filled,
});

/** The stand's silhouette, of which the cabinet then covers what it stands before. */
function standBehind(placed: SidePlan, stand: StandPlan, side: SideName): Item[] {
  const { flat } = squareToBaffle(placed);
  return [phantom(`stand-${side}`, convexHull(standSolid(side, placed, stand).corners.map(flat)), true)];
}

/** What of the stand reaches up before the baffle: a stop at the front. */
function standBefore(placed: SidePlan, stand: StandPlan, side: SideName): Item[] {
  const { flat } = squareToBaffle(placed);
  const { front } = cabinetFrame(placed);
  const edge = cornerOf(placed, 0);
  const before = standSolid(side, placed, stand)
    .corners.filter((corner) => dot(subtract(corner, edge), front) > SAME)
    .map(flat);
  return before.some(([, y]) => y > SAME) ? [phantom(`stand-${side}-stop`, convexHull(before), true)] : [];
}

/** Gap of the aimed point's name, mm. */
const INSET = 8;
/** Nearer to the middle than this a driver stands on it, mm. */
const ASIDE = 0.05;
/** Gaps of names from the lines beside them, across and down, in text sizes. */
const NAME_ASIDE = 0.35;
const NAME_BELOW = 0.95;
const NAME_OVER = 0.75;

function labels(speaker: Speaker, side: SideName, drivers: readonly FrontDriver[], aimed: Point | null): Item[] {
  return [
    ...(aimed ? [aimedLabel(aimed)] : []),
    ...drivers.map(({ name, centre: [x, y], radius }, index): Item => {
      // Beside the driver's centre line, on the side away from the cabinet's.
      const out = x < -ASIDE ? -1 : 1;
      return {
        kind: 'label',
        id: `driver-${index}-label`,
        subject: 'driver',
        at: [x, y - radius],
        shift: [out * NAME_ASIDE, NAME_BELOW],
        text: name,
        anchor: out < 0 ? 'end' : 'start',
        rank: 2,
      };
    }),
    {
      kind: 'label',
      id: 'inboard-label',
      subject: 'cabinet',
      // Beside the cabinet, over its heights: on the baffle the middle line would cross it, at the right its diameters.
      at: [-speaker.width / 2, baffleLength(speaker)],
      shift: [-NAME_ASIDE, -NAME_OVER],
      text: side === 'right' ? '← inboard' : 'inboard →',
      anchor: 'end',
      rank: 2,
    },
  ];
}

/** On the side away from its dimension. */
const aimedLabel = ([x, y]: Point): Item => ({
  kind: 'label',
  id: 'aimed-label',
  subject: 'axis',
  at: [x - INSET / 2, y],
  text: 'aimed point',
  anchor: 'end',
  rank: 2,
});
