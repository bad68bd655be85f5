import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { add, cross, dot, scale, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { bodyMesh } from '$lib/files/solid.ts';
import { coverOf } from '$lib/stand/cover.ts';
import { edgesOf } from '$lib/geometry/edge.ts';
import { momentsOf } from '$lib/geometry/moments.ts';
import { radians } from '$lib/geometry/angle.ts';
import { volumeOf } from '$lib/files/mesh.ts';
import { widthOf } from '$lib/stand/widths.ts';
import type { Mesh } from '$lib/files/mesh.ts';
import type { Printed, StandBody } from '$lib/stand/body.ts';
import type { Stance } from '$lib/stand/buildRequest.ts';
import { meshSlack } from '../../files/meshSlack.ts';
import { numberFrom } from '../../numbers.ts';
import { orZero, plain } from '../stands.ts';
import {
  anyPlace,
  bodyOf,
  corners,
  printer,
  refusalOf,
  shop,
  soundBody,
  speaker,
  stance,
  thin,
  type Case,
  wordsOf,
} from './buildRequests.ts';
import { runs } from '../../runs.ts';

const square = { build: 'skinned', base: 'square-to-desk' } as const;
const bed = (x: number, y: number, z: number): Case['shop'] => ({ ...shop, printer: { ...printer, bed: { x, y, z } } });
const roomy = bed(2000, 2000, 2000);

/** The cabinet's bottom by the frame's own formulas: how far a place lies over it. */
function overBottom({ side, mark, toe, tilt, lift }: Stance, depth: number): (place: Vec3) => number {
  const m = side === 'right' ? 1 : -1;
  const back = vec3(m * Math.sin(toe) * Math.cos(tilt), Math.cos(toe) * Math.cos(tilt), -Math.sin(tilt));
  const across = vec3(m * Math.cos(toe), -Math.sin(toe), 0);
  const front = add(mark, vec3(0, 0, lift + Math.max(0, depth * Math.sin(tilt))));
  const up = scale(cross(across, back), m);
  return (place) => dot(subtract(place, front), up);
}

const middleOf = ({ footprint }: StandBody): number => {
  const [a, , c] = footprint;
  if (!a || !c) throw new Error('a footprint has four corners');
  return (a[0] + c[0]) / 2;
};

/** The core's corners where they come to lie, desk frame: x runs with what was up on the bed, y away with what was right. */
function standing(body: StandBody, mesh: Mesh, { mark }: Stance): Vec3[] {
  const left = Math.min(...body.slice.map(([u]) => u));
  const base = Math.min(...body.slice.map(([, z]) => z));
  const high = body.printed.reduce((sum, { size }) => sum + size.z, 0);
  return mesh.vertices.map(({ x, y, z }) => vec3(middleOf(body) - high / 2 + z, mark.y + left + x, base + y));
}

/** mm. Corners lie on a grid of a micrometre, on a slope of up to 30°. */
const GRID = 0.002;

describe('a printed core with its base square to the desk', () => {
  it('lies under the cabinet everywhere: its top is the cabinet’s bottom less pad and veneer, on both sides', () => {
    fc.assert(
      fc.property(anyPlace, orZero(numberFrom(0.5, 6)), orZero(numberFrom(0.3, 2)), (place, pad, veneer) => {
        const body = soundBody({ ...place, shop: roomy, settings: { ...plain, ...square, pad, veneer, rods: null } });
        const [core] = body.printed;
        if (!core || body.printed.length !== 1) throw new Error('the core is one body');
        const at = { ...stance, ...place.stance };
        const over = overBottom(at, place.speaker.depth);
        const base = Math.min(...body.slice.map(([, z]) => z));
        const tops = standing(body, bodyMesh(core), at).filter(({ z }) => z > base + 1e-9);
        expect(tops).toHaveLength(4);
        for (const corner of tops) expect(Math.abs(over(corner) + pad + veneer)).toBeLessThan(GRID);
      }),
    );
  });

  it('its cheeks never leave a gap: each reaches the slope everywhere and just touches it along one face', () => {
    fc.assert(
      fc.property(
        anyPlace,
        numberFrom(0.5, 8),
        fc.integer({ min: 1, max: 3 }),
        orZero(numberFrom(0.01, 0.4)),
        orZero(numberFrom(0.3, 2)),
        (place, thickness, count, glue, veneer) => {
          const body = soundBody({
            ...place,
            board: { name: 'side', thickness, density: 700 },
            shop: roomy,
            settings: { ...plain, ...square, cheeks: { stock: null, count }, glue, veneer, rods: null },
          });
          const at = { ...stance, ...place.stance };
          const over = overBottom(at, place.speaker.depth);
          const m = at.side === 'right' ? 1 : -1;
          const core = body.printed.reduce((sum, { size }) => sum + size.z, 0);
          let from = -body.width / 2 + coverOf({ ...plain, veneer }).side;
          const cheeks = body.pieces.flatMap((one) => Array.from({ length: one.quantity }, () => one));
          expect(cheeks).toHaveLength(2 * count);
          for (const [i, piece] of cheeks.entries()) {
            if (i === count) from += core + glue;
            const [, , rear = [0, 0], front = [0, 0]] = corners(piece.outside);
            const faces = [from, from + thickness].map((across) =>
              [front, rear].map(([u, z]) => over(vec3(middleOf(body) + m * across, at.mark.y + u, z)) + veneer),
            );
            // Tops are straight, so their ends tell; rounding of lengths of up to 1e3 mm.
            expect(Math.min(...faces.flat())).toBeGreaterThan(-1e-8);
            expect(Math.min(...faces.map((face) => Math.max(...face.map(Math.abs))))).toBeLessThan(1e-6);
            from += thickness + glue;
          }
          // The widths: core, cheeks, glue between them and veneer, up to the other side.
          expect(from - glue).toBeCloseTo(body.width / 2 - coverOf({ ...plain, veneer }).side, 8);
          expect(widthOf(body.widths)).toBe(body.width);
          expect(body.width).toBeCloseTo(place.speaker.width, 9);
        },
      ),
    );
  });

  it('is closed and holds what it is reckoned with, details and halves and all', () => {
    let [leaning, halved] = [0, 0];
    fc.assert(
      fc.property(
        anyPlace,
        fc.record({
          corner: fc.option(numberFrom(0.5, 12)),
          relief: fc.option(fc.constant({ web: 4, corner: 2 })),
          pockets: fc.option(fc.constant({ count: 2, diameter: 8, depth: 12 })),
          cable: fc.option(fc.constant({ width: 10, depth: 5, fromRear: 60 })),
          recess: fc.option(fc.constantFrom('top', 'base').map((face) => ({ face, depth: 2, border: 8 }) as const)),
        }),
        fc.constantFrom(roomy, bed(180, 180, 300), bed(400, 400, 120)),
        (place, details, where) => {
          const body = soundBody({ ...place, shop: where, settings: { ...plain, ...square, ...details } });
          for (const one of body.printed) {
            expect(Math.abs(volumeOf(bodyMesh(one)) - one.volume)).toBeLessThan(meshSlack(one));
            if (one.roof) leaning++;
          }
          const total = body.printed.reduce((sum, { volume, quantity }) => sum + volume * quantity, 0);
          expect(body.figures.printedVolume).toBeCloseTo(total, 6);
          if (body.printed.length > 1) halved++;
        },
      ),
      { numRuns: runs(300) },
    );
    expect(leaning).toBeGreaterThan(runs(300) / 10);
    expect(halved).toBeGreaterThan(runs(300) / 30);
  });

  it('has halves that meet: where one ends the other begins', () => {
    const { printed } = bodyOf({ settings: square, shop: bed(400, 400, 100) });
    const [low, high] = printed;
    if (!low?.roof || !high?.roof) throw new Error('there are two halves that lean');
    expect([low.name, high.name]).toEqual(['core-half-inboard', 'core-half-outboard']);
    expect(corners(low.roof)).toEqual(corners(outsideOf(high)));
    const left = bodyOf({ settings: square, stance: { side: 'left' }, shop: bed(400, 400, 100) });
    expect(left.printed.map(({ name }) => name)).toEqual(['core-half-outboard', 'core-half-inboard']);
    const long = bodyOf({ settings: square, shop: bed(150, 120, 250) });
    expect(long.printed.map(({ name }) => name)).toEqual(['core-front', 'core-rear']);
    for (const one of long.printed) {
      expect(Math.max(one.size.x, one.size.y)).toBeLessThanOrEqual(150);
      expect(Math.min(one.size.x, one.size.y)).toBeLessThanOrEqual(120);
    }
  });

  it('weighs what the sanded wedge weighs, with its centre of mass, by summing small columns', () => {
    const density = 700;
    const at = { ...stance, side: 'left' as const };
    const body = bodyOf({
      board: { name: 'side', thickness: 4, density },
      shop: { ...shop, stocks: [], printer: { ...printer, density, fill: 1, bed: { x: 2000, y: 2000, z: 2000 } } },
      settings: { ...square, rods: null },
      stance: at,
    });
    const over = overBottom(at, speaker.depth);
    const [xs, ys] = [body.footprint.map(([x]) => x), body.footprint.map(([, y]) => y)];
    const [left, right, near, far] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    const lean = over(vec3(0, 0, 1)) - over(vec3(0, 0, 0));
    const n = 200;
    const sum = { volume: 0, x: 0, y: 0, z: 0 };
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        const [x, y] = [left + ((i + 0.5) / n) * (right - left), near + ((j + 0.5) / n) * (far - near)];
        const high = -over(vec3(x, y, 0)) / lean;
        const volume = (high * (right - left) * (far - near)) / n ** 2;
        sum.volume += volume;
        sum.x += volume * x;
        sum.y += volume * y;
        sum.z += (volume * high) / 2;
      }
    }
    expect(body.volume / sum.volume).toBeCloseTo(1, 5);
    expect(body.mass / ((sum.volume / 1e9) * density)).toBeCloseTo(1, 5);
    expect(body.centre.x).toBeCloseTo(sum.x / sum.volume, 1);
    expect(body.centre.y).toBeCloseTo(sum.y / sum.volume, 1);
    expect(body.centre.z).toBeCloseTo(sum.z / sum.volume, 1);
  });

  it('tells the step to sand and where the slope is', () => {
    const body = bodyOf({ settings: { ...square, cheeks: { stock: thin.name, count: 2 }, glue: 0.1 } });
    const slope = Math.tan(radians(10)) * Math.sin(radians(30));
    expect(body.sanding?.height).toBeCloseTo(slope * (thin.thickness + 0.1), 12);
    expect(body.sanding?.face).toBe('inboard');
    expect(body.pieces.map(({ name, quantity }) => [name, quantity])).toEqual(
      [1, 2, 3, 4].map((number) => [`cheek-${number}`, 1]),
    );
    expect(wordsOf(body)).toContain('numbered from inboard');
    const step = ((thin.thickness + 0.1) * slope).toFixed(2);
    expect(wordsOf(body)).toContain(`down to the slope of the core’s top: each stands up to ${step} mm above`);
    expect(wordsOf(body)).toContain('the top edge of its inboard face is right as cut');
    expect(body.contact?.length).toBeGreaterThanOrEqual(6);
  });

  it('is the turned one where nothing turns or nothing tilts', () => {
    for (const pose of [{ toe: 0 }, { tilt: 0 }]) {
      const body = bodyOf({ settings: square, stance: pose });
      expect(body.pieces).toMatchObject([{ name: 'cheek', quantity: 2 }]);
      expect(body.printed[0]?.roof).toBeUndefined();
      expect(body.sanding).toBeNull();
      expect(wordsOf(body)).toContain('leave the cheeks’ own edges: they carry the slope');
    }
    const [turned, same] = [{}, { base: square.base }].map((base) =>
      bodyOf({ settings: { build: 'skinned', ...base }, stance: { toe: 0 } }),
    );
    expect(same?.mass).toBeCloseTo(turned?.mass ?? NaN, 12);
    expect(same?.centre.y).toBeCloseTo(turned?.centre.y ?? NaN, 9);
  });

  it('shares its rods with the cheeks, with wood round them in the lowest section', () => {
    const body = bodyOf({ settings: square });
    const holes = [...body.pieces.map(({ inside }) => inside.length), 2];
    expect(new Set(holes).size).toBe(1);
    expect(body.rodEdge).toBeGreaterThanOrEqual(2 - 1e-9);
    const [core] = body.printed;
    if (!core?.roof) throw new Error('the core leans');
    for (const outside of [outsideOf(core), core.roof]) {
      expect(momentsOf(outside).area).toBeGreaterThan(body.sliceArea);
      expect(edgesOf(outside)).toHaveLength(4);
    }
  });

  it('has no answer where neither it nor its halves fit the bed, and is unsound where a corner is too thin', () => {
    expect(refusalOf({ settings: square, shop: bed(60, 60, 250) }).lines.join()).toContain(
      '/stand/build: expected a printer’s bed that takes the core or keyed halves of it, got 60 × 60 × 250 mm',
    );
    expect(refusalOf({ settings: square, stance: { lift: 5 } }).kind).toBe('unsound');
  });
});

function outsideOf({ levels }: Printed) {
  const outside = levels[0]?.contours[0];
  if (outside?.kind !== 'path') throw new Error('a body has an outside');
  return outside;
}
