import { radians } from '$lib/geometry/angle.ts';
import { along, scale, vec3, type Point, type Vec3 } from '$lib/geometry/point.ts';
import { FACES, sixSided } from '$lib/geometry/solid.ts';
import type { SidePlan, StandPlan } from '$lib/solution/document.ts';
import type { SideName } from '$lib/project/project.ts';
import { boxOf, rectangle } from './box.ts';
import { fromAbove, fromRight } from './projection.ts';
import { projectSolid, type Face, type Solid } from './solid.ts';
import type { Item } from './view.ts';

/** The stand as a body: its profile drawn out to its width across the toed direction, or a compound wedge square to the desk. */
export const standSolid = (name: SideName, side: SidePlan, stand: StandPlan): Solid =>
  stand.base === 'turned' ? prism(name, side, stand) : compoundWedge(name, side, stand);

function prism(name: SideName, side: SidePlan, stand: StandPlan): Solid {
  const toe = radians(side.toe);
  const out = name === 'right' ? 1 : -1;
  const back = vec3(out * Math.sin(toe), Math.cos(toe), 0);
  const outboard = vec3(out * Math.cos(toe), -Math.sin(toe), 0);
  const { profile, width } = stand;
  const at = (u: number, z: number, offset: number): Vec3 =>
    along(along(along(side.mark, back, u), outboard, offset), vec3(0, 0, 1), z);
  const count = profile.length;
  const edges = profile.map(([u, z], index): Face => {
    const next = (index + 1) % count;
    const [nextU, nextZ] = profile[next] ?? [u, z];
    // The profile runs counter-clockwise, so its outside is to the right of each edge.
    const normal = along(scale(back, nextZ - z), vec3(0, 0, 1), u - nextU);
    return { loop: [index, next, next + count, index + count], normal };
  });
  return {
    corners: [width / 2, -width / 2].flatMap((offset) => profile.map(([u, z]) => at(u, z, offset))),
    faces: [
      { loop: profile.map((_, index) => index), normal: outboard },
      { loop: profile.map((_, index) => index + count), normal: scale(outboard, -1) },
      ...edges,
    ],
  };
}

/** Its base lies square to the desk, its top slopes across as well: the profile is the section through the middle. */
function compoundWedge(name: SideName, { mark, toe, tilt }: SidePlan, { profile, footprint }: StandPlan): Solid {
  const [base = [0, 0], , rear = [0, 0], front = [0, 0]] = profile;
  const box = boxOf(footprint);
  const [left, near, right] = box;
  // A tilt lowers the rear; of that, the toe takes this share across.
  const lean = (name === 'right' ? -1 : 1) * Math.tan(radians(tilt)) * Math.sin(radians(toe));
  const height = (x: number, y: number): number => (y === near ? front : rear)[1] + lean * (x - (left + right) / 2);
  const corners = [
    ...rectangle(box).map(([x, y]) => vec3(x, y, mark.z + base[1])),
    ...rectangle(box).map(([x, y]) => vec3(x, y, mark.z + height(x, y))),
  ];
  const { faces } = sixSided(corners);
  return { corners, faces: FACES.map((loop, index): Face => ({ loop, normal: faces[index]?.normal ?? ZERO })) };
}

const ZERO = vec3(0, 0, 0);

/** From the side: the faces that can be seen, in their true projection, narrower than they are where the stand is toed. */
export function standFromSide(name: SideName, side: SidePlan, stand: StandPlan): Item[] {
  return projectSolid(standSolid(name, side, stand), fromRight).faces.map((points, index) => ({
    kind: 'outline',
    id: `stand-${name}-face-${index}`,
    subject: 'stand',
    pen: 'wide',
    points,
    closed: true,
    filled: true,
  }));
}

const base = (stand: StandPlan): Point[] => stand.footprint.map(([x, y]) => fromAbove.flat(vec3(x, y, 0)));

/** From above: the base on the desk, before the cabinet is drawn over it. */
export const standFromAbove = (name: SideName, stand: StandPlan): Item => ({
  kind: 'outline',
  id: `stand-${name}`,
  subject: 'stand',
  pen: 'narrow',
  points: base(stand),
  closed: true,
  filled: true,
});

/** From above: the base again, dashed, for where the cabinet hides it. */
export const standUnderCabinet = (name: SideName, stand: StandPlan): Item => ({
  kind: 'outline',
  id: `stand-${name}-hidden`,
  subject: 'stand',
  pen: 'hidden',
  points: base(stand),
  closed: true,
  filled: false,
});
