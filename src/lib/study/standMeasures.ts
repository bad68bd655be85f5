import { TEST_PLANE } from '$lib/solution/findings/testPlane.ts';
import { bodyGap } from '$lib/geometry/bodyGap.ts';
import { gapWithin } from '$lib/geometry/gapWithin.ts';
import { overlapDepth, sixSided } from '$lib/geometry/solid.ts';
import { monitorBodies } from '$lib/layout/bodies.ts';
import { hiddenShare } from '$lib/layout/hiddenShare.ts';
import { sideNames, type SideName } from '$lib/project/project.ts';
import { outlineUnder } from '$lib/project/surface.ts';
import { gapToWall } from '$lib/project/wall.ts';
import type { Solution } from '$lib/solution/solution.ts';
import type { Bodies, Measure } from './measure.ts';

const OVERLAPS = 'geometry: under it something overlaps';

/** Of the cabinets and the stands under them. */
export const standMeasures: readonly Measure[] = [
  {
    name: 'screen-hidden',
    label: 'Screen hidden',
    unit: '%',
    better: 'less',
    says: 'The largest share of a screen that a cabinet hides from the eyes.',
    working: 'area of the cabinet’s shadow on the screen, seen from the head, over the area of the screen; the largest',
    needs: 'bodies',
    of: ({ layout, head, sides }) => {
      let most = 0;
      for (const side of sideNames) {
        const cabinet = sixSided(sides[side].cabinet);
        for (const monitor of layout.monitors) most = Math.max(most, 100 * hiddenShare(cabinet, monitor, head));
      }
      return most;
    },
  },
  {
    name: 'screen-gap',
    label: 'Clear of screens',
    unit: 'mm',
    better: 'more',
    says: 'The least gap between a cabinet and a screen; negative where they overlap.',
    working: 'gap between each cabinet and each screen; the least',
    missing: { means: 'there is no screen', is: 'best' },
    limit: { value: 0, source: OVERLAPS },
    needs: 'bodies',
    of: (bodies) => finite(Math.min(...sideNames.map((side) => screenGap(bodies, side)))),
  },
  {
    name: 'wall-gap',
    label: 'Clear of walls',
    unit: 'mm',
    better: 'more',
    says: 'The least gap between a wall and a cabinet or its stand; negative where they overlap.',
    working: 'gap of each cabinet and stand to each wall; the least',
    missing: { means: 'there is no wall', is: 'best' },
    limit: { value: 0, source: OVERLAPS },
    needs: 'stands',
    of: (solution) => finite(Math.min(...sideNames.flatMap((side) => wallGaps(solution, side)))),
  },
  {
    name: 'edge-gap',
    label: 'Within the desk’s edge',
    unit: 'mm',
    better: 'more',
    says: 'How far inside the desk’s edge the base of every stand is; negative where it hangs over.',
    working: 'gap of each stand’s base to each edge of the desk; the least',
    limit: { value: 0, source: OVERLAPS },
    needs: 'stands',
    of: (solution) => finite(Math.min(...sideNames.map((side) => edgeGap(solution, side)))),
  },
  {
    name: 'clearance',
    label: 'Clearance',
    unit: 'mm',
    better: 'more',
    says: 'The least gap that is left to a screen, a wall or an edge of the desk; negative where something overlaps.',
    working: 'the least of the gaps to screens, to walls and to the edges of the desk',
    limit: { value: 0, source: OVERLAPS },
    needs: 'stands',
    of: (solution) => {
      const near = Math.min(...sideNames.flatMap((side) => [edgeGap(solution, side), ...wallGaps(solution, side)]));
      // Bodies that are further apart than that need not be measured.
      return finite(Math.min(near, ...sideNames.map((side) => screenGap(solution, side, near))));
    },
  },
  {
    name: 'tip-angle',
    label: 'Tip angle',
    unit: '°',
    better: 'more',
    says: 'The steepest plane, turned any way, on which nothing yet tips over.',
    working: 'least angle of the plumb line through the centre of mass over any edge of the base; the smaller side',
    limit: { value: TEST_PLANE, source: 'the plane on which the checks try every stand' },
    needs: 'stands',
    of: ({ balance }) => Math.min(balance.left.survives.least, balance.right.survives.least),
  },
  {
    name: 'slip-margin',
    label: 'Slip margin',
    unit: '°',
    better: 'more',
    says: 'By how much steeper the slope could be before the cabinet starts to slide down its stand.',
    working: 'arc tangent of the friction, less the slope; the smaller side',
    limit: { value: 0, source: 'geometry: under it the cabinet slides on a level desk' },
    needs: 'stands',
    of: ({ balance }) => Math.min(balance.left.slide.margin, balance.right.slide.margin),
  },
  {
    name: 'wood',
    label: 'Mass of both stands',
    unit: 'kg',
    better: 'less',
    says: 'What the two stands weigh, and so how much material is in them.',
    working: 'mass of the left and of the right stand; their sum',
    needs: 'stands',
    of: ({ stand }) => stand.left.mass + stand.right.mass,
  },
  {
    name: 'sheets',
    label: 'Sheets',
    unit: '',
    better: 'less',
    says: 'How many sheets and offcuts the parts of both stands are cut from.',
    working: 'the parts nested by the layout’s seed; sheets and offcuts counted',
    missing: { means: 'the parts cannot be laid out on the sheets', is: 'unknown' },
    needs: 'sheets',
    of: ({ sheets }) => (sheets.ok ? sheets.value.length : null),
  },
];

/** mm; negative where they overlap, Infinity where every screen is further away than `most`. */
function screenGap({ layout, sides }: Bodies, side: SideName, most = Infinity): number {
  const body = sixSided(sides[side].cabinet);
  return Math.min(
    ...layout.monitors
      .flatMap(monitorBodies)
      .map((screen) => bodyGap(body, screen, Math.max(0, most)) || -Math.max(0, overlapDepth(body, screen))),
  );
}

function wallGaps({ layout: { room }, sides, stand }: Solution, side: SideName): number[] {
  const whole = [...stand[side].footprint, ...sides[side].cabinet.map(({ x, y }) => [x, y] as const)];
  return room.walls.map((wall) => gapToWall(wall, whole));
}

/** To the edges of what the stand is on; Infinity on the floor. */
function edgeGap({ layout, stand }: Solution, side: SideName): number {
  const outline = outlineUnder(layout, side);
  return outline ? gapWithin(outline, stand[side].footprint).gap : Infinity;
}

const finite = (gap: number): number | null => (gap === Infinity ? null : gap);
