import { distance, scale, add, vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { Plan } from '$lib/solution/document.ts';
import { bodiesOf } from './bodies.ts';
import { facesOf, edgesOf } from './body.ts';
import { pathsOf } from './paths.ts';
import type { SpaceScene } from './space.ts';

/** The scene of a plan. */
export function spaceScene(plan: Plan): SpaceScene {
  const bodies = bodiesOf(plan);
  const near = bodies.filter(({ subject }) => subject !== 'wall').flatMap(({ solid }) => solid.corners);
  return {
    faces: bodies.flatMap(facesOf),
    lines: [...bodies.flatMap(edgesOf), ...pathsOf(plan)],
    ...ballRound(near),
  };
}

/** A ball round points: about the middle of their box. */
function ballRound(points: readonly Vec3[]): { readonly middle: Vec3; readonly radius: number } {
  const [least, most] = [Math.min, Math.max].map((pick) =>
    vec3(pick(...points.map(({ x }) => x)), pick(...points.map(({ y }) => y)), pick(...points.map(({ z }) => z))),
  );
  const middle = scale(add(least ?? ORIGIN, most ?? ORIGIN), 0.5);
  return { middle, radius: Math.max(...points.map((point) => distance(middle, point))) };
}

const ORIGIN = vec3(0, 0, 0);
