import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '$lib/geometry/point.ts';
import type { Box } from '$lib/drawing/box.ts';
import { dimensionLine } from '$lib/drawing/dimensionLine.ts';
import { dimensionStyle, textWidth } from '$lib/drawing/dimensionStyle.ts';
import type { DrawnDimension } from '$lib/drawing/drawnDimension.ts';
import { toPaper } from '$lib/drawing/place.ts';
import type { Dimension } from '$lib/drawing/view.ts';

const style = dimensionStyle(1);
const extent: Box = [-1000, -1000, 1000, 1000];
const place = { scale: 0.1, origin: [200, 300] as const };

const dimension = (rest: Partial<Dimension>): Dimension => ({
  kind: 'dimension',
  id: 'd',
  subject: 'desk',
  from: [0, 0],
  to: [700, 0],
  run: 'across',
  row: 1,
  value: 700,
  name: 'desk depth',
  ...rest,
});
const drawn = (rest: Partial<Dimension>, text = '700'): DrawnDimension =>
  dimensionLine(dimension(rest), place, extent, style, text);

const coordinate = fc.integer({ min: -1000, max: 1000 });
const point = fc.tuple(coordinate, coordinate);
const any = fc.record({
  from: point,
  to: point,
  run: fc.constantFrom('across' as const, 'up' as const, 'aligned' as const),
  row: fc.integer({ min: -4, max: 4 }),
  beside: fc.constantFrom('from' as const, 'to' as const),
});

const distanceToLine = ([x, y]: Point, line: readonly Point[]): number => {
  const [a, b] = [line[0] ?? [NaN, NaN], line.at(-1) ?? [NaN, NaN]];
  const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return Math.abs((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])) / size;
};

describe('dimensionLine', () => {
  it('never sets text upside down: it reads from the bottom or from the right', () => {
    fc.assert(
      fc.property(any, (rest) => {
        const { turn } = drawn(rest).text;
        expect(turn).toBeGreaterThanOrEqual(-105 - 1e-9);
        expect(turn).toBeLessThan(75 + 1e-9);
      }),
    );
    expect(drawn({ run: 'up', from: [0, 0], to: [0, 700] }).text.turn).toBe(-90);
    expect(drawn({ run: 'up', from: [0, 700], to: [0, 0] }).text.turn).toBe(-90);
    expect(drawn({ from: [700, 0], to: [0, 0] }).text.turn).toBe(0);
  });

  it('sets text along its line where it is asked to, no further out than an arrow past its end', () => {
    // 70 mm of paper from 200 on, and 10 mm above it: `first`.
    for (const [textAt, middle] of [
      [0.5, 235],
      [0.25, 217.5],
      [0, 200 + textWidth('700', style) / 2 - style.arrow],
    ] as const) {
      expect(drawn({ textAt }).text.at[0]).toBeCloseTo(middle, 9);
    }
  });

  it('sets text level beside the end where it is asked to and there is no room between', () => {
    const short = { run: 'up', from: [0, 0], to: [0, 60] } as const;
    const turned = drawn(short).text;
    const level = drawn({ ...short, level: true }).text;
    expect([turned.turn, level.turn, level.anchor]).toEqual([-90, 0, 'end']);
    expect(level.at[0]).toBeLessThan(turned.at[0] + style.textGap);
    const roomy = { ...short, to: [0, 700] } as const;
    expect(drawn({ ...roomy, level: true })).toEqual(drawn(roomy));
  });

  it('puts each arrow’s tip on the dimension line and in line with the point it measures', () => {
    fc.assert(
      fc.property(any, (rest) => {
        const { arrows, extensions, lines } = drawn(rest);
        expect(arrows).toHaveLength(2);
        arrows.forEach(([tip], index) => {
          expect(distanceToLine(tip, lines[0] ?? [])).toBeLessThan(1e-6);
          const [x, y] = toPaper(place, index === 0 ? rest.from : rest.to);
          if (rest.run === 'across') expect(tip[0]).toBeCloseTo(x, 9);
          if (rest.run === 'up') expect(tip[1]).toBeCloseTo(y, 9);
        });
        if (extensions.length === 2) {
          extensions.forEach((line, index) => {
            expect(distanceToLine(arrows[index]?.[0] ?? [NaN, NaN], line)).toBeLessThan(1e-6);
          });
        }
      }),
    );
  });

  it('flies its arrows outwards inside, and inwards from outside when the room is short', () => {
    const tails = (length: number): number[] =>
      drawn({ to: [length, 0] }, '5').arrows.map(([tip, a, b]) => (a[0] + b[0]) / 2 - tip[0]);
    // 700 mm at 1:10 are 70 on the paper, 20 mm are 2: less than two arrowheads of 3.
    expect(tails(700)).toEqual([style.arrow, -style.arrow]);
    expect(tails(20)).toEqual([-style.arrow, style.arrow].map((tail) => expect.closeTo(tail, 9)));
  });

  it('sets the text beside the arrows, on a longer line, where it does not fit between them', () => {
    const text = '700.5';
    const room = textWidth(text, style);
    const short = drawn({ to: [10 * (room - 1), 0] }, text);
    const long = drawn({ to: [10 * (room + 4), 0] }, text);
    expect(long.text.anchor).toBe('middle');
    expect(short.text.anchor).toBe('start');
    const end = toPaper(place, [10 * (room - 1), 0])[0];
    expect(short.text.at[0]).toBeGreaterThan(end);
    expect(Math.max(...(short.lines[0] ?? []).map(([x]) => x))).toBeGreaterThanOrEqual(short.text.at[0] + room - 1e-9);
    expect(drawn({ to: [10 * (room - 1), 0], beside: 'from' }, text).text.anchor).toBe('end');
  });

  it('stands 10 mm off the outline and 8 mm from row to row (drawing textbooks after ISO 129)', () => {
    const level = (row: number): number => drawn({ row }).arrows[0]?.[0][1] ?? NaN;
    const [, top] = toPaper(place, [0, extent[3]]);
    const [, bottom] = toPaper(place, [0, extent[1]]);
    expect(top - level(1)).toBeCloseTo(10, 9);
    expect(level(-1) - bottom).toBeCloseTo(10, 9);
    for (const row of [1, 2, 3]) {
      expect(level(row) - level(row + 1)).toBeCloseTo(8, 9);
      expect(level(-row - 1) - level(-row)).toBeCloseTo(8, 9);
    }
  });

  it('counts the rows of one thing from its own edge', () => {
    const at = drawn({ run: 'up', from: [0, 0], to: [0, 700], row: 1, base: 50 }).arrows[0]?.[0][0];
    expect(at).toBeCloseTo(toPaper(place, [50, 0])[0] + 10, 9);
  });

  it('leaves a gap at the object and runs a little past the line', () => {
    const [line] = drawn({}).extensions;
    const [start, end] = [line?.[0] ?? [NaN, NaN], line?.[1] ?? [NaN, NaN]];
    expect(toPaper(place, [0, 0])[1] - start[1]).toBeCloseTo(style.gap, 9);
    expect((drawn({}).arrows[0]?.[0][1] ?? NaN) - end[1]).toBeCloseTo(style.overrun, 9);
  });

  it('draws slender arrowheads, at least three times as long as they are wide', () => {
    fc.assert(
      fc.property(any, (rest) => {
        for (const [tip, a, b] of drawn(rest).arrows) {
          const long = Math.hypot((a[0] + b[0]) / 2 - tip[0], (a[1] + b[1]) / 2 - tip[1]);
          expect(long).toBeCloseTo(3, 9);
          expect(long / Math.hypot(a[0] - b[0], a[1] - b[1])).toBeGreaterThan(3);
        }
      }),
    );
  });

  it('stays finite for a length of nothing', () => {
    for (const run of ['across', 'up', 'aligned'] as const) {
      const made = drawn({ run, from: [5, 5], to: [5, 5] });
      const numbers = [...made.arrows.flat(2), ...made.lines.flat(2), ...made.text.at, made.text.turn];
      expect(numbers.every(Number.isFinite)).toBe(true);
    }
  });
});
