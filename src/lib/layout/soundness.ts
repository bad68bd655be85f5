import { overlapDepth, stretchInside, type Solid } from '$lib/geometry/solid.ts';
import type { Fault } from '$lib/project/fault.ts';
import { sideNames, type Layout, type SideName } from '$lib/project/project.ts';
import { asMm, needs, says } from '$lib/project/sentence.ts';
import { earsOf } from './ears.ts';

/** Cabinets that touch face to face overlap by the dust of rounding; mm. */
const TOUCHING = 1e-6;

/** Two things that cannot be in one place: a head in a cabinet, a cabinet in the other. Pointers below the layout. */
export function placeFaults(layout: Layout, bodies: Readonly<Record<SideName, Solid>>): Fault[] {
  const ears = earsOf(layout.listener, layout.desk);
  const faults = sideNames
    .filter((side) => stretchInside(bodies[side], ears.left, ears.right) !== null)
    .map((side) => ({
      pointer: '/listener',
      message: needs(
        'a head outside the cabinets',
        says`one that reaches into the ${side} cabinet`,
        says`move the seat or the ${side} mark`,
      ),
    }));
  const depth = overlapDepth(bodies.left, bodies.right);
  return depth > TOUCHING
    ? [
        ...faults,
        {
          pointer: '/placement',
          message: needs('two cabinets clear of each other', says`${asMm(depth)} of overlap`, 'move the marks apart'),
        },
      ]
    : faults;
}
