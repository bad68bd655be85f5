import fc from 'fast-check';
import { expect, it } from 'vitest';
import { radians } from '$lib/geometry/angle.ts';
import { vec3 } from '$lib/geometry/point.ts';
import { buildStand, type Stance } from '$lib/stand/build.ts';
import { faultLine } from '$lib/project/fault.ts';
import { anyCase, everyNumber, fanArea, mm, plain } from './stands.ts';
import { runs } from '../runs.ts';

const stance: Stance = { side: 'right', mark: vec3(430, 300, 0), toe: radians(30), tilt: radians(10), lift: 12 };
const speaker = { width: 165, depth: 205 };
const stock = { name: 'MDF 3 mm', thickness: 3.05, density: 880 };

it('puts a stand together', () => {
  const outcome = buildStand(stance, speaker, plain, stock);
  if (!outcome.ok) throw new Error(outcome.faults.map(faultLine).join('; '));
  const body = outcome.value;
  const run = 205 * Math.cos(stance.tilt);
  const rise = 205 * Math.sin(stance.tilt);
  expect(body).toMatchObject({ layers: 54, widthAsked: 165, stock: 'MDF 3 mm', thickness: 3.05 });
  expect(body.rearHeight).toBe(12);
  expect(body.frontHeight).toBeCloseTo(12 + rise, 12);
  const bored = 2 * Math.PI * 3.05 ** 2;
  expect(body.sliceArea).toBeCloseTo((12 + rise / 2) * run - bored, 9);
  expect(body.volume).toBeCloseTo(body.sliceArea * body.width, 6);
  expect(body.mass).toBeCloseTo((body.volume / 1e9) * 880, 12);
  expect(fanArea(body.footprint)).toBeCloseTo(run * body.width, 8);
});

it('does without rods', () => {
  expect(buildStand(stance, speaker, { ...plain, rods: null }, stock)).toMatchObject({
    ok: true,
    value: { rods: [], rodEdge: null },
  });
});

it('takes its own width before the cabinet’s', () => {
  expect(buildStand(stance, speaker, { ...plain, width: 100 }, stock)).toMatchObject({
    ok: true,
    value: { widthAsked: 100, layers: 33 },
  });
});

it('passes on what is refused, of what kind', () => {
  expect(buildStand({ ...stance, lift: 1 }, speaker, plain, stock)).toMatchObject({ ok: false, kind: 'unsound' });
  const thick = { ...plain, rods: { diameter: 60, count: 2, clearance: 0.1, edge: 2 } };
  expect(buildStand(stance, speaker, thick, stock)).toMatchObject({ ok: false, kind: 'no-answer' });
  expect(buildStand(stance, { ...speaker, width: 3000 }, plain, { ...stock, thickness: 0.2 })).toMatchObject({
    ok: false,
    kind: 'no-answer',
    faults: [{ pointer: '/stand/width' }],
  });
});

it('is always a stand of sound numbers or a reason', () => {
  fc.assert(
    fc.property(anyCase, mm(20, 900), mm(0.2, 100), mm(-1.5, 1.5), (one, width, thickness, toe) => {
      const outcome = buildStand(
        { ...stance, toe, tilt: one.tilt, lift: one.lift },
        { width, depth: one.depth },
        one.settings,
        { ...stock, thickness },
      );
      if (!outcome.ok) {
        expect(outcome.faults.every(({ pointer }) => pointer.startsWith('/stand/'))).toBe(true);
        return;
      }
      const body = outcome.value;
      const { profile, footprint, slice } = body;
      const numbers = [
        ...everyNumber([...profile, ...footprint, ...slice]),
        ...[body.width, body.leftOver, body.frontHeight, body.rearHeight, body.sliceArea, body.volume, body.mass],
      ];
      expect(numbers.every(Number.isFinite)).toBe(true);
      expect(body.mass).toBeGreaterThan(0);
      expect(body.rodEdge).toBeGreaterThan(1.999);
    }),
    { numRuns: runs(300) },
  );
});
