import { areaPathsD, differenceD, FillRule, intersectD, type PathD } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { radians } from '$lib/geometry/angle.ts';
import { edgesOf } from '$lib/geometry/edge.ts';
import { edgeGap } from '$lib/geometry/edgeGap.ts';
import { momentsOf } from '$lib/geometry/moments.ts';
import type { Printed } from '$lib/stand/body.ts';
import { widthOf } from '$lib/stand/widths.ts';
import { numberFrom } from '../../numbers.ts';
import { orZero } from '../stands.ts';
import {
  anyPlace,
  bodyOf,
  pathsOf,
  printer,
  refusalOf,
  ring,
  shop,
  soundBody,
  thick,
  thin,
  type Case,
  wordsOf,
} from './buildRequests.ts';
import { runs } from '../../runs.ts';

const skinned = (settings: Case['settings'] = {}, more: Omit<Case, 'settings'> = {}): Case => ({
  ...more,
  settings: { build: 'skinned', ...settings },
});
const bed = (x: number, y: number, z: number): Case['shop'] => ({ ...shop, printer: { ...printer, bed: { x, y, z } } });

/** Volume of a printed body from its levels alone. */
const volumeOf = ({ levels }: Printed): number =>
  levels.reduce((sum, { height, contours }) => {
    const [outside, ...holes] = contours;
    return outside ? sum + height * momentsOf(outside, holes).area : sum;
  }, 0);

const areaIn = (paths: PathD[]): number => Math.abs(areaPathsD(paths));

describe('a printed core between cheeks', () => {
  /** Common practice, no source: 1/8-inch sides and 0.6 mm veneer on a printed core. */
  it('with 3.175 mm sides and 0.6 mm veneer closes to the finished width within 0.001 mm', () => {
    const body = bodyOf(skinned({ cheeks: { stock: thin.name, count: 1 }, veneer: 0.6 }));
    const core = body.printed[0]?.size.z ?? NaN;
    expect(Math.abs(core + 2 * 3.175 + 2 * 0.6 - 165)).toBeLessThan(0.001);
    expect(core).toBeCloseTo(157.45, 9);
    expect(body.width).toBeCloseTo(165, 9);
  });

  it('closes for any thicknesses, glue and veneer', () => {
    fc.assert(
      fc.property(
        anyPlace,
        numberFrom(0.5, 12),
        fc.integer({ min: 1, max: 3 }),
        orZero(numberFrom(0.01, 0.4)),
        orZero(numberFrom(0.3, 2)),
        (place, thickness, count, glue, veneer) => {
          const body = soundBody({
            ...place,
            board: { name: 'side', thickness, density: 700 },
            shop: bed(2000, 2000, 2000),
            settings: { build: 'skinned', cheeks: { stock: null, count }, glue, veneer, rods: null },
          });
          expect(body.width).toBeCloseTo(place.speaker.width, 9);
          expect(widthOf(body.widths)).toBe(body.width);
          const core = body.printed.reduce((sum, { size }) => sum + size.z, 0);
          expect(core + 2 * count * (thickness + glue) + 2 * veneer).toBeCloseTo(place.speaker.width, 9);
          expect(body.pieces).toMatchObject([{ name: 'cheek', quantity: 2 * count, thickness }]);
          expect(body.joints.reduce((sum, joint) => sum + joint.count, 0)).toBe(2 * count);
        },
      ),
    );
  });

  it('carries rods, chambers, pockets and the cable slot, each with its walls', () => {
    const body = bodyOf(
      skinned({
        cheeks: { stock: thin.name, count: 1 },
        relief: { web: 5, corner: 2 },
        pockets: { count: 3, diameter: 10, depth: 20 },
        cable: { width: 10, depth: 5, fromRear: 100 },
      }),
    );
    const [core] = body.printed;
    if (!core || body.printed.length !== 1) throw new Error('the core is one body');
    expect(core.levels.map(({ height }) => height)).toEqual([core.size.z - 20, 20]);
    const [below, above] = core.levels;
    if (!below || !above) throw new Error('pockets make two levels');
    const pockets = above.contours.filter((contour) => !below.contours.includes(contour));
    expect(pockets).toHaveLength(3);
    expect(pockets.every((pocket) => pocket.kind === 'circle' && pocket.radius === 5)).toBe(true);
    expect(pathsOf(below.contours).length).toBeGreaterThan(1);
    above.contours.forEach((a, i) =>
      above.contours.slice(i + 1).forEach((b) => {
        const gap = Math.min(...edgesOf(a).flatMap((e) => edgesOf(b).map((f) => edgeGap(e, f))));
        expect(gap).toBeGreaterThan(2 - 1e-9);
      }),
    );
    expect(volumeOf(core)).toBeCloseTo(core.volume, 5);
    expect(core.mass).toBeCloseTo((core.volume / 1e9) * 1240, 12);
    expect(body.figures.printedVolume).toBe(core.volume);
    expect(wordsOf(body)).toContain('ballast');
    // Cheeks have rods and slot, but neither chambers nor pockets.
    expect(body.pieces[0]?.inside.every(({ kind }) => kind === 'circle')).toBe(true);
    expect(body.pieces[0]?.inside).toHaveLength(2);
  });

  it('is as heavy as its fill makes it', () => {
    const solid = bodyOf(skinned());
    const light = bodyOf(skinned({}, { shop: { ...shop, printer: { ...printer, fill: 0.25 } } }));
    const plastic = (solid.figures.printedVolume / 1e9) * 1240;
    expect(solid.mass - light.mass).toBeCloseTo(0.75 * plastic, 12);
  });
});

describe('a core larger than the bed', () => {
  const long: Case = skinned({}, { shop: bed(150, 120, 250) });

  it('is split by a dovetail into halves that fit, and that together are the core less the joint’s play', () => {
    const whole = bodyOf(skinned());
    const body = bodyOf(long);
    const { printed } = body;
    expect(printed.map(({ name }) => name)).toEqual(['core-front', 'core-rear']);
    for (const { size } of printed) {
      expect(
        Math.min(Math.max(size.x, size.y) - 150, 0) + Math.min(Math.min(size.x, size.y) - 120, 0),
      ).toBeLessThanOrEqual(0);
      expect(Math.max(size.x, size.y)).toBeLessThanOrEqual(150);
      expect(Math.min(size.x, size.y)).toBeLessThanOrEqual(120);
    }
    const [front, rear] = printed;
    const play = whole.figures.printedVolume - (front?.volume ?? 0) - (rear?.volume ?? 0);
    expect(play).toBeGreaterThan(0);
    // The play is 0.2 mm wide along the tail's three faces, each under 40 mm long.
    expect(play).toBeLessThan(0.2 * 120 * (front?.size.z ?? NaN) * 1.2);
    expect(wordsOf(body)).toContain('0.2 mm of clearance');
  });

  it('its tail lies in its socket with the clearance all round, and neither meets a hole', () => {
    let split = 0;
    fc.assert(
      fc.property(anyPlace, numberFrom(0.05, 0.4), fc.boolean(), (place, clearance, relieved) => {
        const made: Case = {
          ...place,
          settings: { build: 'skinned', relief: relieved ? { web: 4, corner: 2 } : null },
          shop: { ...shop, printer: { ...printer, clearance, bed: { x: 0.7 * place.speaker.depth, y: 200, z: 300 } } },
        };
        const body = soundBody(made);
        const [front, rear] = body.printed;
        if (!front || !rear) return;
        split++;
        expect([front.name, rear.name]).toEqual(['core-front', 'core-rear']);
        const whole = soundBody({ ...made, settings: { ...made.settings, relief: null }, shop: bed(2000, 2000, 2000) });
        const outline = ring(whole.pieces[0]?.outside ?? { kind: 'circle', centre: [0, 0], radius: NaN }, 90);
        const left = Math.min(...outline.map(({ x }) => x));
        const right = Math.max(...outline.map(({ x }) => x));
        const low = Math.min(...outline.map(({ y }) => y));
        // Back into the profile's axes: the front half keeps its left end, the rear half its right one.
        const at = (body: Printed, side: 'left' | 'right'): PathD => {
          const outside = body.levels[0]?.contours[0];
          if (!outside) throw new Error('a body has an outside');
          const points = ring(outside, 90);
          const shift = side === 'left' ? left : right - Math.max(...points.map(({ x }) => x));
          return points.map(({ x, y }) => ({ x: x + shift, y: y + low }));
        };
        const [a, b] = [at(front, 'left'), at(rear, 'right')];
        expect(areaIn(intersectD([a], [b], FillRule.NonZero, 6))).toBeLessThan(1e-3);
        const gap = areaIn(differenceD([outline], [a, b], FillRule.NonZero, 6));
        expect(gap).toBeGreaterThan(0);
        for (const { levels } of body.printed) {
          for (const { contours } of levels) {
            const [outside, ...holes] = contours;
            if (!outside) throw new Error('a body has an outside');
            for (const hole of holes) {
              const near = Math.min(...edgesOf(hole).flatMap((e) => edgesOf(outside).map((f) => edgeGap(e, f))));
              expect(near).toBeGreaterThan(2 - 1e-6);
            }
          }
        }
      }),
      { numRuns: runs(60) },
    );
    expect(split).toBeGreaterThan(runs(60) / 6);
  });

  it('is split across its width where the bed is low, keyed by the rods', () => {
    const body = bodyOf(skinned({ cheeks: { stock: thin.name, count: 1 } }, { shop: bed(220, 220, 100) }));
    expect(body.printed).toMatchObject([{ name: 'core-half', quantity: 2 }]);
    expect(2 * (body.printed[0]?.size.z ?? NaN)).toBeCloseTo(165 - 2 * 3.175, 9);
    const pocketed = bodyOf(skinned({ pockets: { count: 1, diameter: 8, depth: 10 } }, { shop: bed(220, 220, 100) }));
    expect(pocketed.printed.map(({ name, quantity }) => [name, quantity])).toEqual([
      ['core-half', 1],
      ['core-half-pockets', 1],
    ]);
  });

  it('has no answer where not even halves fit, at once', () => {
    expect(refusalOf(skinned({}, { shop: bed(60, 60, 250) }))).toEqual({
      kind: 'no-answer',
      lines: [
        '/stand/build: expected a printer’s bed that takes the core or keyed halves of it, got 60 × 60 × 250 mm for a core of 201.9 × 55.6 × 158.9 mm: use a larger bed, thicker cheeks or another build',
      ],
    });
    expect(refusalOf(skinned({}, { shop: bed(220, 220, 60) })).lines.join()).toContain('got 220 × 220 × 60 mm');
    expect(refusalOf(skinned({ rods: null }, { shop: bed(220, 220, 100) })).lines.join()).toContain(
      '/stand/rods: expected rods to key the halves',
    );
  });
});

describe('what a skinned stand has no answer for', () => {
  it.each<[Case, string]>([
    [
      skinned({ cheeks: { stock: thick.name, count: 7 } }),
      '/stand/width: expected a width that leaves 2 mm for the core, got 165 mm less 14 cheeks of 11.8 mm',
    ],
    [
      skinned({ veneer: 80, veneerFaces: { top: false, front: false, rear: false, sides: true, base: false } }),
      '/stand/width: expected a width that leaves 2 mm',
    ],
    [
      skinned({ pockets: { count: 1, diameter: 8, depth: 158.5 } }),
      '/stand/pockets/depth: expected pockets of at most 157.9 mm in a core of 158.9 mm, got 158.5 mm',
    ],
    [
      skinned({ pockets: { count: 12, diameter: 30, depth: 5 } }),
      '/stand/pockets: expected room for 12 pockets of 30 mm with walls of 2 mm',
    ],
    [
      skinned({ rods: { diameter: 60, count: 2, clearance: 0.1, edge: 2 } }),
      '/stand/rods: expected room for 2 rods of 60 mm',
    ],
  ])('%#', (one, line) => {
    const { kind, lines } = refusalOf(one);
    expect(kind).toBe('no-answer');
    expect(lines.join()).toContain(line);
  });

  it('a stand too thin is unsound, as for every build', () => {
    expect(refusalOf(skinned({}, { stance: { lift: 1, tilt: radians(10) } })).kind).toBe('unsound');
  });
});

it('glue between cheeks and core holds where there is core; outer cheeks hold all over', () => {
  const settings = { build: 'skinned', relief: { web: 8, corner: 3 }, cheeks: { stock: thin.name, count: 2 } } as const;
  const body = bodyOf({ settings });
  const [outside, ...holes] = body.printed[0]?.levels[0]?.contours ?? [];
  if (!outside) throw new Error('a core has an outline');
  expect(holes.length).toBeGreaterThan(2);
  expect(body.joints).toMatchObject([{ count: 2 }, { count: 2 }]);
  expect(body.joints[0]?.area).toBeCloseTo(momentsOf(outside, holes).area, 9);
  expect(body.joints[1]?.area).toBeGreaterThan((body.joints[0]?.area ?? 0) + 100);
});
