import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { signedArea } from '$lib/geometry/area.ts';
import { circle, openPath, polygonPath, type Contour, type Path } from '$lib/geometry/contour.ts';
import { cutOrder, type CutOrder } from '$lib/workshop/cutOrder.ts';
import type { CutPath } from '$lib/workshop/kerf.ts';

const box = (x: number, y: number, width: number, height = width): Path =>
  polygonPath([[x, y], [x + width, y], [x + width, y + height], [x, y + height]]); // prettier-ignore

const block = (x: number, y: number, width: number, ...inside: CutPath['inside']): CutPath => ({
  outside: box(x, y, width),
  inside,
  engrave: [openPath([[x + 1, y + 1], [x + 2, y + 1]])], // prettier-ignore
});

/** Blocks of any size with two holes each, one to a place on a grid, in any order. */
const anySheet = fc
  .uniqueArray(
    fc.record({ place: fc.nat(80), width: fc.integer({ min: 12, max: 45 }), radius: fc.integer({ min: 1, max: 3 }) }),
    { maxLength: 40, selector: ({ place }) => place },
  )
  .map((blocks) =>
    blocks.map(({ place, width, radius }) => {
      const [x, y] = [(place % 9) * 50, Math.floor(place / 9) * 50];
      return block(x, y, width, circle([x + 5, y + 5], radius), circle([x + width - 4, y + width - 4], 2));
    }),
  );

const sizes = (contours: readonly Contour[]): number[] => contours.map((contour) => Math.abs(signedArea(contour)));

const starts = (contour: Contour): readonly [number, number] =>
  contour.kind === 'circle'
    ? [contour.centre[0] + contour.radius, contour.centre[1]]
    : [contour.vertices[0]?.x ?? NaN, contour.vertices[0]?.y ?? NaN];

/** Way from start to start, and along open marks, added up anew. */
function travelOf(contours: readonly Contour[]): number {
  let [x, y, sum] = [0, 0, 0];
  for (const contour of contours) {
    const [left, bottom] = starts(contour);
    sum += Math.sqrt((left - x) ** 2 + (bottom - y) ** 2);
    const end = contour.kind === 'path' && !contour.closed ? contour.vertices.at(-1) : undefined;
    [x, y] = end ? [end.x, end.y] : [left, bottom];
  }
  return sum;
}

const all = ({ engrave, inside, outside }: CutOrder): Contour[] => [...engrave, ...inside, ...outside];

describe('the order of cutting', () => {
  it('holds every contour exactly once, on its own layer', () => {
    fc.assert(
      fc.property(anySheet, (cuts) => {
        const order = cutOrder(cuts);
        expect(new Set(order.engrave)).toEqual(new Set(cuts.flatMap(({ engrave }) => engrave)));
        expect(new Set(order.inside)).toEqual(new Set(cuts.flatMap(({ inside }) => inside)));
        expect(new Set(order.outside)).toEqual(new Set(cuts.map(({ outside }) => outside)));
        expect(all(order)).toHaveLength(cuts.length * 4);
      }),
    );
  });

  it('never cuts a contour before one of less than two thirds of its size', () => {
    fc.assert(
      fc.property(anySheet, (cuts) => {
        for (const layer of ['inside', 'outside'] as const) {
          let largest = 0;
          for (const size of sizes(cutOrder(cuts)[layer])) {
            expect(largest).toBeLessThanOrEqual(size * 1.5 + 1e-9);
            largest = Math.max(largest, size);
          }
        }
      }),
    );
  });

  it('reports the travel, never longer than that of alike parts in the order given', () => {
    const alike = anySheet.map((cuts) =>
      cuts.map(({ outside: { vertices } }) => block(vertices[0]?.x ?? 0, vertices[0]?.y ?? 0, 20)),
    );
    fc.assert(
      fc.property(alike, (cuts) => {
        const order = cutOrder(cuts);
        expect(order.travel).toBeCloseTo(travelOf(all(order)), 6);
        const given = [...cuts.flatMap(({ engrave }) => engrave), ...cuts.map(({ outside }) => outside)];
        expect(order.travel).toBeLessThanOrEqual(travelOf(given) + 1e-9);
      }),
    );
  });

  it('is the same whenever it is asked for', () => {
    fc.assert(
      fc.property(anySheet, (cuts) => {
        expect(cutOrder(structuredClone(cuts))).toEqual(cutOrder(cuts));
      }),
    );
  });

  it('goes to the nearest next', () => {
    const row = [0, 300, 100, 200].map((x) => block(x, 0, 20));
    expect(cutOrder(row).outside.map((contour) => starts(contour)[0])).toEqual([300, 200, 100, 0]);
    const one = cutOrder(row.map((cut) => ({ ...cut, engrave: [] })));
    expect(one.outside.map((contour) => starts(contour)[0])).toEqual([0, 100, 200, 300]);
    expect(one.travel).toBe(300);
  });

  it('keeps the order given where going to the nearest would end in more travel', () => {
    // Nearest first would go 1.9, 4, 8 and all the way back to −2 and −6: 22 mm.
    const cuts = [-2, -6, 1.9, 4, 8].map((x) => ({ outside: box(x, 0, 1), inside: [], engrave: [] }));
    const order = cutOrder(cuts);
    expect(order.outside).toEqual(cuts.map(({ outside }) => outside));
    expect(order.travel).toBeCloseTo(2 + 4 + 7.9 + 2.1 + 4, 9);
  });

  it('cuts what lies in the hole of another part before that hole, and frees it with the holes', () => {
    const frame = block(0, 0, 100, box(10, 10, 80));
    const within = block(20, 20, 60, circle([30, 30], 2), box(40, 40, 30));
    const inmost = block(45, 45, 20, circle([50, 50], 1));
    const beside = block(200, 0, 5);
    for (const cuts of [
      [frame, within, inmost, beside],
      [beside, inmost, within, frame],
    ]) {
      const order = cutOrder(cuts);
      expect(order.inside).toEqual([
        ...inmost.inside, inmost.outside, ...within.inside, within.outside, ...frame.inside,
      ]); // prettier-ignore
      expect(order.outside).toEqual([beside.outside, frame.outside]);
    }
  });

  it('of nothing is nothing', () => {
    expect(cutOrder([])).toEqual({ engrave: [], inside: [], outside: [], travel: 0 });
  });

  it('of three thousand contours holds them all', () => {
    const cuts = Array.from({ length: 1000 }, (_, i) => {
      const [x, y] = [(i % 40) * 50, Math.floor(i / 40) * 50];
      return block(x, y, 30, circle([x + 6, y + 6], 2), circle([x + 20, y + 20], 3));
    });
    const { inside, outside } = cutOrder(cuts);
    expect([inside.length, outside.length]).toEqual([2000, 1000]);
  });
});
