import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkProject } from '$lib/project/parse.ts';
import { sideNames } from '$lib/project/project.ts';
import { isInside } from '$lib/geometry/inside.ts';
import { polygonPath } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';
import { marksOf, nearestMark } from '$lib/study/placing/marks.ts';
import { NEAREST_TO } from '$lib/study/placing/leastMove.ts';
import type { Region } from '$lib/study/placing/region.ts';
import { markSeen } from '$lib/study/placing/seats.ts';
import { sideOf, taskOf } from '$lib/study/placing/side.ts';
import { anyDesk, demoWith, firstLayout, project } from '../../projects.ts';
import { numberFrom } from '../../numbers.ts';
import { runs } from '../../runs.ts';
import { askFor, willDo } from './standing.ts';
import { withGap, rectangleOf } from '../../rooms.ts';

/** Rounding of lengths of some metres, mm. */
const DUST = 1e-6;

const anyStand = fc.record({ tilt: numberFrom(-5, 25), lift: numberFrom(0, 150), miss: numberFrom(1, 40) });

/** A mark seen as a right one in the desk frame. */
const inFrame = (side: 'left' | 'right', [x, y]: Point) => ({ x: side === 'left' ? -x : x, y });

describe('the mark that moves least', () => {
  test('hits within what is allowed, and no nearer one does', () => {
    let [moved, stayed, none] = [0, 0, 0];
    fc.assert(
      fc.property(anyDesk, anyStand, fc.infiniteStream(numberFrom(0, 1)), (changes, { tilt, lift, miss }, draws) => {
        const read = checkProject(demoWith(changes));
        if (!read.ok) return;
        const layout = firstLayout(read.value);
        const ask = askFor(layout, tilt, lift, { allowed: { miss } });
        const task = taskOf(read.value, layout, ask);
        const draw = (): number => draws.next().value ?? 0;
        for (const side of sideNames) {
          const from = markSeen(layout, side);
          const found = ask.marks && nearestMark([sideOf(task, side, ask.allowed)], from, ask.marks);
          const far = found ? Math.hypot(found[0] - from[0], found[1] - from[1]) : 2000;
          if (!found) none++;
          else if (far === 0) stayed++;
          else moved++;
          if (found) {
            expect(willDo(read.value, layout, ask, side, inFrame(side, found), DUST), String(found)).toBe(true);
          }
          // Within the circle through it there is none; without one there is none on the whole desk.
          for (let i = 0; i < 40 && far > 2 * NEAREST_TO; i++) {
            const [turn, away] = [2 * Math.PI * draw(), Math.sqrt(draw()) * (far - 2 * NEAREST_TO)];
            const mark: Point = [from[0] + away * Math.cos(turn), from[1] + away * Math.sin(turn)];
            if (
              Math.abs(mark[0]) > rectangleOf(layout.desk).width / 2 ||
              mark[1] < 0 ||
              mark[1] > rectangleOf(layout.desk).depth
            )
              continue;
            expect(willDo(read.value, layout, ask, side, inFrame(side, mark), -DUST), String(mark)).toBe(false);
          }
        }
      }),
      { numRuns: runs(150) },
    );
    expect(moved).toBeGreaterThan(runs(150) / 6);
    expect(stayed + none).toBeGreaterThan(0);
  }, 60_000);

  test('lies straight towards the head on an empty desk, where only the aim holds it back', () => {
    const of = project({ '/layouts/0/monitors': [], ...withGap(null) });
    const layout = firstLayout(of);
    const ask = askFor(layout, 20, 12);
    const side = sideOf(taskOf(of, layout, ask), 'right', ask.allowed);
    const found = ask.marks && nearestMark([side], [430, 300], ask.marks);
    if (!found) throw new Error('there is a mark');
    const [x, y] = found;
    // The head is at (0, −180) and the tweeter in the middle of the baffle.
    expect(x / (y + 180)).toBeCloseTo(430 / 480, 12);
    expect(Math.hypot(x, y + 180)).toBeCloseTo(side.runs[0]?.to ?? NaN, 6);
  });
});

describe('regions of marks', () => {
  const inside = ({ outline, holes }: Region, mark: Point): boolean =>
    isInside(mark, polygonPath(outline)) && !holes.some((hole) => isInside(mark, polygonPath(hole)));

  test('are bounded where marks stop to do, and hold those that do and no others', () => {
    let [within, without, vertices] = [0, 0, 0];
    fc.assert(
      fc.property(anyDesk, anyStand, fc.infiniteStream(numberFrom(0, 1)), (changes, { tilt, lift, miss }, draws) => {
        const read = checkProject(demoWith(changes));
        if (!read.ok) return;
        const layout = firstLayout(read.value);
        const ask = askFor(layout, tilt, lift, { allowed: { miss } });
        const task = taskOf(read.value, layout, ask);
        const draw = (): number => draws.next().value ?? 0;
        const { width, depth } = rectangleOf(layout.desk);
        for (const name of sideNames) {
          const side = sideOf(task, name, ask.allowed);
          const regions = ask.marks ? marksOf(side, ask.marks) : [];
          const rings = regions.flatMap(({ outline, holes }) => [outline, ...holes]);
          const pool = rings.flat();
          for (const vertex of pool) {
            vertices++;
            expect(willDo(read.value, layout, ask, name, inFrame(name, vertex), DUST), String(vertex)).toBe(true);
          }
          for (let i = 0; i < 40; i++) {
            // Half of them near a boundary, where there is one.
            const [x, y] = (i % 2 ? pool[Math.floor(draw() * pool.length)] : null) ?? [(draw() - 0.5) * width, draw() * depth]; // prettier-ignore
            const mark: Point = [x + (draw() - 0.5) * 120, y + (draw() - 0.5) * 120];
            if (Math.abs(mark[0]) > width / 2 || mark[1] < 0 || mark[1] > depth) continue;
            const holds = regions.some((region) => inside(region, mark));
            // What is told of a mark this near to a boundary hangs on the straights between its points, mm.
            const near = nearest(rings, mark);
            if (near < CHORD) continue;
            if (holds) within++;
            else without++;
            expect(willDo(read.value, layout, ask, name, inFrame(name, mark), holds ? DUST : -DUST), `${mark} ${holds}`).toBe(holds); // prettier-ignore
          }
        }
      }),
      { numRuns: runs(150) },
    );
    expect(vertices).toBeGreaterThan(300);
    expect(within).toBeGreaterThan(5);
    expect(without).toBeGreaterThan(100);
  }, 60_000);

  /** A boundary that turns a corner inside a step of the grid is cut off by at most its diagonal, mm. */
  const CHORD = 12;

  const nearest = (rings: readonly (readonly Point[])[], [x, y]: Point): number =>
    Math.min(...rings.flat().map((vertex) => Math.hypot(vertex[0] - x, vertex[1] - y)), Infinity);
});
