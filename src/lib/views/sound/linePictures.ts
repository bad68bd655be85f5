import type { Point, Vec3 } from '$lib/geometry/point.ts';
import { radians } from '$lib/geometry/angle.ts';
import { deskShape } from '$lib/project/deskShape.ts';
import type { Plan, ReflectionPlan } from '$lib/solution/document.ts';
import type { ListeningAreaPlan } from '$lib/solution/listeningArea.ts';
import type { ResponsePlan } from '$lib/solution/soundDocument.ts';

/** What a small picture is drawn of: strokes and areas, each of one kind, in its own units, y up. */
export interface SmallPicture {
  /** Left, bottom, right, top. */
  readonly extent: readonly [number, number, number, number];
  readonly shapes: readonly Shape[];
}

export interface Shape {
  readonly kind: 'head' | 'axis' | 'reflection' | 'ink' | 'dashed' | 'zone' | 'desk' | 'cabinet' | 'wood' | 'ground';
  readonly points: readonly Point[];
  readonly closed: boolean;
}

const line = (kind: Shape['kind'], ...points: Point[]): Shape => ({ kind, points, closed: false });
const area = (kind: Shape['kind'], points: readonly Point[]): Shape => ({ kind, points, closed: true });

const round = ([x, y]: Point, across: number, up = across): Point[] =>
  Array.from({ length: 48 }, (_, i) => {
    const at = (2 * Math.PI * i) / 48;
    return [x + across * Math.cos(at), y + up * Math.sin(at)];
  });

const box = (left: number, bottom: number, right: number, top: number): Point[] => [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
];

/** The head from the front, true to scale, and where each axis passes it. mm. */
export function aimPicture({ head, sides, layout: { listener } }: Plan): SmallPicture {
  const half = listener.headWidth / 2;
  const crosses = [sides.left, sides.right].flatMap(({ nearest }): Shape[] => {
    const [x, z] = [nearest.x - head.x, nearest.z - head.z];
    return [line('axis', [x - CROSS, z], [x + CROSS, z]), line('axis', [x, z - CROSS], [x, z + CROSS])];
  });
  const reach = Math.max(FACE * half, ...crosses.flatMap(({ points }) => points.flat().map(Math.abs))) * 1.1;
  return {
    extent: [-2 * reach, -reach, 2 * reach, reach],
    shapes: [area('head', round([0, 0], half, FACE * half)), ...crosses],
  };
}

/** Half the size of the mark of an axis, mm; and a face's height over its width, in a picture. */
const CROSS = 16;
const FACE = 1.35;

/** The listening triangle from above, the listener at the bottom; dashed: the one of 60° with the same seat and base line. mm. */
export function trianglePicture({ head, sides: { left, right } }: Plan): SmallPicture {
  const ends = [left.aimedPoint, right.aimedPoint].map(({ x, y }): Point => [x - head.x, y - head.y]);
  const [[lx, ly] = [0, 0], [rx, ry] = [0, 0]] = ends;
  const deep = Math.max(ly, ry);
  const half = deep * Math.tan(radians(WANTED / 2));
  return framed([
    line('dashed', [-half, deep], [0, 0], [half, deep]),
    line('ink', [lx, ly], [rx, ry]),
    line('axis', [lx, ly], [0, 0], [rx, ry]),
    area('head', round([0, 0], HEAD)),
  ]);
}

/** The angle wanted at the head, degrees (ITU-R BS.775); and half a head, mm, in a picture. */
const WANTED = 60;
const HEAD = 76;

/** The way of a sound by a surface, and the direct one: from above for a wall beside, else from the side. mm. */
export function pathPicture(
  plan: Plan,
  side: 'left' | 'right',
  { surface, point, driver }: ReflectionPlan,
): SmallPicture {
  const from = plan.sides[side].drivers.find(({ name }) => name === driver)?.position ?? plan.sides[side].aimedPoint;
  // A wall is seen as a line from above; what lies level, or straight ahead, from the side.
  const isBeside =
    surface.startsWith('wall:') &&
    Math.abs(point.x - from.x) + Math.abs(point.x - plan.head.x) >
      Math.abs(point.y - from.y) + Math.abs(point.y - plan.head.y);
  const flat = ({ x, y, z }: Vec3): Point => (isBeside ? [x, y] : [y, z]);
  const [start, corner, end] = [flat(from), flat(point), flat(plan.head)];
  const { points, extent } = deskShape(plan.layout.desk);
  const desk = isBeside ? area('desk', points) : line('ground', [extent.bottom, 0], [extent.top, 0]);
  return framed([
    desk,
    area('head', round(end, HEAD)),
    line('dashed', start, end),
    line('reflection', start, corner, end),
  ]);
}

/** A picture as large as its shapes, with a rim. */
function framed(shapes: readonly Shape[]): SmallPicture {
  const all = shapes.flatMap(({ points }) => points);
  const [xs, ys] = [all.map(([x]) => x), all.map(([, y]) => y)];
  return {
    extent: [Math.min(...xs) - RIM, Math.min(...ys) - RIM, Math.max(...xs) + RIM, Math.max(...ys) + RIM],
    shapes,
  };
}

/** Two waves of a crossover's frequency at the head, so many degrees apart. */
export function stepPicture(phase: number): SmallPicture {
  const wave = (late: number): Point[] =>
    Array.from({ length: 97 }, (_, i) => [i / 48, Math.sin((2 * Math.PI * i) / 48 - late)]);
  return {
    extent: [0, -1.1, 2, 1.1],
    shapes: [line('ground', [0, 0], [2, 0]), line('ink', ...wave(0)), line('dashed', ...wave(radians(phase)))],
  };
}

/** The response from 200 Hz to 20 kHz, in octaves and dB. */
export function evenPicture(frequencies: ArrayLike<number>, { fine }: ResponsePlan): SmallPicture {
  const points: Point[] = [];
  for (let i = 0; i < frequencies.length; i += 1) {
    const [frequency = 0, level = 0] = [frequencies[i], fine[i]];
    if (frequency >= LOWEST) points.push([Math.log2(frequency / LOWEST), Math.max(DEEPEST, Math.min(HIGHEST, level))]);
  }
  const octaves = Math.log2(20_000 / LOWEST);
  return {
    extent: [0, DEEPEST, octaves, HIGHEST],
    shapes: [line('ground', [0, 0], [octaves, 0]), line('ink', ...points)],
  };
}

const [LOWEST, DEEPEST, HIGHEST] = [200, -24, 9];

/** The head from above, the desk, and the zone that it may be in. mm. */
export function freePicture({ head, layout: { listener } }: Plan, { box: free }: ListeningAreaPlan): SmallPicture {
  const half = listener.headWidth / 2;
  const [wide, deep] = [4 * half, 2.2 * half];
  const within = (value: number, most: number): number => Math.min(most, value);
  const zone = box(
    -within(free.left.distance, wide),
    -within(free.back.distance, deep),
    within(free.right.distance, wide),
    within(free.forward.distance, deep),
  );
  const edge = -head.y;
  const desk = edge < deep ? [area('desk', box(-wide, Math.max(edge, -deep), wide, deep))] : [];
  return {
    extent: [-wide, -deep, wide, deep],
    shapes: [...desk, area('head', round([0, 0], half, 1.2 * half)), area('zone', zone)],
  };
}

/** A loudspeaker on its stand, from its side, tilted as far as it stays. mm. */
export function steadyPicture(plan: Plan, side: 'left' | 'right'): SmallPicture {
  const { cabinet, mark } = plan.sides[side];
  const [front, , , rear] = cabinet;
  if (!front || !rear) return { extent: [0, 0, 1, 1], shapes: [] };
  const run = Math.hypot(rear.x - front.x, rear.y - front.y);
  const [bx, by] = [(rear.x - front.x) / run, (rear.y - front.y) / run];
  // Square to the cabinet's side: how far back, and how high.
  const flat = ({ x, y, z }: Vec3): Point => [(x - mark.x) * bx + (y - mark.y) * by, z];
  const face = [0, 3, 7, 4].flatMap((corner) => cabinet[corner] ?? []).map(flat);
  const wood = plan.stand[side].profile;
  return framed([
    line('ground', ...[...face, ...wood].map(([x]): Point => [x, 0])),
    area('wood', wood),
    area('cabinet', face),
  ]);
}

const RIM = 25;
