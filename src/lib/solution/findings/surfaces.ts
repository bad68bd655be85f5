import { signedArea } from '$lib/geometry/area.ts';
import { degrees } from '$lib/geometry/angle.ts';
import { overlapConvex } from '$lib/geometry/clipConvex.ts';
import { polygonPath } from '$lib/geometry/contour.ts';
import { convexHull } from '$lib/geometry/convexHull.ts';
import { between, vec3, type Point, type Vec3 } from '$lib/geometry/point.ts';
import { overlapDepth, type Solid } from '$lib/geometry/solid.ts';
import { plateBody } from '$lib/layout/bodies.ts';
import { deskShape } from '$lib/project/deskShape.ts';
import { sideNames, type SideName, type Surface } from '$lib/project/project.ts';
import { asAngle, asMm, type Quantity } from '$lib/project/sentence.ts';
import { DESK, FLOOR, footCorners, surfaceCorners } from '$lib/project/surface.ts';
import { stopRemedy } from '$lib/stand/remedy.ts';
import { edgeNames, edgesOf, marginsOf, type EdgeName } from '$lib/stand/tipping.ts';
import { together, type Weight } from '$lib/stand/weights.ts';
import type { Check, PlacedCheck, Scene } from './check.ts';
import type { Finding } from './finding.ts';
import { stopToTape } from './stopSize.ts';
import { TEST_PLANE } from './testPlane.ts';

/** Bodies that touch overlap by the dust of rounding, mm; and mm². */
const DUST = 1e-6;

/** A cabinet in one place with a plate that it is not on, or with the desk's top. */
const intoSurface: PlacedCheck = ({ layout, cabinets }) =>
  sideNames.flatMap((side): Finding[] => {
    const { on } = layout.placement[side];
    const through = on === DESK ? 0 : depthInDesk(cabinets[side], deskShape(layout.desk).points);
    const found = layout.surfaces
      .filter(({ name }) => name !== on)
      .map((one) => ({ surface: one.name, depth: overlapDepth(cabinets[side], plateBody(one, layout.desk)) }));
    return [{ surface: DESK, depth: through }, ...found]
      .filter(({ depth }) => depth > DUST)
      .map(({ surface, depth }) => ({
        code: 'into-surface',
        level: 'fault',
        sides: [side],
        subject: { surface },
        facts: {},
        quantities: { depth: asMm(depth) },
        value: depth,
        limit: 0,
        unit: 'mm',
        source: 'geometry',
      }));
  });

/** How far a body would have to go up or down to be clear of the desk's top, mm; 0 where it is. */
function depthInDesk({ vertices }: Solid, desk: readonly Point[]): number {
  const [low, high] = [Math.min(...vertices.map(({ z }) => z)), Math.max(...vertices.map(({ z }) => z))];
  if (low > -DUST || high < DUST) return 0;
  const crossings = vertices.flatMap((from, i) =>
    vertices
      .slice(i + 1)
      .flatMap((to) => (from.z < 0 === to.z < 0 ? [] : [between(from, to, from.z / (from.z - to.z))])),
  );
  const cut = convexHull(crossings.map(({ x, y }): Point => [x, y]));
  const shared = cut.length < 3 ? [] : overlapConvex(desk, cut);
  return shared.length >= 3 && signedArea(polygonPath(shared)) > DUST ? Math.min(-low, high) : 0;
}

/** A cabinet that leans down from a raised plate with nothing but friction to hold it. */
const unstopped: Check = ({ layout, poses, speaker, display }) =>
  sideNames.flatMap((side): Finding[] => {
    const { on } = layout.placement[side];
    const pose = poses[side];
    if (on === DESK || on === FLOOR || pose.tilt >= 0 || layout.stand.stop) return [];
    const remedy = stopRemedy(layout.stand, speaker.depth, pose);
    const stop = remedy?.key === 'stop' ? stopToTape(remedy.value, display) : null;
    return [
      {
        code: 'no-stop',
        level: 'caution',
        sides: [side],
        subject: {},
        facts: { surface: on, base: layout.stand.base },
        quantities: {
          slope: asAngle(degrees(-pose.tilt)),
          ...(stop && { stopHeight: asMm(stop.height), stopThickness: asMm(stop.thickness) }),
        },
        value: degrees(-pose.tilt),
        limit: 0,
        unit: '°',
        source: 'rule-of-thumb',
      },
    ];
  });

/** A riser or floor stand that tips with what stands on it. */
const plateTips: Check = (scene) =>
  scene.layout.surfaces.flatMap((surface): Finding[] => {
    const sides = sideNames.filter((side) => scene.layout.placement[side].on === surface.name);
    if (surface.on === 'wall' || sides.length === 0) return [];
    const base = surface.on === 'desk' ? 0 : -scene.layout.desk.height;
    const [frontLeft, frontRight, rearRight, rearLeft] = footCorners(surface).map(([x, y]) => vec3(x, y, base));
    if (!frontLeft || !frontRight || !rearRight || !rearLeft) return [];
    // Seen from the listener, the left edge is a right loudspeaker's inboard one.
    const edges = edgesOf([frontRight, rearRight, rearLeft, frontLeft], 'right');
    const centres = centresOf(scene, surface, sides, base);
    const held = centres.map((centre) => marginsOf(centre, edges, UP));
    const least = (edge: EdgeName): number => Math.min(...held.map((margins) => margins[edge].angle));
    const edge = edgeNames.reduce((a, b) => (least(b) < least(a) ? b : a));
    const most = Math.max(...held.map((margins) => Math.min(...edgeNames.map((name) => margins[name].angle))));
    if (degrees(least(edge)) >= TEST_PLANE) return [];
    return [
      {
        code: 'plate-tips',
        level: most <= 0 ? 'fault' : degrees(most) < TEST_PLANE ? 'caution' : 'note',
        sides,
        subject: { surface: surface.name },
        facts: { edge: TOWARDS[edge], carried: surface.on },
        quantities: tiltsOf(least(edge), most),
        value: degrees(least(edge)),
        limit: TEST_PLANE,
        unit: '°',
        source: 'tip-test',
      },
    ];
  });

const UP = vec3(0, 0, 1);

const TOWARDS = { front: 'forwards', rear: 'backwards', inboard: 'to the left', outboard: 'to the right' } as const;

const tiltsOf = (least: number, most: number): Record<'least' | 'most' | 'plane', Quantity> => ({
  least: asAngle(degrees(least)),
  most: asAngle(degrees(most)),
  plane: asAngle(TEST_PLANE),
});

/**
 * Centres of mass of a plate's stand with all that is on it; its own counts at half its height, under the middle of the
 * plate. Where the cabinets' mass is not given: as if they weighed nothing, and as if they alone weighed anything.
 */
function centresOf({ layout, balances }: Scene, surface: Surface, sides: readonly SideName[], base: number): Vec3[] {
  const top = surface.height - layout.desk.height;
  const [from, , to] = surfaceCorners(surface);
  const own: Weight[] =
    surface.foot?.mass && from && to
      ? [
          {
            centre: vec3((from[0] + to[0]) / 2, (from[1] + to[1]) / 2, (base + top) / 2),
            mass: surface.foot.mass,
          },
        ]
      : [];
  const joints = sides.flatMap((side) => balances[side].joint ?? []);
  if (joints.length === sides.length) return [centreOf([...own, ...joints])];
  const cabinets = sides.map((side) => ({ centre: balances[side].cabinet, mass: 1 }));
  return [centreOf([...own, ...sides.map((side) => balances[side].wood)]), centreOf(cabinets)];
}

const centreOf = (weights: readonly Weight[]): Vec3 => weights.reduce(together).centre;

/** Those that ask for nothing of the stands, and the others; in the order in which they are told. */
export const surfacePlacedChecks: readonly PlacedCheck[] = [intoSurface];
export const surfaceChecks: readonly Check[] = [plateTips, unstopped];
