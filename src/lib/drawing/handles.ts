import type { Point } from '$lib/geometry/point.ts';
import { sideNames, type SideName, type Surface } from '$lib/project/project.ts';
import { placement } from '$lib/project/fields/aim.ts';
import { capital } from '$lib/project/capital.ts';
import { deskShape } from '$lib/project/deskShape.ts';
import * as desks from '$lib/project/fields/desk.ts';
import { listener as listenerFields } from '$lib/project/fields/listener.ts';
import { stand as standFields } from '$lib/project/fields/stand.ts';
import { surface as surfaceFields } from '$lib/project/fields/surface.ts';
import { DESK, surfaceCorners } from '$lib/project/surface.ts';
import { reachOf, towards, wallText, wayTo } from '$lib/project/wall.ts';
import { rectangle } from './box.ts';
import { ellipse } from './curve.ts';
import type { Grip, Handle } from './handle.ts';
import { deskSizes } from './deskSizes.ts';
import { convexHull } from './hull.ts';
import { inputsOf } from './inputs.ts';
import { fromAbove, fromRight, type Projection } from './projection.ts';
import { wallLine, wallsDrawn } from './roomFromAbove.ts';
import { wallsCut } from './roomFromSide.ts';
import type { SheetSource } from './sheetSource.ts';
import { middleFromAbove, seenFromSide } from './surfaceItems.ts';
import { screenFromAbove, screenFromSide } from './screenOutline.ts';

/** Half the length and half the breadth of what is taken hold of at a head, as shares of its breadth. */
const HEAD_HALF_LENGTH = 0.64;
const HEAD_HALF_BREADTH = 0.5;

/** Where along a wall it is held: beside the middle, where the desk's back edge is held. */
const WALL_HOLD = 0.3;

interface Scene extends Pick<SheetSource, 'layout' | 'plan'> {
  readonly inputs: ReturnType<typeof inputsOf>;
}

const sceneOf = ({ layout, layoutIndex, plan }: SheetSource): Scene => ({
  layout,
  plan,
  inputs: inputsOf(layout, layoutIndex),
});

const upwards = { rate: 1, sign: 1, align: [] } as const;

/** What can be moved on the top view: edges first, what stands on the desk over them. */
export function topHandles(source: SheetSource): Handle[] {
  const scene = sceneOf(source);
  const { layout, plan } = scene;
  return [
    ...wallsFromAbove(scene),
    ...deskHandles(scene),
    ...layout.monitors.map((one, index) => ({
      ...monitor(index),
      at: [one.x, one.y + one.depth / 2] as const,
      up: monitorDepth(scene, index),
      across: {
        input: scene.inputs.at('monitors', index, 'x'),
        value: one.x,
        rate: 1,
        range: desks.monitor.x,
        says: one.x < 0 ? 'left of the middle' : 'right of the middle',
        sign: signOf(one.x),
        align: [0],
      },
      body: screenFromAbove(one),
    })),
    ...layout.surfaces.map((surface, index): Handle => ({
      ...surfaceHandle(surface, index),
      at: middleFromAbove(surface),
      across: {
        ...surfaceGrip(scene, index, 'x'),
        says: surface.x < 0 ? 'left of the middle' : 'right of the middle',
        sign: signOf(surface.x),
      },
      up: surfaceGrip(scene, index, 'y'),
      body: surfaceCorners(surface),
    })),
    ...sideNames.map((side): Handle => ({
      ...speaker(scene, side, fromAbove),
      across: markAcross(scene, side),
      up: markDepth(scene, side),
    })),
    {
      ...head,
      at: fromAbove.flat(plan.head),
      up: setback(scene),
      across: {
        input: scene.inputs.listener('offset'),
        value: layout.listener.offset,
        rate: 1,
        range: listenerFields.offset,
        says: layout.listener.offset < 0 ? 'left of the middle' : 'right of the middle',
        sign: signOf(layout.listener.offset),
        align: [0],
      },
      body: headBody(scene, fromAbove, 'up'),
    },
  ];
}

/** What can be moved on the side view of one loudspeaker. `ground`: where the floor is drawn, `top`: how high the wall. */
export function sideHandles(source: SheetSource, ground: number, top: number): Handle[] {
  const scene = sceneOf(source);
  const { layout, plan, inputs } = scene;
  const { side } = source;
  const pointer = inputs.lift.input;
  const lift: Grip | null =
    pointer === undefined
      ? null
      : {
          ...upwards,
          input: pointer,
          value: plan.sides[side].lift,
          range: standFields.lift,
          says: layout.placement[side].on === DESK ? 'over the desk' : 'over what the stand is on',
          align: [0],
        };
  return [
    ...wallsFromSide(scene, [ground, top]),
    ...layout.monitors.map((one, index) => ({
      ...monitor(index),
      at: [one.y + one.depth / 2, one.bottom + one.height / 2] as const,
      across: monitorDepth(scene, index),
      up: {
        ...upwards,
        input: inputs.at('monitors', index, 'bottom'),
        value: one.bottom,
        range: desks.monitor.bottom,
        says: 'over the desk',
        align: [0],
      },
      body: screenFromSide(one),
    })),
    ...layout.surfaces.map((surface, index): Handle => {
      const { left, right, top, bottom } = seenFromSide(layout, surface);
      return {
        ...surfaceHandle(surface, index),
        at: [(left + right) / 2, (top + bottom) / 2],
        across: surfaceGrip(scene, index, 'y'),
        up: surfaceGrip(scene, index, 'height'),
        body: rectangle([left, bottom, right, top]),
      };
    }),
    { ...speaker(scene, side, fromRight), across: markDepth(scene, side), up: lift },
    {
      ...head,
      at: fromRight.flat(plan.head),
      across: setback(scene),
      up: {
        ...upwards,
        input: inputs.listener('earHeight'),
        value: layout.listener.earHeight,
        range: listenerFields.earHeight,
        says: 'ear height over the floor',
      },
      body: headBody(scene, fromRight, 'across'),
    },
  ];
}

const signOf = (value: number): 1 | -1 => (value < 0 ? -1 : 1);

const head = { id: 'handle-head', thing: 'head', name: 'Head' } as const;

/** `longways`: along which axis of the view the head is long. */
function headBody({ layout, plan }: Scene, { flat }: Projection, longways: 'across' | 'up'): Point[] {
  const { headWidth } = layout.listener;
  const [long, short] = [HEAD_HALF_LENGTH * headWidth, HEAD_HALF_BREADTH * headWidth];
  const [across, up] = longways === 'across' ? [long, short] : [short, long];
  return ellipse(flat(plan.head), across, up, 24);
}

const setback = ({ layout, inputs }: Scene): Grip => ({
  input: inputs.listener('setback'),
  value: layout.listener.setback,
  rate: -1,
  range: listenerFields.setback,
  says: 'in front of the desk’s edge',
  sign: 1,
  align: [0],
});

const monitor = (index: number): Pick<Handle, 'id' | 'thing' | 'name'> => ({
  id: `handle-monitor-${index}`,
  thing: `monitor-${index}`,
  name: `Screen ${index + 1}`,
});

const monitorDepth = ({ layout, inputs }: Scene, index: number): Grip => ({
  ...upwards,
  input: inputs.at('monitors', index, 'y'),
  value: layout.monitors[index]?.y ?? 0,
  range: desks.monitor.y,
  says: 'from the desk’s front edge',
  align: [layout.placement.left.y, layout.placement.right.y],
});

const surfaceHandle = ({ name }: Surface, index: number): Pick<Handle, 'id' | 'thing' | 'name'> => ({
  id: `handle-surface-${index}`,
  thing: `surface-${index}`,
  name: `Surface “${name}”`,
});

const SURFACE_SAYS = {
  x: 'from the middle',
  y: 'from the desk’s front edge',
  height: 'over the floor',
} as const;

const surfaceGrip = ({ layout, inputs }: Scene, index: number, key: keyof typeof SURFACE_SAYS): Grip => ({
  ...upwards,
  input: inputs.at('surfaces', index, key),
  value: layout.surfaces[index]?.[key] ?? 0,
  range: surfaceFields[key],
  says: SURFACE_SAYS[key],
  align: key === 'height' ? [layout.desk.height] : [0],
});

function speaker({ plan }: Scene, side: SideName, { flat }: Projection): Omit<Handle, 'across' | 'up'> {
  const { cabinet } = plan.sides[side];
  const body = convexHull(cabinet.map(flat));
  const sum = body.reduce<Point>(([x, y], [a, b]) => [x + a, y + b], [0, 0]);
  const count = Math.max(1, body.length);
  return {
    id: `handle-speaker-${side}`,
    thing: `speaker-${side}`,
    name: side === 'left' ? 'Left loudspeaker' : 'Right loudspeaker',
    at: [sum[0] / count, sum[1] / count],
    body,
  };
}

/** The other mark's number, to be equal with; none where it is equal already, for then it moves along. */
const unlike = (value: number, other: number): number[] => (value === other ? [] : [other]);

const markDepth = ({ layout, inputs }: Scene, side: SideName): Grip => {
  const { left, right } = layout.placement;
  const value = layout.placement[side].y;
  return {
    ...upwards,
    input: inputs.mark(side, 'y'),
    value,
    range: placement.right.y,
    says: 'from the desk’s front edge',
    align: unlike(value, side === 'left' ? right.y : left.y),
  };
};

const markAcross = ({ layout, inputs }: Scene, side: SideName): Grip => {
  const { left, right } = layout.placement;
  const value = layout.placement[side].x;
  return {
    input: inputs.mark(side, 'x'),
    value,
    rate: 1,
    range: placement.right.x,
    says: 'from the middle of the desk',
    sign: side === 'right' ? 1 : -1,
    align: unlike(value, -(side === 'left' ? right.x : left.x)),
  };
};

const middle = ([a, b]: readonly [Point, Point]): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

/** The edges of the desk that set its sizes, or its corners where it is drawn by them. */
function deskHandles({ layout, inputs }: Scene): Handle[] {
  const { outline } = layout.desk;
  if (outline.rule === 'outline') return outline.points.map((corner, index) => cornerHandle(corner, index, inputs));
  return deskSizes(outline).flatMap(({ steps, value, range, name, edges }) =>
    edges.map(({ id, name: edge, body, along, rate }): Handle => {
      const grip: Grip = {
        input: inputs.desk('outline', ...steps),
        value,
        rate,
        range,
        says: name,
        sign: 1,
        align: [],
      };
      return {
        id: `handle-desk-${id}`,
        thing: 'desk',
        name: edge,
        at: middle(body),
        across: along === 'across' ? grip : null,
        up: along === 'up' ? grip : null,
        body,
      };
    }),
  );
}

function cornerHandle([x, y]: readonly [number, number, number?], index: number, inputs: Scene['inputs']): Handle {
  const at: Point = [x, y];
  const grip = (place: 0 | 1, value: number, says: string): Grip => ({
    ...upwards,
    input: inputs.desk('outline', 'points', String(index), String(place)),
    value,
    range: desks.outlinePoint[place],
    says,
    sign: signOf(value),
  });
  return {
    id: `handle-desk-corner-${index}`,
    thing: 'desk',
    name: `Corner ${index + 1} of the desk`,
    at,
    across: grip(0, x, x < 0 ? 'left of the origin' : 'right of the origin'),
    up: grip(1, y, y < 0 ? 'before the front edge' : 'from the desk’s front edge'),
    body: [at, at],
  };
}

/** Moved along the axis of the view that it lies most square to. */
const wallsFromAbove = (scene: Scene): Handle[] =>
  wallsDrawn(scene.layout).map(({ wall, index }) => {
    const { points } = deskShape(scene.layout.desk);
    const [right, ahead] = towards(wall.bearing);
    const sideways = ['left', 'right'].includes(wayTo(wall));
    const grip = wallGrip(scene, index, sideways ? right : ahead);
    return {
      ...wallHandle(scene, index, wallLine(wall, points)),
      across: sideways ? grip : null,
      up: sideways ? null : grip,
    };
  });

const wallsFromSide = (scene: Scene, [from, to]: readonly [number, number]): Handle[] =>
  wallsCut(scene.layout).map(({ index, face }) => {
    const [, ahead] = towards(scene.layout.room.walls[index]?.bearing ?? 0);
    return {
      ...wallHandle(scene, index, [[face, from], [face, to]]), // prettier-ignore
      across: wallGrip(scene, index, ahead),
      up: null,
    };
  });

function wallHandle({ layout }: Scene, index: number, body: readonly [Point, Point]) {
  const [[x, y], [toX, toY]] = body;
  return {
    id: `handle-wall-${index}`,
    thing: `wall-${index}`,
    name: capital(wallText(layout.room.walls[index]?.name ?? '')),
    at: [x + WALL_HOLD * (toX - x), y + WALL_HOLD * (toY - y)] as const,
    body,
  };
}

/** @param rate How much further from the origin a wall is for each mm along the axis. */
function wallGrip({ layout, inputs }: Scene, index: number, rate: number): Grip {
  const { bearing, distance } = layout.room.walls[index] ?? { bearing: 0, distance: 0 };
  return {
    input: inputs.wall(index),
    value: distance,
    rate,
    range: desks.wall.distance,
    says: 'from the middle of the desk’s front edge',
    sign: 1,
    // Where the desk stands against it.
    align: [reachOf(towards(bearing), deskShape(layout.desk).points)],
  };
}
