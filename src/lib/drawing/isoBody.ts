import { vec3, type Point, type Vec3 } from '$lib/geometry/point.ts';
import { radians } from '$lib/geometry/angle.ts';
import type { Plan, SidePlan, StandPlan } from '$lib/solution/document.ts';
import type { SideName } from '$lib/project/project.ts';
import { extentOf } from './extent.ts';
import { facesInSight, type Corners } from './isoBlock.ts';
import { isoFace, isoLine } from './isoFace.ts';
import { isoRibs } from './isoRibs.ts';
import { jointsAcross } from './isoJoints.ts';
import { seenFaces } from './prismSeen.ts';
import type { Item, View } from './view.ts';

/**
 * How one stand is made, in isometric from the front, the right and above: its layers, its core between cheeks, its ribs or
 * its one block, veneer left out. In its own axes, whatever its toe; only what is in sight is drawn.
 */
export function isoBody(plan: Pick<Plan, 'sides' | 'stand' | 'parts'>, side: SideName): View {
  const items = itemsOf(plan, side);
  return { name: `How the ${side} stand is made, isometric`, items, extent: extentOf(items) };
}

function itemsOf({ sides, stand, parts }: Pick<Plan, 'sides' | 'stand' | 'parts'>, side: SideName): Item[] {
  const body = stand[side];
  if (body.build === 'ribbed') return isoRibs(body, parts, side);
  return body.base === 'turned' ? prism(body) : compoundWedge(body, sides[side], side);
}

/** The near end with the faces drawn out from it, and the joints of its layers on them. */
function prism(body: StandPlan): Item[] {
  const { profile, width } = body;
  const faces = seenFaces(profile, width);
  const joints = jointsAcross(body);
  return [
    ...faces.map(({ edge, loop }) => isoFace(`face-${edge}`, loop)),
    ...faces.flatMap(({ edge, lineAt }) => coreBand(body, edge, lineAt)),
    ...joints.flatMap((x) =>
      faces.flatMap(({ edge, lineAt }) =>
        lineAt(x).map((ends, part) => isoLine(`joint-${edge}-${part}-${x.toFixed(3)}`, ends)),
      ),
    ),
    isoFace(
      'end',
      profile.map(([y, z]) => vec3(width / 2, y, z)),
    ),
  ];
}

/** A printed core is no wood: its band on a face is tinted otherwise. */
function coreBand(
  { widths }: StandPlan,
  edge: number,
  lineAt: (x: number) => readonly (readonly [Vec3, Vec3])[],
): Item[] {
  const core = widths.find(({ what }) => what === 'core');
  if (!core) return [];
  const [left, right] = [lineAt(-core.each / 2)[0], lineAt(core.each / 2)[0]];
  if (!left || !right) return [];
  return [{ ...isoFace(`core-${edge}`, [left[0], right[0], right[1], left[1]]), subject: 'driver' }];
}

/** Slices, a core between cheeks, or one block, with the base square to the desk: its four heights differ. */
function compoundWedge(body: StandPlan, { toe, tilt }: Pick<SidePlan, 'toe' | 'tilt'>, side: SideName): Item[] {
  const { profile, width } = body;
  const [front = [0, 0], rear = [0, 0], rearTop = [0, 0], frontTop = [0, 0]] = profile;
  const mirror = side === 'right' ? 1 : -1;
  // A tilt lowers the rear; of that, the toe takes this share across.
  const lean = -mirror * Math.tan(radians(tilt)) * Math.sin(radians(toe));
  const height = (x: number, [, z]: Point): number => z + lean * x;
  const [left, right] = [-width / 2, width / 2];
  const corners: Corners = {
    base: [vec3(left, ...front), vec3(right, ...front), vec3(right, ...rear), vec3(left, ...rear)],
    top: [
      vec3(left, frontTop[0], height(left, frontTop)),
      vec3(right, frontTop[0], height(right, frontTop)),
      vec3(right, rearTop[0], height(right, rearTop)),
      vec3(left, rearTop[0], height(left, rearTop)),
    ],
  };
  const at = (x: number) => ({
    foot: vec3(x, ...front),
    near: vec3(x, frontTop[0], height(x, frontTop)),
    far: vec3(x, rearTop[0], height(x, rearTop)),
  });
  const across = jointsAcross(body).flatMap((x, i) => {
    const { foot, near, far } = at(x);
    return [isoLine(`joint-front-${i}`, [foot, near]), isoLine(`joint-top-${i}`, [near, far])];
  });
  const core = body.widths.find(({ what }) => what === 'core');
  const bands = core ? leaningBands(at(-core.each / 2), at(core.each / 2)) : [];
  return [...facesInSight(corners).map((face, i) => isoFace(`face-${i}`, face)), ...bands, ...across];
}

/** A printed core on front and top, between its two sides. */
function leaningBands(left: Record<'foot' | 'near' | 'far', Vec3>, right: typeof left): Item[] {
  const front = isoFace('core-front', [left.foot, right.foot, right.near, left.near]);
  const top = isoFace('core-top', [left.near, right.near, right.far, left.far]);
  return [front, top].map((face) => ({ ...face, subject: 'driver' }));
}
