import fc from 'fast-check';
import { expect, test } from 'vitest';
import { add, cross, dot, scale, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { checkProject } from '$lib/project/parse.ts';
import { sideNames } from '$lib/project/project.ts';
import { packingOf } from '$lib/study/placing/packing.ts';
import { markSeen } from '$lib/study/placing/seats.ts';
import { sideOf, taskOf } from '$lib/study/placing/side.ts';
import { anyDesk, demoWith, firstLayout } from '../../projects.ts';
import { numberFrom } from '../../numbers.ts';
import { runs } from '../../runs.ts';
import { askFor, offAxis, posed, targetOf } from './standing.ts';

/** Rounding of lengths of some metres, mm. */
const DUST = 1e-6;

/** A point turned about a line (a unit vector through another point), by Rodrigues' formula. */
function turned(point: Vec3, about: Vec3, line: Vec3, angle: number): Vec3 {
  const arm = subtract(point, about);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return add(about, add(add(scale(arm, cos), scale(cross(line, arm), sin)), scale(line, dot(line, arm) * (1 - cos))));
}

test('a riser and a shim, solved forward again, bring the axis on to the target', () => {
  let [risers, fronts, rears] = [0, 0, 0];
  const anyStand = fc.record({ tilt: numberFrom(-3, 22), lift: numberFrom(5, 120), miss: numberFrom(2, 20) });
  fc.assert(
    fc.property(
      anyDesk,
      anyStand,
      numberFrom(-60, 40),
      numberFrom(120, 300),
      (changes, { tilt, lift, miss }, front, length) => {
        const read = checkProject(demoWith(changes));
        if (!read.ok) return;
        const layout = firstLayout(read.value);
        const plain = askFor(layout, tilt, lift, { allowed: { miss } });
        const footprint = [[80, front], [80, front + length], [-80, front + length], [-80, front]] as const; // prettier-ignore
        const withBase = { ...plain.stands.left, footprint };
        const ask = { ...plain, stands: { left: withBase, right: withBase } };
        const task = taskOf(read.value, layout, ask);
        for (const name of sideNames) {
          const side = sideOf(task, name, ask.allowed);
          const mark = layout.placement[name];
          const run = side.chart.turned(markSeen(layout, name))?.run;
          const before = posed(read.value, layout, ask, name, mark);
          if (run === undefined || run < 150 || !before) continue;
          for (const { under, thickness, from, to, then } of packingOf(task, side, run, ask.allowed)) {
            const packed = { ...ask, stands: { ...ask.stands, [name]: { ...withBase, ...then } } };
            const after = posed(read.value, layout, packed, name, mark);
            if (!after) throw new Error('a packed stand is aimed as any other');
            expect(offAxis(after, targetOf(layout, name, after))).toBeLessThan(DUST);
            expect(from).toBeLessThanOrEqual(thickness);
            expect(to).toBeGreaterThanOrEqual(thickness);
            if (under === 'base') {
              risers++;
              expect(after.lift - before.lift).toBeCloseTo(thickness, 6);
              continue;
            }
            // The body itself, turned about the edge of its base that stays down, then slid over its mark again.
            const turn = Math.asin(thickness / length) * (under === 'front' ? 1 : -1);
            if (under === 'front') fronts++;
            else rears++;
            const pivot = add(before.mark, scale(before.rearLevel, under === 'front' ? front + length : front));
            const line = cross(vec3(0, 0, 1), before.rearLevel);
            const body = (point: Vec3): Vec3 => turned(point, pivot, line, turn);
            const edge = body(vec3(before.mark.x, before.mark.y, before.frontEdgeHeight));
            const slid = subtract(vec3(before.mark.x, before.mark.y, edge.z), edge);
            const aimed = add(body(before.aimedPoint), slid);
            expect(aimed.x).toBeCloseTo(after.aimedPoint.x, 6);
            expect(aimed.y).toBeCloseTo(after.aimedPoint.y, 6);
            expect(aimed.z).toBeCloseTo(after.aimedPoint.z, 6);
            // The shim lifts the other edge of the base by its thickness.
            const other = add(before.mark, scale(before.rearLevel, under === 'front' ? front : front + length));
            expect(body(other).z).toBeCloseTo(thickness, 6);
          }
        }
      },
    ),
    { numRuns: runs(400) },
  );
  expect(risers).toBeGreaterThan(5);
  expect(fronts).toBeGreaterThan(1);
  expect(rears).toBeGreaterThan(1);
});
