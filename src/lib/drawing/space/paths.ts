import { add, along, cross, distance, length, scale, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { penStroke } from '$lib/drawing/pens.ts';
import { dimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import type { Pen, Subject } from '$lib/drawing/view.ts';
import { servedHeads } from '$lib/drawing/fanItems.ts';
import { sideNames, type SideName } from '$lib/project/project.ts';
import type { Plan, SidePlan } from '$lib/solution/document.ts';
import { leadingReflections } from '$lib/solution/leadingReflections.ts';
import type { SpaceLine } from './space.ts';

/** An axis is drawn past the head, to come out of it, mm; and past its place nearest to the head by this share of the way. */
const OUT_OF_HEAD = 190;
const BEYOND = 0.14;
/** A millimetre of paper for the lengths of dashes, mm: a drawing at about 1:10. */
const DASHES = dimensionStyle(10);
/** Radius of the ring where a sound comes off a surface, mm, and its corners. */
const RING = 18;
const RING_CORNERS = 16;

/** The lines that belong to no body: axes, ways to the other heads that an aim serves, and ways by a surface. */
export const pathsOf = (plan: Plan): SpaceLine[] =>
  sideNames.flatMap((side) => [
    ...axisPath(plan.sides[side]),
    ...servedHeads(plan.layout, side).flatMap(({ head }) =>
      straight('sight', 'sight', plan.sides[side].aimedPoint, head),
    ),
    ...reflectionPaths(plan, side),
  ]);

function axisPath({ aimedPoint, axis, nearest }: SidePlan): SpaceLine[] {
  const way = distance(aimedPoint, nearest);
  return straight('axis', 'aim', aimedPoint, along(aimedPoint, axis, way + Math.max(BEYOND * way, OUT_OF_HEAD)));
}

/** From the driver that speaks for each surface to the head by way of it, but for a ceiling: that is not drawn. */
function reflectionPaths({ sides, head }: Plan, name: SideName): SpaceLine[] {
  const side = sides[name];
  return leadingReflections(side.reflections).flatMap(({ surface, driver, point }): SpaceLine[] => {
    const source = side.drivers.find((one) => one.name === driver);
    if (surface === 'ceiling' || source === undefined) return [];
    return [
      ...straight('reflection', 'hidden', source.position, point),
      ...straight('reflection', 'hidden', point, head),
      ...ring(point, source.acousticCentre, head),
    ];
  });
}

/** A ring flat on the surface that a sound comes off: square to the middle between the ways from its source and to the head. */
function ring(point: Vec3, from: Vec3, to: Vec3): SpaceLine[] {
  const unit = (v: Vec3): Vec3 => scale(v, 1 / (length(v) || 1));
  const normal = unit(add(unit(subtract(from, point)), unit(subtract(to, point))));
  const across = unit(cross(normal, Math.abs(normal.z) < 0.9 ? vec3(0, 0, 1) : vec3(1, 0, 0)));
  const over = cross(normal, across);
  const corner = (step: number): Vec3 => {
    const angle = (2 * Math.PI * step) / RING_CORNERS;
    return along(along(point, across, RING * Math.cos(angle)), over, RING * Math.sin(angle));
  };
  return Array.from({ length: RING_CORNERS }, (_, step) =>
    segment('reflection', 'narrow', corner(step), corner(step + 1)),
  );
}

const segment = (subject: Subject, pen: Pen, from: Vec3, to: Vec3): SpaceLine => ({
  subject,
  pen,
  from,
  to,
  faint: false,
  between: [],
  blunt: false,
});

/** A straight line, cut into the dashes of its pen. */
function straight(subject: Subject, pen: Pen, from: Vec3, to: Vec3): SpaceLine[] {
  const { dashes } = penStroke(pen, DASHES);
  const way = distance(from, to);
  if (dashes.length === 0 || way === 0) return [segment(subject, pen, from, to)];
  const at = (reach: number): Vec3 => along(from, subtract(to, from), reach / way);
  const lines: SpaceLine[] = [];
  let reach = 0;
  for (let index = 0; reach < way; index++) {
    const end = Math.min(way, reach + (dashes[index % dashes.length] ?? way));
    if (index % 2 === 0) lines.push(segment(subject, pen, at(reach), end === way ? to : at(end)));
    reach = end;
  }
  return lines;
}
