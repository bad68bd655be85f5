import type { Point } from '$lib/geometry/point.ts';
import { deskShape } from './deskShape.ts';
import { pointerTo, type Fault } from './fault.ts';
import type { Layout } from './project.ts';
import { asMm, asTyped, bare, says } from './sentence.ts';
import { reachOf, towards } from './wall.ts';

/** A desk pushed up to a wall touches it, whatever rounding says; mm. */
const TOUCHES = 1e-6;

/** Where the two ears are in plan. */
const earsInPlan = ({ listener: { offset, setback, headWidth } }: Layout): Point[] =>
  [-headWidth / 2, headWidth / 2].map((aside) => [offset + aside, -setback]);

/** Walls that run through the desk or the head. @param index Number of the layout, from 0. */
export function wallFaults(layout: Layout, index: number): Fault[] {
  const { points } = deskShape(layout.desk);
  return layout.room.walls.flatMap(({ bearing, distance }, place): Fault[] => {
    const out = towards(bearing);
    const [desk, head] = [reachOf(out, points), reachOf(out, earsInPlan(layout))];
    const least = Math.max(desk, head);
    if (distance >= least - TOUCHES) return [];
    const what = desk >= head ? 'desk' : 'head';
    return [
      {
        pointer: pointerTo('layouts', index, 'room', 'walls', place, 'distance'),
        message: says`expected a wall at least ${asMm(roundedUp(least))} from the middle of the desk’s front edge so that it does not run through the ${what}, got ${bare(asTyped(distance))}`,
      },
    ];
  });
}

/** A limit to one decimal that is itself within it, mm. */
const roundedUp = (limit: number): number => Math.ceil(limit * 10 - TOUCHES) / 10;
