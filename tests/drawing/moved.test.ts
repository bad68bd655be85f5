import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frontHandles } from '$lib/drawing/frontHandles.ts';
import type { Grip, Handle } from '$lib/drawing/handle.ts';
import { sideHandles, topHandles } from '$lib/drawing/handles.ts';
import { spokenHandle } from '$lib/drawing/handleText.ts';
import { gridFor, moved, nudged, type Holding } from '$lib/drawing/moved.ts';
import type { SheetSource } from '$lib/drawing/sheetSource.ts';
import { checkProject } from '$lib/project/parse.ts';
import { solve } from '$lib/solution/solve.ts';
import { sideNames, type SideName } from '$lib/project/project.ts';
import { withEdits } from '$lib/document/edit.ts';
import { valueAt } from '$lib/document/pointer.ts';
import { scenes } from './arbitraries.ts';
import { scene, type Scene } from './scene.ts';
import { runs } from '../runs.ts';

const free: Holding = { grid: gridFor('mm', true), aligns: false, reach: 0, oneAxis: false };
const held: Holding = { grid: gridFor('mm', false), aligns: true, reach: 8, oneAxis: false };
const source = (made: Scene, side: SideName = 'right'): SheetSource => ({ ...made, layoutIndex: 0, side });
const everyHandle = (made: Scene, side: SideName): readonly (readonly Handle[])[] => [
  topHandles(source(made, side)),
  sideHandles(source(made, side), -700, 600),
  frontHandles(source(made, side)),
];
const gripsOf = ({ across, up }: Handle): Grip[] => [across, up].flatMap((grip) => (grip ? [grip] : []));
const by = fc.tuple(fc.integer({ min: -40, max: 40 }), fc.integer({ min: -40, max: 40 }));

/** The handles of a view, drawn again after a move; null where the moved project has no plan. */
function handlesAfter(made: Scene, grips: ReturnType<typeof moved>, pick: (made: Scene) => readonly Handle[]) {
  const changed = checkProject(
    withEdits(
      made.project,
      grips.map(({ grip, value }) => [grip.input, value] as const),
    ),
  );
  const [layout] = changed.ok ? changed.value.layouts : [];
  if (!changed.ok || !layout) return null;
  const outcome = solve(changed.value, layout);
  return outcome.ok ? pick({ project: changed.value, layout, plan: outcome.value }) : null;
}

describe('handles', () => {
  it('hold the very numbers of the project, each within its range', () => {
    fc.assert(
      fc.property(scenes, fc.constantFrom(...sideNames), (made, side) => {
        for (const handles of everyHandle(made, side)) {
          expect(new Set(handles.map(({ id }) => id)).size).toBe(handles.length);
          for (const { value, input, range } of handles.flatMap(gripsOf)) {
            expect(valueAt(made.project, input), input).toBe(value);
            expect(value).toBeGreaterThanOrEqual(range.min);
            expect(value).toBeLessThanOrEqual(range.max);
          }
        }
      }),
      { numRuns: runs(30) },
    );
  });

  it('follow the pointer: what is held moves by as much as the pointer did', () => {
    // Held where the number itself is drawn: a cabinet turns as its mark moves, so that its middle runs another way.
    const exact = /head|monitor|desk|wall|driver/;
    fc.assert(
      fc.property(scenes, fc.constantFrom(...sideNames), fc.nat(2), by, (made, side, view, [dx, dy]) => {
        const pick = (of: Scene): readonly Handle[] => everyHandle(of, side)[view] ?? [];
        for (const handle of pick(made).filter(({ id }) => exact.test(id))) {
          const after = handlesAfter(made, moved(handle, [dx, dy], free), pick)?.find(({ id }) => id === handle.id);
          if (!after) continue;
          // A wall is held at a share of its own height, which follows what stands below it.
          if (handle.across) expect(after.at[0] - handle.at[0], handle.id).toBeCloseTo(dx, 6);
          if (handle.up) expect(after.at[1] - handle.at[1], handle.id).toBeCloseTo(dy, 6);
        }
      }),
      { numRuns: runs(25) },
    );
  });

  it('move a mark under the pointer, to either side alike', () => {
    const made = scene();
    for (const side of sideNames) {
      const handle = topHandles(source(made)).find(({ id }) => id === `handle-speaker-${side}`);
      if (!handle) throw new Error('expected a loudspeaker');
      const { x, y } = made.layout.placement[side];
      const values = moved(handle, [30, 20], free).map(({ value }) => value);
      // The desk’s width runs along the view’s first axis, its depth along the second.
      expect(values).toEqual([x + 30, y + 20]);
    }
  });

  it('say what they are and where', () => {
    const [head] = topHandles(source(scene({ offset: -40 }))).filter(({ id }) => id === 'handle-head');
    if (!head) throw new Error('expected a head');
    expect(spokenHandle(head, { length: 'mm', fraction: null })).toBe(
      'Head: 40 millimetres left of the middle, 180 millimetres in front of the desk’s edge',
    );
  });

  it('have no lift where the tilt rule finds it', () => {
    const made = scene({ tilt: { rule: 'lift-to-ear', degrees: 12 } });
    const box = sideHandles(source(made), -700, 600).find(({ id }) => id === 'handle-speaker-right');
    expect([box?.across?.input, box?.up]).toEqual(['/layouts/0/placement/right/y', null]);
  });
});

describe('moved', () => {
  const handle = (made = scene()): Handle => {
    const found = topHandles(source(made)).find(({ id }) => id === 'handle-speaker-right');
    if (!found) throw new Error('expected a loudspeaker');
    return found;
  };

  it('comes to multiples of the grid, within the range, no further off than half of it', () => {
    const way = fc.integer({ min: -20000, max: 20000 });
    fc.assert(
      fc.property(way, way, fc.constantFrom<'mm' | 'in'>('mm', 'in'), (dx, dy, unit) => {
        const grid = gridFor(unit, false);
        for (const { grip, value } of moved(handle(), [dx, dy], { ...held, aligns: false, grid })) {
          const asked = grip.value + grip.rate * (grip.input.endsWith('/x') ? dx : dy);
          const { min, max } = grip.range;
          expect(value).toBeGreaterThanOrEqual(min);
          expect(value).toBeLessThanOrEqual(max);
          if (value === min || value === max || asked === grip.value) continue;
          expect(Math.abs(value - asked)).toBeLessThanOrEqual(grid / 2 + 1e-9);
          expect(Math.abs(value / grid - Math.round(value / grid))).toBeLessThan(1e-9);
        }
      }),
    );
  });

  it('leaves an axis alone that nobody moved along, off the grid or on it', () => {
    const made = scene({ right: { x: 433, y: 302 } });
    expect(moved(handle(made), [0, 30], held).map(({ value }) => value)).toEqual([433, 330]);
  });

  it('keeps to the longer way with one axis held', () => {
    fc.assert(
      fc.property(by, ([dx, dy]) => {
        const [across, depth] = moved(handle(), [dx, dy], { ...free, oneAxis: true });
        const kept = Math.abs(dx) >= Math.abs(dy) ? depth : across;
        expect(kept?.value).toBe(kept?.grip.value);
      }),
    );
  });

  it('is drawn to what is worth keeping to, and only from near by', () => {
    // The other mark stands 437 mm from the middle and 291 mm from the edge: no multiples of the grid.
    const made = scene({ left: { x: -437, y: 291 }, right: { x: 460, y: 320 } });
    const near = moved(handle(made), [-20, -26], held);
    expect(near.map(({ value, aligned }) => [value, aligned])).toEqual([
      [437, true],
      [291, true],
    ]);
    const far = moved(handle(made), [-5, -10], held);
    expect(far.map(({ value, aligned }) => [value, aligned])).toEqual([
      [455, false],
      [310, false],
    ]);
    const loose = moved(handle(made), [-20, -26], { ...held, aligns: false });
    expect(loose.map(({ value }) => value)).toEqual([440, 295]);
  });

  it('brings what stood off the middle to its middle', () => {
    const head = topHandles(source(scene({ offset: 33 }))).find(({ id }) => id === 'handle-head');
    if (!head) throw new Error('expected a head');
    const [across] = moved(head, [-30, 0], held);
    expect([across?.value, across?.aligned]).toEqual([0, true]);
  });

  it('nudges along the axis of the view, back and forth to the same number, held within the range', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100 }), (step) => {
        for (const grip of gripsOf(handle())) {
          expect(nudged({ ...grip, value: nudged(grip, step) }, -step)).toBe(grip.value);
          expect(nudged({ ...grip, value: grip.range.max }, Math.sign(grip.rate) * step)).toBe(grip.range.max);
        }
      }),
    );
    const right = gripsOf(handle()).find(({ input }) => input.endsWith('right/x'));
    // To the right on the view is to the right on the desk.
    expect(right && nudged(right, 1)).toBe(431);
  });
});
