import { areaPathsD, differenceD, EndType, FillRule, inflatePathsD, JoinType, type PathsD } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { radians } from '$lib/geometry/angle.ts';
import { signedArea } from '$lib/geometry/area.ts';
import { edgesOf } from '$lib/geometry/edge.ts';
import { edgeGap } from '$lib/geometry/edgeGap.ts';
import type { Contour } from '$lib/geometry/contour.ts';
import { isInside } from '$lib/geometry/inside.ts';
import type { StandSettings } from '$lib/project/project.ts';
import { widthOf } from '$lib/stand/widths.ts';
import { plainText } from '$lib/project/sentence.ts';
import { numberFrom } from '../../numbers.ts';
import { orZero } from '../stands.ts';
import { anyPlace, board, bodyOf, pathsOf, refusalOf, ring, shop, soundBody, thick, wordsOf } from './buildRequests.ts';
import { runs } from '../../runs.ts';

/** Rounding of lengths of up to 1e3 mm. */
const DUST = 1e-8;

const gapOf = (a: Contour, b: Contour): number =>
  Math.min(...edgesOf(a).flatMap((edge) => edgesOf(b).map((other) => edgeGap(edge, other))));

const cheeks = (count: number) => ({ stock: thick.name, count });

describe('the finished width', () => {
  it('is exactly what its layers add up to, and what is asked but for half a layer', () => {
    fc.assert(
      fc.property(
        anyPlace,
        orZero(numberFrom(0.01, 0.3)),
        orZero(numberFrom(0.3, 3)),
        fc.boolean(),
        fc.integer({ min: 0, max: 2 }),
        (place, glue, veneer, sides, count) => {
          const veneerFaces = { top: true, front: true, rear: true, base: false, sides };
          const body = soundBody({
            ...place,
            settings: { glue, veneer, veneerFaces, cheeks: count > 0 ? cheeks(count) : null, rods: null },
          });
          expect(widthOf(body.widths)).toBe(body.width);
          expect(body.width + body.leftOver).toBeCloseTo(place.speaker.width, 9);
          const by = (what: string) => body.widths.find((one) => one.what === what) ?? { each: 0, count: 0 };
          expect(by('layer')).toMatchObject({ each: 3.05, count: body.layers });
          expect(by('cheek').count).toBe(2 * count);
          expect(by('veneer').count).toBe(veneer > 0 && sides ? 2 : 0);
          if (glue > 0) expect(by('glue').count).toBe(body.layers + 2 * count - 1);
          if (body.layers > 1) expect(Math.abs(body.leftOver)).toBeLessThanOrEqual((3.05 + glue) / 2 + DUST);
          expect(body.pieces.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(body.layers + 2 * count);
        },
      ),
    );
  });

  it('is filled by layers inside thicker cheeks of another stock', () => {
    const body = bodyOf({ settings: { cheeks: cheeks(2), glue: 0.05 } });
    expect(body.pieces).toMatchObject([
      { name: 'slice', stock: 'MDF 3 mm', thickness: 3.05 },
      { name: 'cheek', stock: 'ply 12 mm', thickness: 11.8, quantity: 4 },
    ]);
    // 165 = 4 · 11.8 + n · 3.05 + (n + 3) · 0.05, nearest whole n.
    expect(body.layers).toBe(Math.round((165 - 4 * 11.8 - 3 * 0.05) / 3.1));
    const area = signedArea(body.pieces[0]?.outside ?? { kind: 'circle', centre: [0, 0], radius: NaN });
    const wood = (area - 2 * Math.PI * 3.05 ** 2) * (body.layers * 3.05 * 880 + 4 * 11.8 * 680);
    expect(body.mass).toBeCloseTo(wood / 1e9, 12);
  });
});

describe('relief windows', () => {
  const webs = fc.record({ web: numberFrom(2, 14), corner: numberFrom(0, 8) });

  it('keep the web to the outside, to the rods and to each other', () => {
    let cut = 0;
    fc.assert(
      fc.property(anyPlace, webs, fc.boolean(), (place, relief, slotted) => {
        const cable = slotted ? { width: 12, depth: 5, fromRear: place.speaker.depth / 2 } : null;
        const body = soundBody({ ...place, settings: { relief, cable } });
        const [slice] = body.pieces;
        if (!slice) throw new Error('there is a slice');
        const windows = pathsOf(slice.inside);
        cut += windows.length;
        for (const [i, window] of windows.entries()) {
          expect(signedArea(window)).toBeLessThan(0);
          expect(isInside([window.vertices[0]?.x ?? 0, window.vertices[0]?.y ?? 0], slice.outside)).toBe(true);
          expect(gapOf(window, slice.outside)).toBeGreaterThan(relief.web - DUST);
          for (const other of slice.inside) {
            if (other !== window) expect(gapOf(window, other)).toBeGreaterThan(relief.web - DUST);
          }
          expect(windows.indexOf(window)).toBe(i);
        }
        if (windows.length === 0) expect(body.notes.map(plainText).join()).toContain('There are no windows');
      }),
    );
    expect(cut).toBeGreaterThan(runs(100) / 2);
  });

  it('take their area from the slice, as a polygon library has it', () => {
    fc.assert(
      fc.property(anyPlace, webs, numberFrom(0, 12), (place, relief, corner) => {
        const body = soundBody({ ...place, settings: { relief, corner } });
        const [slice] = body.pieces;
        if (!slice) throw new Error('there is a slice');
        const left = differenceD(
          [ring(slice.outside)],
          slice.inside.map((hole) => ring(hole)),
          FillRule.NonZero,
          6,
        );
        // A chord of an arc of 90° in 64 steps loses 5e-5 of its sector; the library rounds to 1e-6 mm.
        const rim = slice.inside.length * Math.PI * 12 ** 2;
        expect(Math.abs(areaPathsD(left) - body.sliceArea)).toBeLessThan(5e-4 * rim + 0.01);
        expect(body.volume).toBeCloseTo(body.sliceArea * body.layers * 3.05, 4);
      }),
      { numRuns: runs(60) },
    );
  });
});

describe('details', () => {
  it('round the corners as far as the thin end lets them, and say so', () => {
    const body = bodyOf({ settings: { corner: 30, rods: null } });
    const radius = Number(/radius of ([\d.]+) mm, not 30 mm/.exec(body.notes.map(plainText).join())?.[1]);
    // The thin end is 20 mm high; base corner 90°, top corner 80°: r·(tan 45° + tan 40°) = 20.
    expect(radius).toBe(Math.floor((20 / (1 + Math.tan(radians(40)))) * 10) / 10);
    const arcs = body.pieces[0]?.outside.vertices.filter(({ bulge }) => bulge !== 0) ?? [];
    expect(arcs).toHaveLength(4);
    expect(
      bodyOf({ settings: { corner: 4, rods: null } }).notes.filter((note) => plainText(note).includes('corner')),
    ).toEqual([]);
  });

  it('cut the cable slot through base and recess, and keep the areas', () => {
    const bare = bodyOf({ settings: { rods: null } });
    const cable = { width: 10, depth: 6, fromRear: 100 };
    expect(bodyOf({ settings: { rods: null, cable } }).sliceArea).toBeCloseTo(bare.sliceArea - 60, 8);
    const recess = { face: 'base' as const, depth: 2, border: 15 };
    const run = 205 * Math.cos(radians(10));
    expect(bodyOf({ settings: { rods: null, recess } }).sliceArea).toBeCloseTo(bare.sliceArea - 2 * (run - 30), 8);
    // The slot runs on through the recess: only what is deeper is its own.
    expect(bodyOf({ settings: { rods: null, recess, cable } }).sliceArea).toBeCloseTo(
      bare.sliceArea - 2 * (run - 30) - 4 * 10,
      8,
    );
    const top = { face: 'top' as const, depth: 2, border: 15 };
    expect(bodyOf({ settings: { rods: null, recess: top } }).sliceArea).toBeCloseTo(bare.sliceArea - 2 * (205 - 30), 8);
  });

  it('never come nearer to a rod than the rods’ edge', () => {
    fc.assert(
      fc.property(
        anyPlace,
        numberFrom(4, 30),
        numberFrom(2, 15),
        numberFrom(10, 200),
        (place, width, depth, fromRear) => {
          const body = soundBody({ ...place, settings: { cable: { width, depth, fromRear }, corner: 6 } });
          const [slice] = body.pieces;
          if (!slice) throw new Error('there is a slice');
          const gaps = slice.inside.map((hole) => gapOf(hole, slice.outside));
          expect(Math.min(...gaps)).toBeGreaterThan(2 - DUST);
          expect(Math.min(...gaps)).toBeCloseTo(body.rodEdge ?? NaN, 7);
        },
      ),
    );
  });

  it.each([
    [
      { cable: { width: 10, depth: 20, fromRear: 20 } },
      '/stand/cable/depth: expected a slot with 3 mm of wood over it, got 2.6 mm',
    ],
    [{ cable: { width: 10, depth: 5, fromRear: 6 } }, '/stand/cable/fromRear: expected a slot with 3 mm of base'],
    [
      { cable: { width: 60, depth: 30, fromRear: 165 } },
      '/stand/cable: expected a cable slot with 2 mm of wood to every rod hole',
    ],
    [
      { recess: { face: 'base', depth: 19, border: 1 } },
      '/stand/recess/depth: expected a recess that leaves 3 mm of wood',
    ],
    [
      { recess: { face: 'base', depth: 2, border: 120 } },
      '/stand/recess/border: expected a border under half the base’s length of 201.8 mm, got 120 mm',
    ],
    [
      { recess: { face: 'base', depth: 5, border: 5 }, cable: { width: 10, depth: 4, fromRear: 100 } },
      '/stand/cable/depth: expected a slot deeper than the recess of 5 mm that it lies in, got 4 mm',
    ],
    [
      { cheeks: { stock: 'ply 12 mm', count: 7 } },
      '/stand/cheeks: expected cheeks under the stand’s width of 165 mm, got 14 of 11.8 mm',
    ],
    [{ rods: { diameter: 60, count: 2, clearance: 0.1, edge: 2 } }, '/stand/rods: expected room for 2 rods of 60 mm'],
    [{ veneer: 90, minimumEdge: 0.5 }, '/stand/veneer: expected a veneer under'],
  ] as const)('are refused where they cannot be: %j', (settings, line) => {
    const slotted = 'cable' in settings && settings.cable.depth === 20 ? { rods: null } : {};
    const { kind, lines } = refusalOf({ settings: { ...settings, ...slotted } });
    expect(kind).toBe('no-answer');
    expect(lines.join()).toContain(line);
  });

  it('that have no place in a stack are named as left out', () => {
    const { notes } = bodyOf({ settings: { pockets: { count: 2, diameter: 8, depth: 5 } } });
    expect(notes).toEqual(['Pockets are for the skinned build: left out.']);
  });
});

describe('cut edges that lean', () => {
  const withTaper = (taper: number) => bodyOf({ shop: { ...shop, stocks: [{ ...board, taper }] } });

  it('leave a step at each joint, which is told: no slice fits in turned over', () => {
    const taper = radians(1);
    const body = withTaper(taper);
    // Where the edges of two slices on each other end, lettered faces to one side: one leans out to the joint, one starts back.
    const [out, back] = [1, -1].map((way) => (way * board.thickness * Math.tan(taper)) / 2);
    const step = ((out ?? NaN) - (back ?? NaN)).toFixed(2);
    expect(step).toBe('0.05');
    expect(body.notes.filter((note) => plainText(note).includes(`a step of ${step} mm`))).toHaveLength(1);
    expect(wordsOf(body)).not.toMatch(/turn/i);

    // A slice turned over, its base down again, has its front at the rear: the thick end lies over the thin one.
    const [slice] = body.pieces;
    if (!slice) throw new Error('there is a slice');
    const ends = slice.outside.vertices.map(({ x }) => x);
    const [left, right] = [Math.min(...ends), Math.max(...ends)];
    const high = (turned: boolean, at: number): number =>
      Math.max(...slice.outside.vertices.map(({ x, y }) => ((turned ? left + right - x : x) === at ? y : -Infinity)));
    expect(high(true, left)).toBe(high(false, right));
    expect(high(true, left)).not.toBeCloseTo(high(false, left), 1);
  });

  it('are not mentioned where they stand plumb', () => {
    expect(withTaper(0).notes).toEqual([]);
  });
});

it('no window is a sliver: the bit of its corner’s radius reaches all of it, also at a thin end', () => {
  let small = 0;
  fc.assert(
    fc.property(anyPlace, numberFrom(2, 12), (place, corner) => {
      const [slice] = soundBody({ ...place, settings: { relief: { web: 4, corner } } }).pieces;
      if (!slice) throw new Error('a stack has slices');
      for (const window of pathsOf(slice.inside)) {
        const drawn = [ring(window, 256)];
        const area = Math.abs(areaPathsD(drawn));
        const offset = (paths: PathsD, by: number) =>
          inflatePathsD(paths, by, JoinType.Round, EndType.Polygon, 2, 6, 1e-4);
        // Clockwise rings are holes: to shrink one, turn it round.
        const reached = Math.abs(areaPathsD(offset(offset([[...(drawn[0] ?? [])].reverse()], -1.99), 1.99)));
        expect(area - reached).toBeLessThan(0.02);
        if (area < 1500) small += 1;
      }
    }),
    { numRuns: runs(200) },
  );
  expect(small).toBeGreaterThan(0);
});

it('corners that have to be smaller say what is in their way', () => {
  const note = (settings: Partial<StandSettings>): string => bodyOf({ settings }).notes.map(plainText).join();
  expect(note({ rods: null, corner: 8, recess: { face: 'top', depth: 1, border: 4 } })).toContain(
    'the wood beside a recess or a slot has room for no more',
  );
  expect(note({ rods: null, corner: 40 })).toContain('the thin end has room for no more');
});
