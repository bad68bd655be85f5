import { radians } from '$lib/geometry/angle.ts';
import { along, cross, dot, subtract, vec3, type Point, type Vec3 } from '$lib/geometry/point.ts';
import type { SpaceScene } from './space.ts';

/** Where a scene is looked at from. */
export interface Look {
  /** Degrees round the plumb line: 0 from the chair along the desk's depth, 90 from the right, −180 to 180. */
  readonly round: number;
  /** Degrees over the horizon, `LOWEST` to 90: 90 from straight above, the listener at the bottom. */
  readonly over: number;
  /** How often as large as the whole scene in its picture, `FARTHEST` to `NEAREST`. */
  readonly near: number;
}

const LOWEST = -20;
export const FARTHEST = 0.5;
export const NEAREST = 6;

/** The named ways of looking, in the order in which they are offered; `short`: where there is no room for the name. */
export const looks = {
  corner: { name: 'From the corner', short: 'Corner', look: { round: 35, over: 28, near: 1 } },
  chair: { name: 'From the chair', short: 'Chair', look: { round: 0, over: 16, near: 1 } },
  above: { name: 'From above', short: 'Above', look: { round: 0, over: 90, near: 1 } },
  side: { name: 'From the side', short: 'Side', look: { round: 90, over: 4, near: 1 } },
} as const satisfies Readonly<Record<string, { readonly name: string; readonly short: string; readonly look: Look }>>;

const within = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

/** Degrees brought to −180 (left out) to 180. */
const brought = (degrees: number): number => {
  const turned = (((degrees + 180) % 360) + 360) % 360;
  return turned === 0 ? 180 : turned - 180;
};

/** Turned on by degrees: the eye to the right round the plumb line, and up. */
export const turned = ({ round, over, near }: Look, right: number, up: number): Look => ({
  round: brought(round + right),
  over: within(over + up, LOWEST, 90),
  near,
});

/** Drawn so many times as large. */
export const nearer = (look: Look, times: number): Look => ({
  ...look,
  near: within(look.near * times, FARTHEST, NEAREST),
});

const WAYS = [
  'the chair',
  'the chair and the right',
  'the right',
  'the far right',
  'the far side',
  'the far left',
  'the left',
  'the chair and the left',
];

/** Where one looks from, in words. */
export function lookText({ round, over }: Look): string {
  const height = Math.round(over);
  if (height >= 80) return 'from above';
  const way = WAYS[Math.round(brought(round) / 45 + WAYS.length) % WAYS.length] ?? '';
  return `from ${way}, ${height === 0 ? 'level' : height > 0 ? `${height}° above` : `${-height}° below`}`;
}

/** How far the eye stands off, in radii of the scene: near enough for depth to be seen, far enough for little to be warped. */
const STAND_OFF = 4;
/** How much larger than the ball that fits its picture is drawn: a desk is flat and fills it from no side. */
const FILL = 1.3;
/** What is nearer to the eye than this share of its distance is not drawn. */
const NEAR = 0.05;
/** How far beyond the scene something is still drawn, in its radii. */
const FAR = 12;

/** A picture of a scene from an eye, px of a paper with y down. */
export interface Camera {
  readonly eye: Vec3;
  /** Unit vectors: to the right on the picture, up on it, and into it. */
  readonly right: Vec3;
  readonly up: Vec3;
  readonly forward: Vec3;
  /** px a mm across, at a mm of depth. */
  readonly focus: number;
  /** Depths between which something is drawn, mm. */
  readonly near: number;
  readonly far: number;
  /** px. */
  readonly width: number;
  readonly height: number;
}

/** A camera that has the scene's ball in its picture, as often as large as the look says. */
export function cameraOf({ middle, radius }: SpaceScene, look: Look, width: number, height: number): Camera {
  const [round, over] = [radians(look.round), radians(look.over)];
  const right = vec3(Math.cos(round), Math.sin(round), 0);
  const forward = vec3(0 - Math.sin(round) * Math.cos(over), Math.cos(round) * Math.cos(over), 0 - Math.sin(over));
  const off = STAND_OFF * radius;
  // The ball's outline is seen at this slope from the middle of the picture.
  const slope = 1 / Math.sqrt(STAND_OFF ** 2 - 1);
  return {
    eye: along(middle, forward, -off),
    right,
    up: cross(right, forward),
    forward,
    focus: (look.near * FILL * Math.min(width, height)) / 2 / slope,
    near: NEAR * off,
    far: off + FAR * radius,
    width,
    height,
  };
}

/** How deep in the picture a point lies, mm. */
export const depthOf = ({ eye, forward }: Camera, point: Vec3): number => dot(subtract(point, eye), forward);

/** Where a point of a depth over 0 is drawn. */
export function project(camera: Camera, point: Vec3): Point {
  const { eye, right, up, forward, focus, width, height } = camera;
  const way = subtract(point, eye);
  const size = focus / dot(way, forward);
  return [width / 2 + size * dot(way, right), height / 2 - size * dot(way, up)];
}

/** Whether a face with an outward normal is turned to the eye at a point of it. */
export const faces = ({ eye }: Camera, normal: Vec3, at: Vec3): boolean => dot(normal, subtract(eye, at)) > 0;

/**
 * The same as a matrix for homogeneous coordinates, column by column: x and y −1 to 1 across the picture, up; z −1 to 1 from
 * the nearest depth drawn to the farthest.
 */
export function matrixOf({ eye, right, up, forward, focus, near, far, width, height }: Camera): number[] {
  const row = (axis: Vec3, size: number, more = 0): readonly number[] => [
    size * axis.x,
    size * axis.y,
    size * axis.z,
    more - size * dot(axis, eye),
  ];
  const rows = [
    row(right, (2 * focus) / width),
    row(up, (2 * focus) / height),
    row(forward, (far + near) / (far - near), (-2 * far * near) / (far - near)),
    row(forward, 1),
  ];
  return [0, 1, 2, 3].flatMap((column) => rows.map((one) => one[column] ?? 0));
}
