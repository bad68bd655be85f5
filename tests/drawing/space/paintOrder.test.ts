import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { areaVector } from '$lib/drawing/space/body.ts';
import { cameraOf, project, type Look } from '$lib/drawing/space/look.ts';
import { paint, partingOf } from '$lib/drawing/space/paintOrder.ts';
import type { SpaceFace, SpaceLine, SpaceScene } from '$lib/drawing/space/space.ts';
import { spaceScene } from '$lib/drawing/space/spaceScene.ts';
import { isSeen } from '$lib/drawing/space/seen.ts';
import { add, between, cross, dot, length, scale, subtract, vec3, type Point, type Vec3 } from '$lib/geometry/point.ts';
import { numberFrom } from '../../numbers.ts';
import { runs } from '../../runs.ts';
import { scenes } from '../arbitraries.ts';
import { scene } from '../scene.ts';

const looks: fc.Arbitrary<Look> = fc.record({
  round: numberFrom(-179, 180),
  over: numberFrom(-15, 89),
  near: fc.constant(1),
});

/** Whether a point of a plane lies in a figure there: how often a ray crosses its outline. */
function holds(figure: readonly Point[], [x, y]: Point): boolean {
  let inside = false;
  figure.forEach(([ax, ay], index) => {
    const [bx, by] = figure[(index + 1) % figure.length] ?? [ax, ay];
    if (ay > y !== by > y && x < ax + ((y - ay) * (bx - ax)) / (by - ay)) inside = !inside;
  });
  return inside;
}

/** Where along a ray it meets a face from its front, as a share of `way`; null where it does not. */
function meets({ corners, normal }: SpaceFace, eye: Vec3, way: Vec3): number | null {
  const slant = dot(normal, way);
  const [corner] = corners;
  if (slant >= 0 || !corner) return null;
  const share = dot(normal, subtract(corner, eye)) / slant;
  const point = add(eye, scale(way, share));
  // In the plane of the two axes that the face is turned from least.
  const flat = ({ x, y, z }: Vec3): Point =>
    Math.abs(normal.z) > 0.6 ? [x, y] : Math.abs(normal.y) > 0.6 ? [x, z] : [y, z];
  return holds(corners.map(flat), flat(point)) ? share : null;
}

/** What a ray from the eye meets first, by looking at every face. */
function firstMet(
  { faces }: SpaceScene,
  eye: Vec3,
  way: Vec3,
): { readonly face: SpaceFace; readonly share: number } | null {
  let best: { face: SpaceFace; share: number } | null = null;
  for (const face of faces) {
    const share = meets(face, eye, way);
    if (share === null || share <= 0) continue;
    // What lies on another face is nearer by nothing.
    if (best === null || share < best.share - 1e-9 || (share < best.share + 1e-9 && face.layer > best.face.layer)) {
      best = { face, share };
    }
  }
  return best;
}

describe('painting', () => {
  it('leaves on top what a ray from the eye meets first', () => {
    let compared = 0;
    fc.assert(
      fc.property(
        scenes,
        looks,
        fc.array(fc.tuple(numberFrom(0.3, 0.7), numberFrom(0.3, 0.7)), { minLength: 30, maxLength: 30 }),
        ({ plan }, look, spots) => {
          const space = spaceScene(plan);
          const camera = cameraOf(space, look, 900, 600);
          const painted: { readonly face: SpaceFace; readonly figure: readonly Point[] }[] = [];
          paint(partingOf(space.faces), [], camera.eye, {
            face: (face, corners) => painted.push({ face, figure: corners.map((corner) => project(camera, corner)) }),
            line: () => undefined,
          });
          for (const [across, down] of spots) {
            const at: Point = [across * 900, down * 600];
            const way = add(
              camera.forward,
              add(scale(camera.right, (at[0] - 450) / camera.focus), scale(camera.up, (300 - at[1]) / camera.focus)),
            );
            const first = firstMet(space, camera.eye, way);
            const top = painted.filter(({ figure }) => holds(figure, at)).at(-1);
            // On an outline either may be right.
            if (
              painted.some(({ figure }) =>
                figure.some((corner, index) => nearTo(at, corner, figure[(index + 1) % figure.length] ?? corner)),
              )
            )
              continue;
            expect(top?.face).toBe(first?.face);
            if (first) compared++;
          }
        },
      ),
      { numRuns: runs(60) },
    );
    expect(compared).toBeGreaterThan(runs(60) * 2);
  });

  it('shows a line exactly where nothing stands before it', () => {
    let [shown, covered] = [0, 0];
    const space = spaceScene(scene().plan);
    fc.assert(
      fc.property(looks, numberFrom(0.2, 0.8), (look, share) => {
        const camera = cameraOf(space, look, 900, 600);
        const strokes: { readonly line: SpaceLine; readonly at: number; readonly from: Vec3; readonly to: Vec3 }[] = [];
        const painted: (readonly Point[])[] = [];
        paint(
          partingOf(space.faces),
          space.lines.filter((line) => isSeen(line, camera)),
          camera.eye,
          {
            face: (_, corners) => painted.push(corners.map((corner) => project(camera, corner))),
            line: (line, from, to) => strokes.push({ line, at: painted.length, from, to }),
          },
        );
        // Ways through the air: an edge has faces of its own beside it.
        for (const { line, at, from, to } of strokes) {
          if (line.subject !== 'axis' && line.subject !== 'sight') continue;
          const point = between(from, to, share);
          const way = subtract(point, camera.eye);
          const first = firstMet(space, camera.eye, way);
          if (first && Math.abs(first.share - 1) * length(way) < 0.5) continue;
          const isCovered = painted.slice(at).some((figure) => holds(figure, project(camera, point)));
          expect(isCovered).toBe(first !== null && first.share < 1);
          if (isCovered) covered++;
          else shown++;
        }
      }),
      { numRuns: runs(60) },
    );
    expect(shown).toBeGreaterThan(runs(60));
    expect(covered).toBeGreaterThan(runs(60) / 4);
  });

  it('keeps the whole area of every face, however it is cut', () => {
    const { faces } = spaceScene(scene().plan);
    const areas = new Map<SpaceFace, number>();
    const whole = (part: ReturnType<typeof partingOf>): void => {
      if (part === null) return;
      for (const { face, corners } of part.pieces)
        areas.set(face, (areas.get(face) ?? 0) + dot(areaVector(corners), face.normal));
      whole(part.before);
      whole(part.behind);
    };
    whole(partingOf(faces));
    for (const face of faces) expect(areas.get(face)).toBeCloseTo(dot(areaVector(face.corners), face.normal), 3);
  });

  it('cuts faces that pass through each other', () => {
    const square = (corners: Vec3[]): SpaceFace => {
      const area = cross(
        subtract(corners[1] ?? vec3(0, 0, 0), corners[0] ?? vec3(0, 0, 0)),
        subtract(corners[2] ?? vec3(0, 0, 0), corners[1] ?? vec3(0, 0, 0)),
      );
      return { subject: 'desk', corners, normal: scale(area, 1 / length(area)), faint: false, layer: 0 };
    };
    const level = square([vec3(-1, -1, 0), vec3(1, -1, 0), vec3(1, 1, 0), vec3(-1, 1, 0)].map((v) => scale(v, 100)));
    const upright = square([vec3(-1, 0, -1), vec3(1, 0, -1), vec3(1, 0, 1), vec3(-1, 0, 1)].map((v) => scale(v, 100)));
    const order: string[] = [];
    paint(partingOf([level, upright]), [], vec3(0, -500, 500), {
      face: (face, corners) =>
        order.push(
          `${face === level ? 'level' : 'upright'} ${Math.round(Math.max(...corners.map(({ y, z }) => (face === level ? y : z))))}`,
        ),
      line: () => undefined,
    });
    // What hangs under the level one, then that, then what stands on it.
    expect(order).toEqual(['upright 0', 'level 100', 'upright 100']);
  });

  it('paints nothing of nothing', () => {
    expect(partingOf([])).toBeNull();
  });
});

/** Within half a pixel of the way between two places. */
function nearTo([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): boolean {
  const way = Math.hypot(bx - ax, by - ay) || 1;
  const share = Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / way ** 2));
  return Math.hypot(x - ax - share * (bx - ax), y - ay - share * (by - ay)) < 0.5;
}
