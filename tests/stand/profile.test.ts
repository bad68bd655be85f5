import { EndType, FillRule, inflatePathsD, intersectD, JoinType, xorD, type PathD } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { radians } from '$lib/geometry/angle.ts';
import type { Point } from '$lib/geometry/point.ts';
import { profileOf } from '$lib/stand/profile.ts';
import { anyCase, edgesOf, everyNumber, fanArea, mustBuild, plain, soundProfile, tilts, type Case } from './stands.ts';
import { runs } from '../runs.ts';
import { faultLine } from '$lib/project/fault.ts';
import { plainText } from '$lib/project/sentence.ts';

/** Rounding of coordinates that reach 1e4 mm (a tall stand with square ends), a few operations deep. */
const DUST = 1e-8;

const turn = (a: Point, b: Point, c: Point): number => (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);

/** (s, w) of a point: along the slope from the cabinet's front bottom edge, and square to it. */
function onSlope([u, z]: Point, { depth, tilt, lift }: Case): Point {
  const drop = z - (lift + Math.max(0, depth * Math.sin(tilt)));
  return [u * Math.cos(tilt) - drop * Math.sin(tilt), u * Math.sin(tilt) + drop * Math.cos(tilt)];
}

/** Whether the stop's outer face and the end of the stand are one straight edge. */
function isFlush({ settings, tilt }: Case): boolean {
  if (!settings.stop) return false;
  const margin = tilt >= 0 ? settings.rearMargin : settings.frontMargin;
  const lean = (settings.stop.height + settings.pad) * Math.abs(Math.sin(tilt));
  return margin - settings.stop.thickness <= 1e-9 && (settings.ends === 'square' || lean <= 1e-9);
}

describe('the outline', () => {
  it('of a plain wedge is the cabinet’s bottom, its plumb ends and the desk', () => {
    const tilt = radians(10);
    const { outline, slice } = mustBuild(plain, 205, tilt, 12);
    const run = 205 * Math.cos(tilt);
    const expected = [
      [0, 0],
      [run, 0],
      [run, 12],
      [0, 12 + 205 * Math.sin(tilt)],
    ];
    outline.forEach(([u, z], i) => {
      expect(u).toBeCloseTo(expected[i]?.[0] ?? NaN, 12);
      expect(z).toBeCloseTo(expected[i]?.[1] ?? NaN, 12);
    });
    expect(outline).toHaveLength(4);
    expect(slice).toEqual(outline);
  });

  it('gives the low end the lift itself, untouched by rounding', () => {
    fc.assert(
      fc.property(tilts, fc.double({ min: 3, max: 1500, noNaN: true }), (tilt, lift) => {
        const { frontHeight, rearHeight } = mustBuild(plain, 205, tilt, lift);
        expect(Math.min(frontHeight, rearHeight)).toBe(lift);
      }),
    );
  });

  it('is simple and counter-clockwise, and convex without a stop', () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        const { outline } = soundProfile(one);
        expect(fanArea(outline)).toBeGreaterThan(0);
        const edges = edgesOf(outline);
        edges.forEach(([a, b], i) => {
          expect(Math.hypot(b[0] - a[0], b[1] - a[1])).toBeGreaterThan(0);
          edges.slice(i + 2).forEach(([c, d], j) => {
            if (i === 0 && i + 2 + j === edges.length - 1) return;
            const apart = turn(a, b, c) * turn(a, b, d) > 0 || turn(c, d, a) * turn(c, d, b) > 0;
            expect(apart).toBe(true);
          });
        });
        // The stop's inner face, and its outer one unless it goes on in the end of the stand.
        const inwards = one.settings.stop === null ? 0 : isFlush(one) ? 1 : 2;
        const turns = outline.map((point, i) =>
          turn(outline.at(i - 1) ?? point, point, outline[(i + 1) % outline.length] ?? point),
        );
        expect(turns.filter((one) => one < 0)).toHaveLength(inwards);
      }),
    );
  });

  it('has its top a pad under the cabinet’s bottom, over the margins and the stop', () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        const { settings, depth, tilt } = one;
        const points = soundProfile(one).outline.map((point) => onSlope(point, one));
        const lip = settings.stop?.thickness ?? 0;
        const front = -Math.max(settings.frontMargin, tilt < 0 ? lip : 0);
        const rear = depth + Math.max(settings.rearMargin, tilt >= 0 ? lip : 0);
        const inTop = points.filter(([, w]) => Math.abs(w + settings.pad) < DUST).map(([s]) => s);
        const flush = isFlush(one);
        const [low, high] = [Math.min(...inTop), Math.max(...inTop)];
        // Where a stop stands in one line with the end, the top ends at the stop's inner face.
        expect(low).toBeCloseTo(flush && tilt < 0 ? 0 : front, 7);
        expect(high).toBeCloseTo(flush && tilt >= 0 ? depth : rear, 7);
      }),
    );
  });

  it('has the area of its trapezium and of its stop', () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        const { settings, depth, tilt } = one;
        const { outline, frontHeight, rearHeight } = soundProfile(one);
        const lip = settings.stop?.thickness ?? 0;
        const length =
          depth +
          Math.max(settings.frontMargin, tilt < 0 ? lip : 0) +
          Math.max(settings.rearMargin, tilt >= 0 ? lip : 0);
        const mean = (frontHeight + rearHeight) / 2;
        // Plumb ends: mean height × run. Square ends: mean length of the ends × length along the slope.
        const body = settings.ends === 'plumb' ? mean * length * Math.cos(tilt) : (mean / Math.cos(tilt)) * length;
        const stop = settings.stop ? lip * (settings.stop.height + settings.pad) : 0;
        expect(fanArea(outline) / (body + stop)).toBeCloseTo(1, 10);
      }),
    );
  });

  it('mirrors when tilt, margins and ends are mirrored', () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        // A level stand's low end is its rear by agreement, so its stop does not mirror.
        fc.pre(one.tilt !== 0 || one.settings.stop === null);
        const { outline, slice } = soundProfile(one);
        const { frontMargin, rearMargin, veneerFaces: on } = one.settings;
        const veneerFaces = { ...on, front: on.rear, rear: on.front };
        const swapped = { ...one.settings, frontMargin: rearMargin, rearMargin: frontMargin, veneerFaces };
        const other = mustBuild(swapped, one.depth, -one.tilt, one.lift);
        const run = one.depth * Math.cos(one.tilt);
        const mirrored = (points: readonly Point[]) => {
          const [a = [0, 0], b = [0, 0], ...rest] = points.map(([u, z]): Point => [run - u, z]);
          return [b, a, ...rest.reverse()];
        };
        mirrored(outline).forEach(([u, z], i) => {
          expect(Math.abs(u - (other.outline[i]?.[0] ?? NaN))).toBeLessThan(DUST);
          expect(Math.abs(z - (other.outline[i]?.[1] ?? NaN))).toBeLessThan(DUST);
        });
        mirrored(slice).forEach(([u, z], i) => {
          expect(Math.abs(u - (other.slice[i]?.[0] ?? NaN))).toBeLessThan(DUST);
          expect(Math.abs(z - (other.slice[i]?.[1] ?? NaN))).toBeLessThan(DUST);
        });
      }),
    );
  });

  it('has a stop that touches the cabinet’s low edge and rises square to the slope', () => {
    const tilt = radians(-15);
    const settings = { ...plain, frontMargin: 20, pad: 2, stop: { height: 10, thickness: 6 } };
    const one = { settings, depth: 205, tilt, lift: 20 };
    const points = mustBuild(settings, 205, tilt, 20).outline.map((point) => onSlope(point, one));
    const expected = [
      [205, -2],
      [0, -2],
      [0, 10],
      [-6, 10],
      [-6, -2],
      [-20, -2],
    ];
    points.slice(2).forEach(([s, w], i) => {
      expect(s).toBeCloseTo(expected[i]?.[0] ?? NaN, 10);
      expect(w).toBeCloseTo(expected[i]?.[1] ?? NaN, 10);
    });
  });

  it('stands on its feet and shifts the feet of square ends', () => {
    const tilt = radians(20);
    const { outline } = mustBuild({ ...plain, ends: 'square', feet: 5 }, 205, tilt, 30);
    const [a = [0, 0], b = [0, 0], c = [0, 0], d = [0, 0]] = outline;
    expect([a[1], b[1]]).toEqual([5, 5]);
    expect(d[0] - a[0]).toBeCloseTo((d[1] - 5) * Math.tan(tilt), 10);
    expect(c[0] - b[0]).toBeCloseTo((c[1] - 5) * Math.tan(tilt), 10);
  });
});

const loop = (points: readonly Point[]): PathD => points.map(([x, y]) => ({ x, y }));
const backAgain = (path: PathD): Point[] => path.map(({ x, y }): Point => [x, y]);

describe('the slice', () => {
  it('lies the veneer’s thickness inside the outline, as another library’s offset has it', () => {
    const DIGITS = 6;
    fc.assert(
      fc.property(anyCase, (drawn) => {
        fc.pre(drawn.settings.veneer > 0);
        const one = { ...drawn, settings: { ...drawn.settings, veneerFaces: plain.veneerFaces } };
        const { outline, slice } = soundProfile(one);
        const [front = [0, 0], rear = [0, 0], ...top] = outline;
        // The base is not veneered: let the ends run on downwards, offset all, cut at the base again.
        const below = 10 * one.settings.veneer;
        const shift = one.settings.ends === 'square' ? below * Math.tan(one.tilt) : 0;
        const base = one.settings.feet;
        const deep: Point[] = [[front[0] - shift, base - below], [rear[0] - shift, base - below], ...top];
        const inner = inflatePathsD([loop(deep)], -one.settings.veneer, JoinType.Miter, EndType.Polygon, 10, DIGITS);
        const over = loop([
          [-1e4, base],
          [1e4, base],
          [1e4, 1e4],
          [-1e4, 1e4],
        ]);
        const oracle = intersectD(inner, [over], FillRule.NonZero, DIGITS);
        const differing = xorD(oracle, [loop(slice)], FillRule.NonZero, DIGITS);
        const difference = differing.reduce((sum, path) => sum + Math.abs(fanArea(backAgain(path))), 0);
        const edge = edgesOf(outline).reduce((sum, [a, b]) => sum + Math.hypot(b[0] - a[0], b[1] - a[1]), 0);
        // The oracle rounds its coordinates to 1e-6 mm, at each of three steps.
        expect(difference).toBeLessThan(edge * 3e-6);
      }),
      { numRuns: runs(300) },
    );
  });

  it('lies under the veneer of the stated faces, and flush with the others', () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        const { veneer, veneerFaces: on } = one.settings;
        const { outline, core, slice } = soundProfile({ ...one, settings: { ...one.settings, stop: null } });
        expect(core).toEqual(slice);
        const faces = [on.base, on.rear, on.top, on.front];
        edgesOf(outline).forEach(([from, to], i) => {
          const heading = Math.atan2(to[1] - from[1], to[0] - from[0]);
          for (const [u, z] of [slice[i] ?? [0, 0], slice[(i + 1) % slice.length] ?? [0, 0]]) {
            const inside = (z - from[1]) * Math.cos(heading) - (u - from[0]) * Math.sin(heading);
            // Rounding of lengths of up to 1e3 mm.
            expect(inside).toBeCloseTo(faces[i] ? veneer : 0, 8);
          }
        });
      }),
    );
  });

  it('keeps its ends at least the minimum high', () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        const { outline, core, frontHeight, rearHeight } = soundProfile(one);
        const { minimumEdge, feet } = one.settings;
        expect(Math.min(frontHeight, rearHeight)).toBeGreaterThan(minimumEdge - DUST);
        expect((core[2]?.[1] ?? NaN) - feet).toBeGreaterThan(minimumEdge - DUST);
        expect((core[3]?.[1] ?? NaN) - feet).toBeGreaterThan(minimumEdge - DUST);
        expect(outline.every(([, z]) => z >= feet)).toBe(true);
      }),
    );
  });
});

const refusalOf = (settings: typeof plain, depth: number, tilt: number, lift: number) => {
  const outcome = profileOf(settings, depth, tilt, lift);
  const [fault] = outcome.ok ? [] : outcome.faults;
  return outcome.ok ? null : { kind: outcome.kind, ...fault, message: plainText(fault?.message ?? '') };
};

describe('what is refused', () => {
  it('is a lift under the thin end', () => {
    expect(refusalOf(plain, 205, radians(10), 1.2)).toEqual({
      kind: 'unsound',
      pointer: '/stand/lift',
      message: 'expected a thin end of at least 3 mm, got 1.2 mm: raise the lift by 1.8 mm',
    });
    expect(refusalOf({ ...plain, feet: 8, pad: 2 }, 205, 0, 12)).toEqual({
      kind: 'unsound',
      pointer: '/stand/lift',
      message: 'expected a thin end of at least 3 mm, got 2 mm: raise the lift by 1 mm',
    });
  });

  it('is a margin or a stop that runs the slope out', () => {
    // 60 · sin 10° = 10.419 mm off the lift of 12; 1.419 mm short; 1.419 / sin 10° = 8.17 mm too long.
    expect(refusalOf({ ...plain, rearMargin: 60 }, 205, radians(10), 12)).toEqual({
      kind: 'unsound',
      pointer: '/stand/rearMargin',
      message:
        'expected a thin end of at least 3 mm, got 1.5 mm: let the stand end 8.2 mm sooner or raise the lift by 1.5 mm',
    });
    expect(refusalOf({ ...plain, frontMargin: 60 }, 205, radians(-10), 12)?.pointer).toBe('/stand/frontMargin');
    const stop = { height: 10, thickness: 60 };
    expect(refusalOf({ ...plain, stop }, 205, radians(10), 12)?.pointer).toBe('/stand/stop/thickness');
    expect(refusalOf({ ...plain, frontMargin: 60 }, 205, radians(10), 12)).toBeNull();
  });

  it('is a slice too thin under its veneer', () => {
    expect(refusalOf({ ...plain, veneer: 1.5 }, 205, 0, 4)).toEqual({
      kind: 'unsound',
      pointer: '/stand/lift',
      message: 'expected a thin end of at least 3 mm under the veneer, got 2.5 mm: raise the lift by 0.5 mm',
    });
  });

  it('is a veneer that swallows the profile', () => {
    expect(refusalOf({ ...plain, veneer: 5 }, 205, 0, 4)).toEqual({
      kind: 'no-answer',
      pointer: '/stand/veneer',
      message:
        'expected a veneer under 4 mm, for wood to be left in the profile, got 5 mm: use thinner veneer, a thicker stop or more lift',
    });
    const stop = { height: 10, thickness: 3 };
    expect(refusalOf({ ...plain, stop, veneer: 1.5 }, 205, radians(10), 12)).toMatchObject({
      kind: 'no-answer',
      pointer: '/stand/veneer',
      message: expect.stringContaining('expected a veneer under 1.5 mm'),
    });
  });

  it('can be cured as the message says', () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        const { settings, depth, tilt, lift } = one;
        const refusal = refusalOf(settings, depth, tilt, lift);
        fc.pre(refusal?.kind === 'unsound');
        const missing = Number(/raise the lift by ([\d.]+) mm/.exec(refusal.message)?.[1]);
        const raised = refusalOf(settings, depth, tilt, lift + missing);
        // Cured, or cured on the outside and next to be cured under the veneer.
        if (raised?.kind === 'unsound') expect(raised.message).toContain('under the veneer');
        expect(refusal.message).not.toContain(raised?.message ?? 'cured');
        const barely = refusalOf(settings, depth, tilt, lift + missing - 0.11);
        expect(barely).not.toBeNull();
      }),
    );
  });
});

it('never gives a number that is none', () => {
  fc.assert(
    fc.property(anyCase, ({ settings, depth, tilt, lift }) => {
      const outcome = profileOf(settings, depth, tilt, lift);
      if (!outcome.ok) {
        expect(outcome.faults.map(faultLine).join()).not.toMatch(/NaN|Infinity|undefined/);
        return;
      }
      const { outline, slice, core, frontHeight, rearHeight } = outcome.value;
      expect([...everyNumber([...outline, ...slice, ...core]), frontHeight, rearHeight].every(Number.isFinite)).toBe(
        true,
      );
    }),
    { numRuns: runs(1000) },
  );
});
