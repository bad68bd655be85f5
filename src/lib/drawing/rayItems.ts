import { along, distance, type Vec3 } from '$lib/geometry/point.ts';
import type { Plan, SidePlan } from '$lib/solution/document.ts';
import { leadingReflections } from '$lib/solution/leadingReflections.ts';
import type { SideName, Wall } from '$lib/project/project.ts';
import { wayTo } from '$lib/project/wall.ts';
import { liesOn, type Segment } from './coincide.ts';
import { fromAbove, type Projection } from './projection.ts';
import { wallsDrawn } from './roomFromAbove.ts';
import type { Item, Pen, Rank, Subject } from './view.ts';

/** How far an axis is drawn past the place where it passes nearest to the head, as a share of the way there. */
const BEYOND = 0.14;

const stroke = (
  id: string,
  subject: Subject,
  pen: Pen,
  points: Segment | readonly (readonly [number, number])[],
  rank: Rank = 1,
): Item => ({
  kind: 'outline',
  id,
  subject,
  pen,
  points,
  closed: false,
  filled: false,
  rank,
});

const axisEnd = (side: SidePlan): Vec3 =>
  along(side.aimedPoint, side.axis, distance(side.aimedPoint, side.nearest) * (1 + BEYOND));

const segment = (from: Vec3, to: Vec3, { flat }: Projection): Segment => [flat(from), flat(to)];

/** The axis of one loudspeaker, from the aimed point past the head. */
export const axisItem = (name: SideName, side: SidePlan, projection: Projection): Item =>
  stroke(`axis-${name}`, 'axis', 'aim', segment(side.aimedPoint, axisEnd(side), projection));

/** Lines from the drivers to the head, save those that fall on the axis or on the line from the aimed point. */
export function sightItems(name: SideName, plan: Plan, projection: Projection): Item[] {
  const side = plan.sides[name];
  const drawn: Segment[] = [segment(side.aimedPoint, axisEnd(side), projection)];
  return [
    { id: 'aimed', from: side.aimedPoint },
    ...side.drivers.map(({ position }, index) => ({ id: `${index}`, from: position })),
  ]
    .map(({ id, from }) => ({ id, line: segment(from, plan.head, projection) }))
    .filter(({ line }) => {
      const again = liesOn(line, drawn);
      if (!again) drawn.push(line);
      return !again;
    })
    .map(({ id, line }) => stroke(`sight-${name}-${id}`, 'sight', 'sight', line, 3));
}

/** A wall that is seen on edge from the side. */
const isAcross = (wall: Wall): boolean => ['back', 'front'].includes(wayTo(wall));

/** The ways over desk and the walls that are drawn, of the driver whose first notch is told, with the place where each lands. */
export function reflectionItems(name: SideName, plan: Plan, projection: Projection): Item[] {
  const side = plan.sides[name];
  const walls = wallsDrawn(plan.layout).filter(({ wall }) => projection === fromAbove || isAcross(wall));
  return leadingReflections(side.reflections).flatMap(({ surface, driver, point }): Item[] => {
    const wall = walls.find((one) => surface === `wall:${one.wall.name}`);
    const plate = plan.layout.surfaces.findIndex((one) => surface === `surface:${one.name}`);
    if (surface !== 'desk' && !wall && plate < 0) return [];
    const source = side.drivers.find((one) => one.name === driver)?.position;
    if (source === undefined) return [];
    const id = `reflection-${name}-${wall ? `wall-${wall.index}` : plate < 0 ? surface : `surface-${plate}`}`;
    const at = projection.flat(point);
    const [from, to] = segment(source, plan.head, projection);
    // The desk's way is the one to look at; the wall's is detail.
    const rank = surface === 'desk' ? 1 : 3;
    const spot: Item = { kind: 'spot', id: `${id}-spot`, subject: 'reflection', at, mark: 'ring', rank };
    // Seen along the surface's own normal the way out and back is the direct line; the landing point says enough.
    if (liesOn([from, at], [[from, to]])) return [spot];
    return [stroke(id, 'reflection', 'hidden', [from, at, to], rank), spot];
  });
}

/** The triangle of the two aimed points and the head. */
export function triangleItem(plan: Plan, projection: Projection): Item {
  const { left, right } = plan.sides;
  return {
    kind: 'outline',
    id: 'triangle',
    subject: 'triangle',
    pen: 'narrow',
    points: [left.aimedPoint, plan.head, right.aimedPoint].map(projection.flat),
    closed: true,
    filled: true,
    rank: 3,
  };
}
