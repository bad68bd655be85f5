import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inStand, isometric, isometricOf } from '$lib/drawing/isometric.ts';
import { isoView } from '$lib/drawing/isoView.ts';
import { partsInSight } from '$lib/drawing/prismHides.ts';
import { seenFaces } from '$lib/drawing/prismSeen.ts';
import type { Item, Outline, View } from '$lib/drawing/view.ts';
import { signedArea } from '$lib/geometry/area.ts';
import { polygonPath } from '$lib/geometry/contour.ts';
import { isInside } from '$lib/geometry/inside.ts';
import { along, cross, distance, dot, length, vec3, type Point, type Vec3 } from '$lib/geometry/point.ts';
import { solve } from '$lib/solution/solve.ts';
import { sideNames } from '$lib/project/project.ts';
import { faultLine } from '$lib/project/fault.ts';
import { numberFrom } from '../numbers.ts';
import { firstLayout, project } from '../projects.ts';
import { anyCase } from '../stand/stands.ts';
import { profileOf } from '$lib/stand/profile.ts';
import { runs } from '../runs.ts';

const outlines = (view: View): Outline[] => view.items.filter((item): item is Outline => item.kind === 'outline');
const itemsOf = (view: View, start: string): Item[] => view.items.filter(({ id }) => id.startsWith(start));

function viewOf(changes: Readonly<Record<string, unknown>> = {}, side: 'left' | 'right' = 'right'): View {
  const of = project(changes);
  const outcome = solve(of, firstLayout(of));
  if (!outcome.ok) throw new Error(outcome.faults.map(faultLine).join('\n'));
  return isoView(of.speaker, outcome.value, side);
}

describe('isometric', () => {
  const axes = [vec3(1, 0, 0), vec3(0, 1, 0), vec3(0, 0, 1)];

  it('draws a length along each axis √(2/3) as long, the three 120° apart (ISO 5456-3)', () => {
    const drawn = axes.map(isometric.flat);
    for (const [x, y] of drawn) expect(Math.hypot(x, y)).toBeCloseTo(Math.sqrt(2 / 3), 14);
    const angles = drawn.map(([x, y]) => (Math.atan2(y, x) * 180) / Math.PI);
    // Away to the upper right and up are 30° and 90°; to the right is 30° below level.
    [-30, 30, 90].forEach((angle, index) => expect(angles[index]).toBeCloseTo(angle, 12));
  });

  it('keeps the length of what lies square to the eye, and loses what points at it', () => {
    const { flat, eye } = isometric;
    expect(length(eye)).toBeCloseTo(1, 15);
    expect(Math.hypot(...flat(eye))).toBeCloseTo(0, 15);
    const place = fc.tuple(...[0, 1, 2].map(() => numberFrom(-500, 500))).map(([x = 0, y = 0, z = 0]) => vec3(x, y, z));
    fc.assert(
      fc.property(place, (v) => {
        const [x, y] = flat(v);
        expect(Math.hypot(x, y)).toBeCloseTo(length(cross(v, eye)), 9);
      }),
    );
  });

  it('turns with the stand: its own axes are drawn alike whatever its toe', () => {
    const of = project();
    const outcome = solve(of, firstLayout(of));
    if (!outcome.ok) throw new Error('The demo has a plan.');
    for (const side of sideNames) {
      const placed = outcome.value.sides[side];
      const { flat, eye } = isometricOf(side, placed);
      const up = along(placed.mark, vec3(0, 0, 1), 100);
      expect(flat(up)[1] - flat(placed.mark)[1]).toBeCloseTo(100 * Math.sqrt(2 / 3), 9);
      expect(flat(along(up, eye, 50))[0]).toBeCloseTo(flat(up)[0], 9);
      // The axis of a toed cabinet lies in the stand's own plane from front to rear: it has no sideways part there.
      const ahead = inStand(side, placed, along(placed.mark, placed.axis, 100));
      expect(ahead.x).toBeCloseTo(0, 9);
      expect(ahead.y).toBeLessThan(0);
    }
  });
});

/** Stands of every kind a project may hold, with their widths. */
const stands = fc
  .tuple(
    anyCase
      .map(({ settings, depth, tilt, lift }) => profileOf(settings, depth, tilt, lift))
      .filter((outcome) => outcome.ok),
    numberFrom(10, 400),
  )
  .map(([outcome, width]) => ({ profile: outcome.value.outline, width }));

const areaOf = (loop: readonly Vec3[]): number => Math.abs(signedArea(polygonPath(loop.map(isometric.flat))));
const covers = (loop: readonly Vec3[], point: Point): boolean => isInside(point, polygonPath(loop.map(isometric.flat)));

/** All faces of the prism, seen or not. */
function allFaces(profile: readonly Point[], width: number): Vec3[][] {
  const end = (x: number): Vec3[] => profile.map(([y, z]) => vec3(x, y, z));
  const sides = profile.map(([y, z], index) => {
    const [nextY, nextZ] = profile[(index + 1) % profile.length] ?? [y, z];
    const half = width / 2;
    return [vec3(half, y, z), vec3(half, nextY, nextZ), vec3(-half, nextY, nextZ), vec3(-half, y, z)];
  });
  return [end(width / 2), end(-width / 2), ...sides];
}

const nearEnd = (profile: readonly Point[], width: number): Vec3[] => profile.map(([y, z]) => vec3(width / 2, y, z));

describe('the faces in sight', () => {
  it('cover the silhouette once: no place of it is bare, none is drawn twice', () => {
    fc.assert(
      fc.property(
        stands,
        fc.array(fc.tuple(numberFrom(0, 1), numberFrom(0, 1)), { minLength: 40, maxLength: 40 }),
        ({ profile, width }, places) => {
          const faces = allFaces(profile, width);
          const seen = [nearEnd(profile, width), ...seenFaces(profile, width).map(({ loop }) => loop)];
          const flat = faces.flat().map(isometric.flat);
          const [xs, ys] = [flat.map(([x]) => x), flat.map(([, y]) => y)];
          const at = (from: number[], share: number): number =>
            Math.min(...from) + share * (Math.max(...from) - Math.min(...from));
          for (const [a, b] of places) {
            const point: Point = [at(xs, a), at(ys, b)];
            const within = faces.some((face) => covers(face, point));
            expect(seen.filter((loop) => covers(loop, point)).length).toBe(within ? 1 : 0);
          }
        },
      ),
      { numRuns: runs(300) },
    );
  });

  it('of a plain wedge are those that look at the eye, whole', () => {
    // 200 mm long, 60 mm high in front, 20 mm behind, 100 mm wide.
    const wedge: readonly Point[] = [[0, 0], [200, 0], [200, 20], [0, 60]]; // prettier-ignore
    const seen = seenFaces(wedge, 100);
    // Base and rear look away; top and front do not.
    expect(seen.map(({ edge }) => edge)).toEqual([2, 3]);
    const whole = allFaces(wedge, 100);
    for (const { edge, loop } of seen) expect(areaOf(loop)).toBeCloseTo(areaOf(whole[edge + 2] ?? []), 9);
    const [front] = seen.filter(({ edge }) => edge === 3);
    // An upright face square to an axis is drawn with √3/3 of its area.
    expect(areaOf(front?.loop ?? [])).toBeCloseTo((100 * 60) / Math.sqrt(3), 9);
  });

  it('of a top steeper than the eye’s way are not drawn', () => {
    // The top falls away by more than 45°: rises 100 over 90.
    const steep: readonly Point[] = [[0, 0], [90, 0], [90, 5], [0, 105]]; // prettier-ignore
    expect(seenFaces(steep, 50).map(({ edge }) => edge)).toEqual([3]);
  });

  it('lose to a stop at the front what it hides, to the millimetre', () => {
    // A level block 100 deep and 20 high with a stop 10 thick and 30 high over it, at the front; 60 wide.
    const block: readonly Point[] = [[0, 0], [110, 0], [110, 20], [10, 20], [10, 50], [0, 50]]; // prettier-ignore
    const [top] = seenFaces(block, 60).filter(({ edge }) => edge === 2);
    // The eye's way rises as fast as it runs: the stop hides a strip 30 deep, but for the corner that looks past its end.
    const hidden = (60 - 30) * 30 + (30 * 30) / 2;
    const level = (mm2: number): number => mm2 / Math.sqrt(3);
    expect(areaOf(top?.loop ?? [])).toBeCloseTo(level(100 * 60 - hidden), 9);
    const lines = top?.lineAt(-15) ?? [];
    expect(lines).toHaveLength(1);
    // At 45 from the near end the stop still hides 30 of the 100; at 15 only 15 of them.
    expect(lines[0] && distance(...lines[0])).toBeCloseTo(70, 9);
    const nearer = top?.lineAt(15) ?? [];
    expect(nearer[0] && distance(...nearer[0])).toBeCloseTo(85, 9);
  });

  it('give lines that lie on them', () => {
    fc.assert(
      fc.property(stands, numberFrom(-0.49, 0.49), ({ profile, width }, share) => {
        for (const { loop, lineAt } of seenFaces(profile, width)) {
          for (const [from, to] of lineAt(share * width)) {
            expect(from.x).toBe(share * width);
            if (distance(from, to) < 1e-3) continue;
            const middle = isometric.flat(vec3(from.x, (from.y + to.y) / 2, (from.z + to.z) / 2));
            expect(covers(loop, middle)).toBe(true);
          }
        }
      }),
    );
  });
});

describe('what the stand leaves in sight of a line', () => {
  /** By walking the way to the eye in small steps. */
  function hiddenByWalking(profile: readonly Point[], width: number, { x, y, z }: Vec3): boolean {
    const step = 0.25;
    const outline = polygonPath(profile);
    for (let s = step; x + s < width / 2; s += step) {
      if (x + s > -width / 2 && isInside([y - s, z + s], outline)) return true;
    }
    return false;
  }

  it('is what a walk along the way to the eye finds', () => {
    const place = fc
      .tuple(numberFrom(-250, 250), numberFrom(-50, 300), numberFrom(0, 120))
      .map(([x, y, z]) => vec3(x, y, z));
    const shares = fc.array(numberFrom(0, 1), { minLength: 5, maxLength: 5 });
    const count = { seen: 0, hidden: 0 };
    fc.assert(
      fc.property(stands, place, place, shares, ({ profile, width }, from, to, places) => {
        const parts = partsInSight(profile, width, from, to).map(([start, end]) => [
          distance(from, start),
          distance(from, end),
        ]);
        const total = distance(from, to);
        for (const share of places) {
          const at = along(from, vec3(to.x - from.x, to.y - from.y, to.z - from.z), share);
          const hidden = hiddenByWalking(profile, width, at);
          // So near to an edge that the walk's steps can miss it.
          const grazing = [vec3(1, 0, 0), vec3(0, 1, 1), vec3(0, 0, 1)].some((way) =>
            [-0.5, 0.5].some((shift) => hiddenByWalking(profile, width, along(at, way, shift)) !== hidden),
          );
          if (grazing) continue;
          count[hidden ? 'hidden' : 'seen'] += 1;
          expect(parts.some(([start = NaN, end = NaN]) => share * total >= start && share * total <= end)).toBe(
            !hidden,
          );
        }
      }),
      { numRuns: runs(300), endOnFailure: true },
    );
    // Both answers were asked for.
    expect(Math.min(count.seen, count.hidden)).toBeGreaterThan(runs(300) / 10);
  });

  it('is nothing behind the body, all before it', () => {
    const block: readonly Point[] = [[0, 0], [100, 0], [100, 50], [0, 50]]; // prettier-ignore
    expect(partsInSight(block, 60, vec3(-100, 140, -60), vec3(-100, 141, -60))).toEqual([]);
    const before = [vec3(80, -40, 60), vec3(90, 0, 60)] as const;
    expect(partsInSight(block, 60, ...before)).toEqual([[before[0], before[1]]]);
  });
});

describe('an isometric view', () => {
  it('draws joints, rod holes, the front, the cabinet and its axis', () => {
    const view = viewOf();
    expect(itemsOf(view, 'joint-').length).toBeGreaterThan(20);
    expect(itemsOf(view, 'rod-hole-')).toHaveLength(2);
    expect(itemsOf(view, 'front-arrow')).toHaveLength(1);
    expect(outlines(view).filter(({ subject, pen }) => subject === 'cabinet' && pen === 'phantom')).toHaveLength(7);
    expect(itemsOf(view, 'layers-label')).toMatchObject([{ text: '54 layers of MDF 3 mm' }]);
    expect(new Set(view.items.map(({ id }) => id)).size).toBe(view.items.length);
  });

  it('keeps joints as far apart as lines must be, however thin the layers', () => {
    for (const thickness of [0.3, 0.8, 3.05, 18]) {
      const view = viewOf({ '/stock/0/thickness': thickness });
      const level = itemsOf(view, 'joint-').filter(({ id }) => id.endsWith('-3-0'));
      const places = level
        .flatMap((item) => (item.kind === 'outline' ? item.points.slice(0, 1) : []))
        .map(([x]) => x)
        .sort((a, b) => a - b);
      expect(places.length).toBeGreaterThan(4);
      // 0.7 mm at 1:5.
      places.slice(1).forEach((x, index) => expect(x - (places[index] ?? NaN)).toBeGreaterThanOrEqual(3.5 - 1e-9));
    }
  });

  it('under veneer shows no joints, and rod holes dashed', () => {
    const view = viewOf({ '/layouts/0/stand/veneer': 0.6 });
    expect(itemsOf(view, 'joint-')).toEqual([]);
    expect(itemsOf(view, 'rod-hole-')).toMatchObject([{ pen: 'hidden' }, { pen: 'hidden' }]);
  });

  it('hides the cabinet’s foot behind a stop at the front, and shows it before one at the rear', () => {
    const stop = { height: 25, thickness: 12 };
    const foot = (view: View): Item[] => itemsOf(view, 'cabinet-edge-0-1-');
    const before = viewOf({
      '/layouts/0/aim/tilt': { rule: 'as-set', degrees: -12 },
      '/layouts/0/stand/lift': 20,
      '/layouts/0/stand/stop': stop,
    });
    expect(foot(before)).toEqual([]);
    const rear = viewOf({ '/layouts/0/stand/stop': stop, '/layouts/0/stand/frontMargin': 30 });
    expect(foot(rear)).toHaveLength(1);
  });

  it('draws plumb edges of the stand √(2/3) as long as they are', () => {
    const of = project();
    const outcome = solve(of, firstLayout(of));
    if (!outcome.ok) throw new Error('The demo has a plan.');
    const [end] = itemsOf(isoView(of.speaker, outcome.value, 'right'), 'stand-end');
    const points = end?.kind === 'outline' ? end.points : [];
    const [baseFront, , , topFront] = points;
    if (!baseFront || !topFront) throw new Error('four corners');
    expect(topFront[0]).toBeCloseTo(baseFront[0], 9);
    expect(topFront[1] - baseFront[1]).toBeCloseTo(outcome.value.stand.right.frontHeight * Math.sqrt(2 / 3), 9);
    const [, base] = points;
    const depth = Math.max(...outcome.value.stand.right.profile.map(([u]) => u));
    expect(base && Math.hypot(base[0] - baseFront[0], base[1] - baseFront[1])).toBeCloseTo(depth * Math.sqrt(2 / 3), 9);
    expect(dot(isometric.eye, vec3(0, 0, 1))).toBeCloseTo(Math.sqrt(1 / 3), 12);
  });
});
