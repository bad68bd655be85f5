import { add, cross, dot, scale, vec3, type Point, type Vec3 } from '$lib/geometry/point.ts';
import { FACES } from '$lib/geometry/solid.ts';
import { monitorBodies, plateBody } from '$lib/layout/bodies.ts';
import { deskShape } from '$lib/project/deskShape.ts';
import { sideNames, type Layout, type SideName, type Speaker } from '$lib/project/project.ts';
import { cabinetFrame } from '$lib/drawing/cabinetFrame.ts';
import { servedHeads } from '$lib/drawing/fanItems.ts';
import { wallLine, wallsDrawn } from '$lib/drawing/roomFromAbove.ts';
import { TOP } from '$lib/drawing/roomFromSide.ts';
import { standSolid } from '$lib/drawing/standItems.ts';
import type { Plan } from '$lib/solution/document.ts';
import { plainly, plate, prism, solidOf, type Body } from './body.ts';
import { headBodies } from './headBodies.ts';

/** How far a wall is drawn over what is highest before it, and under the desk's top, mm. */
const WALL_ABOVE = 60;
const WALL_BELOW = 140;

/** Every thing of the plan that has a skin: a scene of the numbers that the plan holds, none worked out anew. */
export function bodiesOf(plan: Plan): Body[] {
  const { layout, project } = plan;
  const things = [
    deskBody(layout),
    ...layout.surfaces.map((surface): Body => ({
      ...plainly,
      subject: 'surface',
      solid: solidOf(plateBody(surface, layout.desk).vertices, FACES),
    })),
    ...layout.monitors.flatMap(monitorBodies).map((body): Body => ({
      ...plainly,
      subject: 'monitor',
      solid: solidOf(body.vertices, FACES),
    })),
    ...sideNames.flatMap((side) => [
      standBody(plan, side),
      cabinetBody(plan, side),
      ...rims(plan, project.speaker, side),
    ]),
    ...headBodies(plan.ears, plan.head, false),
    ...servedHeads(layout, 'right').flatMap(({ head }) => headBodies(plan.ears, head, true)),
  ];
  return [...wallBodies(layout, things), ...things];
}

function deskBody({ desk }: Layout): Body {
  const top = deskShape(desk).plate.map(([x, y]) => vec3(x, y, 0));
  return { ...plainly, subject: 'desk', solid: prism(top, vec3(0, 0, -TOP)) };
}

const standBody = (plan: Plan, side: SideName): Body => ({
  ...plainly,
  subject: 'stand',
  solid: standSolid(side, plan.sides[side], plan.stand[side]),
});

const cabinetBody = (plan: Plan, side: SideName): Body => ({
  ...plainly,
  subject: 'cabinet',
  solid: solidOf(plan.sides[side].cabinet, FACES),
});

/** Corners of the polygon that stands for a round rim: half a hundredth of the radius from it at most. */
const RIM = 32;

/** The rims of the drivers on the baffle. */
function rims(plan: Plan, speaker: Speaker, side: SideName): Body[] {
  const placed = plan.sides[side];
  const { inboard, up, front } = cabinetFrame(placed);
  // Counter-clockwise seen from the front: inboard is to the left there on one side, to the right on the other.
  const turn = dot(cross(inboard, up), front) < 0 ? -1 : 1;
  return placed.drivers.map(({ position }, index): Body => {
    const radius = (speaker.drivers[index]?.diameter ?? 0) / 2;
    const corners = Array.from({ length: RIM }, (_, step): Vec3 => {
      const angle = (turn * 2 * Math.PI * step) / RIM;
      return add(position, add(scale(inboard, radius * Math.cos(angle)), scale(up, radius * Math.sin(angle))));
    });
    return { ...plainly, subject: 'driver', pen: 'narrow', layer: 1, solid: plate(corners) };
  });
}

/** The faces of the walls near the desk, as long as what is before them, seen from the room only. */
function wallBodies(layout: Layout, things: readonly Body[]): Body[] {
  const corners = things.flatMap(({ solid }) => solid.corners);
  const top = Math.max(...corners.map(({ z }) => z)) + WALL_ABOVE;
  const reached = corners.map(({ x, y }): Point => [x, y]);
  return wallsDrawn(layout).map(({ wall }): Body => {
    const [[x, y], [toX, toY]] = wallLine(wall, reached);
    // The left end first as it is faced: so it runs counter-clockwise seen from the room.
    const face = [vec3(x, y, -WALL_BELOW), vec3(toX, toY, -WALL_BELOW), vec3(toX, toY, top), vec3(x, y, top)];
    return { ...plainly, subject: 'wall', pen: 'narrow', faint: true, solid: plate(face) };
  });
}
