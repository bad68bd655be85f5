import { describe, expect, test } from 'vitest';
import { degrees, radians } from '$lib/geometry/angle.ts';
import { checkProject } from '$lib/project/parse.ts';
import { sideNames, type Layout, type Project } from '$lib/project/project.ts';
import { plan } from '$lib/solution/plan.ts';
import { DEAD_ON, placeExisting, type Placing } from '$lib/study/placeExisting.ts';
import { firstLayout, project } from '../projects.ts';
import { askFor } from './placing/standing.ts';

/** Rounding of lengths of some metres, mm. */
const DUST = 1e-6;

const seat = { setback: { from: 0, to: 600 }, earHeight: { from: 1000, to: 1400 } };

/** The plan of a way, as its layout is solved when it is added to the project. */
function planOf(of: Project, layout: Layout) {
  const read = checkProject({ ...of, layouts: [layout] });
  if (!read.ok) throw new Error('it is a sound layout');
  const made = plan(read.value, firstLayout(read.value), false);
  if (!made.ok) throw new Error('it has a plan');
  return made.value;
}

function eachWay(of: Project, { ways }: Placing, most: number) {
  expect(ways.length).toBeGreaterThan(0);
  for (const way of ways) {
    if (!way.layout) throw new Error('both stands are alike');
    const planned = planOf(of, way.layout);
    for (const side of sideNames) {
      expect(planned.sides[side].miss).toBeLessThanOrEqual((way.deadOn ? DEAD_ON : most) + DUST);
      expect(planned.sides[side].miss).toBeCloseTo(way.at[side].miss, 9);
      expect(Math.abs(way.at[side].over)).toBeCloseTo(way.at[side].miss, 6);
      expect(planned.sides[side].toe).toBeCloseTo(way.at[side].toe, 9);
    }
  }
  const totals = ways.map(({ total }) => total);
  expect(totals).toEqual([...totals].sort((a, b) => a - b));
}

describe('ways of using stands that exist', () => {
  test('move marks, seat or ears, what moves least first, and hit when they are planned', () => {
    const of = project();
    const layout = firstLayout(of);
    const placing = placeExisting(of, layout, askFor(layout, 15, 12, { allowed: { miss: 3 }, ...seat }));
    eachWay(of, placing, 3);
    expect(placing.mirrored).toBe(true);
    expect(new Set(placing.ways.map(({ moves }) => moves))).toEqual(new Set(['marks', 'setback', 'earHeight']));
    const marks = placing.ways.filter(({ moves }) => moves === 'marks');
    expect(marks.map(({ deadOn }) => deadOn)).toEqual([false, true]);
    for (const { at } of marks) {
      expect([at.left.mark.x, at.left.mark.y]).toEqual([-at.right.mark.x, at.right.mark.y]);
    }
    // Seats: inside a stretch both hit, outside one does not.
    for (const { from, to } of placing.setbacks ?? []) {
      const misses = (setback: number) => {
        const at = { ...layout, listener: { ...layout.listener, setback }, aim: { ...layout.aim, tilt: { rule: 'as-set', degrees: 15 } } } as const; // prettier-ignore
        const { left, right } = planOf(of, at).sides;
        return Math.max(left.miss, right.miss);
      };
      expect(misses(from)).toBeLessThanOrEqual(3 + DUST);
      expect(misses(to)).toBeCloseTo(3, 3);
      expect(misses((from + to) / 2)).toBeLessThan(3);
      expect(misses(to + 1)).toBeGreaterThan(3);
    }
    expect(placing.setbacks).toHaveLength(1);
  });

  test('leave all as it is where the stands are those that the layout asks for', () => {
    const of = project();
    const layout = firstLayout(of);
    const { tilt, lift } = planOf(of, layout).sides.right;
    const { ways, sides } = placeExisting(of, layout, askFor(layout, tilt, lift, { allowed: 'safe-zone', ...seat }));
    expect(ways.map(({ moves, deadOn, total }) => ({ moves, deadOn, total }))).toEqual([{ moves: 'nothing', deadOn: true, total: 0 }]); // prettier-ignore
    const { x, y } = layout.placement.left;
    expect(sides.left.nearest).toEqual({ x, y, move: 0 });
  });

  test('keep the safe zone where no number is given: the treble at the head falls by 3 dB at its edge', () => {
    const of = project();
    const layout = firstLayout(of);
    const planned = planOf(of, layout).sides.right.tilt;
    const wide = placeExisting(of, layout, askFor(layout, planned + 3, 12, { allowed: 'safe-zone' }));
    const close = placeExisting(of, layout, askFor(layout, planned + 3, 12, { allowed: { miss: 1 } }));
    const [zone, near] = [wide, close].map(({ ways }) => ways.find(({ deadOn }) => !deadOn)?.total ?? NaN);
    expect(zone).toBeLessThan(near ?? 0);
  });

  test('say by which shim or riser they would do where nothing will', () => {
    const of = project();
    const layout = firstLayout(of);
    const { ways, sides } = placeExisting(of, layout, askFor(layout, 4, 12, { allowed: { miss: 5 } }));
    expect(ways).toEqual([]);
    expect(sides.right.regions).toEqual([]);
    expect(sides.right.nearest).toBeNull();
    const riser = sides.right.packing.find(({ under }) => under === 'base');
    if (!riser) throw new Error('there is a riser');
    const { tilt, lift } = riser.then;
    const packed = { ...layout, aim: { ...layout.aim, tilt: { rule: 'as-set', degrees: degrees(tilt) } as const }, stand: { ...layout.stand, lift } }; // prettier-ignore
    expect(planOf(of, packed).sides.right.miss).toBeLessThan(DUST);
    expect(sides.left.packing).toEqual(sides.right.packing);
  });

  test('have no layout where left and right differ, and each its own marks', () => {
    const of = project();
    const layout = firstLayout(of);
    const ask = askFor(layout, 18, 12);
    const left = { ...ask.stands.left, tilt: radians(16) };
    const { ways, sides } = placeExisting(of, layout, { ...ask, stands: { ...ask.stands, left } });
    expect(ways.every((way) => way.layout === null)).toBe(true);
    expect(sides.left.nearest?.move).not.toBeCloseTo(sides.right.nearest?.move ?? 0, 1);
  });
});
