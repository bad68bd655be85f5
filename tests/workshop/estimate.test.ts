import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circle, openPath, polygonPath } from '$lib/geometry/contour.ts';
import { printerOf } from '$lib/project/printer.ts';
import { estimate } from '$lib/workshop/estimate.ts';
import { numberFrom } from '../numbers.ts';
import { project } from '../projects.ts';
import { partOf } from './shapes.ts';

const printer = printerOf({ printer: null });
const square = polygonPath([
  [0, 0],
  [100, 0],
  [100, 50],
  [0, 50],
]);
const part = partOf('plate', square, {
  stock: 'MDF 3 mm',
  quantity: 4,
  inside: [circle([50, 25], 10)],
  mark: [
    openPath([
      [0, 0],
      [40, 0],
    ]),
  ],
});
const stocksWith = (changes: Record<string, unknown>) =>
  project(Object.fromEntries(Object.entries(changes).map(([key, value]) => [`/stock/0/${key}`, value]))).stock;
const body = {
  name: 'core',
  quantity: 2,
  levels: [],
  size: { x: 10, y: 10, z: 10 },
  volume: 250_000,
  mass: 0.31,
};

describe('an estimate', () => {
  it('is length over speed for every layer, in minutes', () => {
    const stocks = stocksWith({ feed: { outside: 10, inside: 5, mark: 40 } });
    const { cutMinutes } = estimate({ parts: [part], printed: [], sheets: null }, stocks, printer);
    const seconds = 4 * (300 / 10 + (20 * Math.PI) / 5 + 40 / 40);
    expect(cutMinutes.value).toBeCloseTo(seconds / 60, 12);
    expect(cutMinutes.missing).toEqual([]);
  });

  it('says what is missing instead of guessing', () => {
    const none = estimate({ parts: [part], printed: [body], sheets: null }, stocksWith({}), printer);
    expect(none.cutMinutes).toEqual({
      value: null,
      missing: [
        'the speed of the outside layer in "MDF 3 mm"',
        'the speed of the inside layer in "MDF 3 mm"',
        'the speed of the engrave layer in "MDF 3 mm"',
      ],
    });
    expect(none.printMinutes).toEqual({ value: null, missing: ['the printer’s rate'] });
    expect(none.cost).toEqual({ value: null, missing: ['the number of sheets'] });
    const plain = partOf('plate', square, { stock: 'MDF 3 mm' });
    const some = stocksWith({ feed: { outside: 10 } });
    // What is not there needs no speed.
    expect(estimate({ parts: [plain], printed: [], sheets: null }, some, printer).cutMinutes.value).toBeCloseTo(
      0.5,
      12,
    );
  });

  it('prices sheets and filament', () => {
    const work = { parts: [part], printed: [body], sheets: { 'MDF 3 mm': 3 } };
    const priced = { ...printer, price: 20, rate: 8, fill: 0.4 };
    const { cost, printMinutes, printMass } = estimate(work, stocksWith({ price: 7.5 }), priced);
    expect(printMass).toBeCloseTo(0.62, 12);
    expect(cost.value).toBeCloseTo(3 * 7.5 + 0.62 * 20, 12);
    expect(printMinutes.value).toBeCloseTo((500_000 * 0.4) / 8 / 60, 12);
    expect(estimate(work, stocksWith({}), printer).cost.missing).toEqual([
      'the price of a sheet of "MDF 3 mm"',
      'the price of filament',
    ]);
  });

  it('prices solid wood as bought, by the cubic metre', () => {
    fc.assert(
      fc.property(numberFrom(0, 2e7), numberFrom(0, 5000), (volume, solidPrice) => {
        const work = { parts: [], printed: [], sheets: {}, solidWood: { 'MDF 3 mm': volume } };
        const { cost } = estimate(work, stocksWith({ solidPrice }), printer);
        // 1e9 mm³ are a cubic metre; costs of up to 100, rounded at the sixteenth digit.
        expect(cost.value).toBeCloseTo((volume / 1e9) * solidPrice, 10);
        expect(cost.missing).toEqual([]);
      }),
    );
    const block = { parts: [], printed: [], sheets: {}, solidWood: { 'MDF 3 mm': 3e6 } };
    expect(estimate(block, stocksWith({ price: 7.5 }), printer).cost).toEqual({
      value: null,
      missing: ['the price of a cubic metre of "MDF 3 mm", solid'],
    });
  });

  it('of nothing is nothing', () => {
    const { cutMinutes, printMinutes, cost, printMass } = estimate({ parts: [], printed: [], sheets: {} }, [], printer);
    expect([cutMinutes.value, printMinutes.value, cost.value, printMass]).toEqual([0, 0, 0, 0]);
  });
});
