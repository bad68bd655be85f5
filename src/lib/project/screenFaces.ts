import { radians } from '$lib/geometry/angle.ts';
import { along, add, scale, vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { Monitor } from './project.ts';

/** A flat upright or leaning rectangle, seen from the front: all of a flat screen's face, or a strip of a curved one. */
export interface ScreenFace {
  /** The middle of its lower edge, desk frame, mm. */
  readonly middle: Vec3;
  /** Unit vectors: to the right along the lower edge, up along the face, and out of it. */
  readonly across: Vec3;
  readonly up: Vec3;
  readonly normal: Vec3;
  /** mm. */
  readonly width: number;
  readonly height: number;
}

/** A strip of a curved screen turns by this at most, radians: it stays within 9 ‰ of the radius of the bend. */
const STRIP = radians(15);

/**
 * The face of a screen: one rectangle, or strips of a bent one from left to right. It is turned about the plumb line through
 * the middle of its lower edge, plus to the right, and leans back about that edge. A bend comes forward at both ends; its width is
 * measured straight from end to end.
 */
export function facesOf(monitor: Monitor): readonly ScreenFace[] {
  const whole = flatFace(monitor);
  const edges = bendOf(monitor);
  if (edges === null) return [whole];
  return edges.slice(1).map((to, index) => {
    const from = edges[index] ?? to;
    const angle = (from.angle + to.angle) / 2;
    return {
      ...whole,
      middle: scale(add(from.point, to.point), 0.5),
      across: add(scale(whole.across, Math.cos(angle)), scale(whole.normal, Math.sin(angle))),
      normal: squareAt(whole, angle),
      width: 2 * (monitor.curve ?? 0) * Math.sin((to.angle - from.angle) / 2),
    };
  });
}

/** A screen as if it were not bent. */
export function flatFace({ x, y, bottom, width, height, turn, lean }: Monitor): ScreenFace {
  const [sinTurn, cosTurn] = [Math.sin(radians(turn)), Math.cos(radians(turn))];
  const [sinLean, cosLean] = [Math.sin(radians(lean)), Math.cos(radians(lean))];
  return {
    middle: vec3(x, y, bottom),
    across: vec3(cosTurn, sinTurn, 0),
    up: vec3(0 - sinTurn * sinLean, cosTurn * sinLean, cosLean),
    normal: vec3(sinTurn * cosLean, 0 - cosTurn * cosLean, sinLean),
    width,
    height,
  };
}

/** An upright line of a bent face: where on its lower edge it stands, and by how much the face has turned there. */
interface Bend {
  readonly angle: number;
  readonly point: Vec3;
}

/** The lines between the strips of a bent screen and at both its ends, from left to right; null for a flat one. */
export function bendOf(monitor: Monitor, most = STRIP): readonly Bend[] | null {
  const { curve, width } = monitor;
  if (curve === null) return null;
  const { middle, across, normal } = flatFace(monitor);
  const end = Math.asin(Math.min(1, width / (2 * curve)));
  const strips = Math.max(2, Math.ceil((2 * end) / most));
  return Array.from({ length: strips + 1 }, (_, index) => {
    const angle = end * ((2 * index) / strips - 1);
    // 1 − cos without the difference of two nearly equal numbers.
    const forward = 2 * curve * Math.sin(angle / 2) ** 2;
    return { angle, point: along(along(middle, across, curve * Math.sin(angle)), normal, forward) };
  });
}

/** Out of a bent face where it has turned by an angle: towards the middle of the bend. */
export const squareAt = ({ across, normal }: Pick<ScreenFace, 'across' | 'normal'>, angle: number): Vec3 =>
  add(scale(normal, Math.cos(angle)), scale(across, -Math.sin(angle)));
