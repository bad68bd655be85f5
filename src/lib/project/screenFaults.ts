import { along, type Point } from '$lib/geometry/point.ts';
import { pointerTo, type Fault } from './fault.ts';
import type { Layout, Monitor } from './project.ts';
import { facesOf } from './screenFaces.ts';
import { asMm, asTyped, bare, needs, says } from './sentence.ts';
import { reachOf, towards } from './wall.ts';

/** A screen that hangs on a wall touches it, whatever rounding says; mm. */
const TOUCHES = 1e-6;

/** Screens bent more than half round, and faces inside walls. @param index Number of the layout, from 0. */
export function screenFaults(layout: Layout, index: number): Fault[] {
  return layout.monitors.flatMap((monitor, place): Fault[] => {
    const at = (key: keyof Monitor): string => pointerTo('layouts', index, 'monitors', place, key);
    const { curve, width } = monitor;
    if (curve !== null && curve < width / 2) {
      return [
        {
          pointer: at('curve'),
          message: needs(says`a bend of ${asMm(width / 2)} at least, half of the width`, bare(asTyped(curve))),
        },
      ];
    }
    const corners = cornersInPlan(monitor);
    return layout.room.walls.flatMap(({ name, bearing, distance }): Fault[] => {
      const into = reachOf(towards(bearing), corners) - distance;
      if (into <= TOUCHES) return [];
      return [
        {
          pointer: at('y'),
          message: says`expected a screen before the wall “${name}”, got its face ${asMm(into)} inside it: move the screen or the wall`,
        },
      ];
    });
  });
}

const cornersInPlan = (monitor: Monitor): Point[] =>
  facesOf(monitor).flatMap(({ middle, across, up, width, height }) =>
    [-width / 2, width / 2].flatMap((aside) =>
      [0, height].map((over): Point => {
        const { x, y } = along(along(middle, across, aside), up, over);
        return [x, y];
      }),
    ),
  );
