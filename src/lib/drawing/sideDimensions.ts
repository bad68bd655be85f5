import type { Point } from '$lib/geometry/point.ts';
import type { Plan } from '$lib/solution/document.ts';
import type { Layout, SideName } from '$lib/project/project.ts';
import type { StoodSpeaker } from '$lib/project/stood.ts';
import { DESK } from '$lib/project/surface.ts';
import { boxOf } from './box.ts';
import { cornerOf } from './cabinetFrame.ts';
import { inputsOf } from './inputs.ts';
import { angular, linear } from './makeDimension.ts';
import { fromRight } from './projection.ts';
import { surfaceHeights } from './surfaceItems.ts';
import type { AngleDimension, Dimension } from './view.ts';

/** Radius of the elevation's arc as a share of the way to the head; of the tilt's, of the cabinet's depth. */
const ELEVATION_RADIUS = 0.42;
const TILT_RADIUS = 1.25;

interface Scene {
  readonly speaker: StoodSpeaker;
  readonly layout: Layout;
  readonly plan: Plan;
  readonly side: SideName;
  readonly ground: number;
  readonly inputs: ReturnType<typeof inputsOf>;
}

/** Everything with a number on the side view of one loudspeaker. `ground`: where the floor is drawn, mm. */
export function sideDimensions(
  speaker: StoodSpeaker,
  layout: Layout,
  layoutIndex: number,
  plan: Plan,
  side: SideName,
  ground: number,
): (Dimension | AngleDimension)[] {
  const scene: Scene = { speaker, layout, plan, side, ground, inputs: inputsOf(layout, layoutIndex) };
  return [
    ...heights(scene),
    ...runs(scene),
    ...stand(scene),
    ...angles(scene),
    ...drivers(scene),
    ...surfaceHeights(layout, layoutIndex, ground),
  ];
}

/** Over the floor, left of the view. */
function heights({ layout, plan, ground, inputs }: Scene): Dimension[] {
  const common = { run: 'up' } as const;
  const ear = fromRight.flat(plan.head);
  /** On the floor behind the head, so that no extension line runs along the floor. */
  const floor: Point = [plan.head.y - layout.listener.headWidth, ground];
  return [
    linear({
      ...common,
      id: 'desk-height',
      subject: 'desk',
      from: floor,
      to: [0, 0],
      row: -1,
      value: layout.desk.height,
      name: 'desk height over the floor',
      input: inputs.desk('height'),
    }),
    linear({
      ...common,
      id: 'ear-height',
      subject: 'head',
      from: floor,
      to: ear,
      row: -2,
      value: layout.listener.earHeight,
      name: 'ear height over the floor',
      input: inputs.listener('earHeight'),
    }),
  ];
}

/** Along the desk's depth, below the view. */
function runs({ layout, plan, side, inputs }: Scene): Dimension[] {
  const { head } = plan;
  const { mark } = plan.sides[side];
  const common = { run: 'across' } as const;
  return [
    linear({
      ...common,
      id: 'setback',
      subject: 'head',
      from: fromRight.flat(head),
      to: [0, 0],
      row: -1,
      value: layout.listener.setback,
      name: 'head in front of the desk’s edge',
      input: inputs.listener('setback'),
      beside: 'from',
    }),
    linear({
      ...common,
      id: 'head-to-mark',
      subject: 'stand',
      from: fromRight.flat(head),
      to: fromRight.flat(mark),
      row: -2,
      value: mark.y - head.y,
      name: 'head to mark, along the desk’s depth',
      rank: 2,
    }),
  ];
}

/** Heights of the cabinet's bottom over what the stand is on: front edge at its front, lift at whichever edge is lower. */
function stand({ layout, plan, side, inputs }: Scene): Dimension[] {
  const { cabinet, mark, frontEdgeHeight, rearEdgeHeight, lift } = plan.sides[side];
  const [left, , right] = boxOf(cabinet.map(fromRight.flat));
  const rear = cornerOf(plan.sides[side], 2).y;
  const frontIsLower = frontEdgeHeight <= rearEdgeHeight;
  const edge = (y: number, height: number): { from: Point; to: Point } => ({
    from: [y, mark.z],
    to: [y, mark.z + height],
  });
  const over = layout.placement[side].on === DESK ? 'over the desk' : 'over what the stand is on';
  const common = { subject: 'stand', run: 'up' } as const;
  const front = linear({
    ...common,
    ...edge(mark.y, frontEdgeHeight),
    id: 'front-edge-height',
    row: -1,
    base: left,
    value: frontEdgeHeight,
    beside: 'from',
    level: true,
    name: `front edge height ${over}`,
    rank: 2,
  });
  const low = linear({
    ...common,
    ...(frontIsLower ? edge(mark.y, lift) : edge(rear, lift)),
    id: 'lift',
    row: frontIsLower ? -1 : 1,
    base: frontIsLower ? left : right,
    value: lift,
    name: `lift: lowest bottom edge ${over}`,
    ...inputs.lift,
  });
  return frontIsLower ? [low] : [front, low];
}

/**
 * Tilt over the cabinet's top, which runs as its bottom does; elevation where the axis leaves the aimed point. On an upright
 * baffle they are one number: then the one that is an input says it, or else the elevation, until there is plenty of room.
 */
function angles({ speaker, plan, side, inputs }: Scene): AngleDimension[] {
  const chosen = plan.sides[side];
  const [bottomFront, bottomRear, topFront, topRear] = [0, 3, 4, 7].map((index) =>
    fromRight.flat(cornerOf(chosen, index)),
  );
  const aimed = fromRight.flat(chosen.aimedPoint);
  const run = Math.abs(chosen.nearest.y - chosen.aimedPoint.y);
  const upright = speaker.baffleRake === 0;
  const given = 'input' in inputs.tilt;
  const elevation = angular({
    id: 'axis-elevation',
    subject: 'axis',
    corner: aimed,
    reference: [-1, 0],
    line: fromRight.flat(chosen.axis),
    draw: 'reference',
    textBeyond: 'line',
    radius: ELEVATION_RADIUS * run,
    value: chosen.axisElevation,
    name: 'axis elevation',
    rank: upright && given ? 4 : 1,
  });
  if (!bottomFront || !bottomRear || !topFront || !topRear) return [elevation];
  const frontHigh = chosen.tilt >= 0;
  const [corner, far] = frontHigh ? [topFront, topRear] : [topRear, topFront];
  const tilt = angular({
    id: 'tilt',
    subject: 'cabinet',
    corner,
    reference: [frontHigh ? 1 : -1, 0],
    line: [far[0] - corner[0], far[1] - corner[1]],
    draw: 'both',
    textBeyond: 'reference',
    radius: TILT_RADIUS * Math.max(Math.abs(far[0] - corner[0]), 0.2 * speaker.depth),
    value: chosen.tilt,
    name: 'tilt',
    rank: upright && !given ? 4 : 1,
    ...inputs.tilt,
  });
  return [elevation, tilt];
}

/** Along the baffle, from its bottom edge to each driver's centre. */
function drivers({ speaker, plan, side }: Scene): Dimension[] {
  const chosen = plan.sides[side];
  const { mark, frontEdgeHeight } = chosen;
  const from: Point = [mark.y, mark.z + frontEdgeHeight];
  const hull = chosen.cabinet.map(fromRight.flat);
  const byHeight = speaker.drivers.map((_, index) => index).sort((a, b) => heightOf(speaker, a) - heightOf(speaker, b));
  return byHeight.flatMap((index, place) => {
    const placed = chosen.drivers[index];
    const driver = speaker.drivers[index];
    if (!placed || !driver) return [];
    const to = fromRight.flat(placed.position);
    return [
      linear({
        id: `driver-height-${index}`,
        subject: 'driver',
        from,
        to,
        run: 'aligned',
        base: reachLeft(from, to, hull),
        row: place + 1,
        value: driver.height,
        name: `${driver.name}: height along the baffle`,
        ...(speaker.laid ? {} : { input: `/speaker/drivers/${index}/height` }),
        rank: 4,
      }),
    ];
  });
}

/** How far points reach to the left of the way from one point to another, mm; 0 when none does. */
function reachLeft(from: Point, to: Point, points: readonly Point[]): number {
  const [x, y] = [to[0] - from[0], to[1] - from[1]];
  const size = Math.hypot(x, y);
  if (size === 0) return 0;
  return Math.max(0, ...points.map((point) => ((point[1] - from[1]) * x - (point[0] - from[0]) * y) / size));
}

const heightOf = (speaker: StoodSpeaker, index: number): number => speaker.drivers[index]?.height ?? 0;
