import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Result } from '$lib/project/fault.ts';
import {
  indexAfterMove,
  withLayoutAdded,
  withLayoutDuplicated,
  withLayoutMoved,
  withoutLayout,
} from '$lib/project/layouts.ts';
import { MOST_LAYOUTS } from '$lib/project/limits.ts';
import { checkProject } from '$lib/project/parse.ts';
import type { Layout } from '$lib/project/project.ts';
import { faultLine } from '$lib/project/fault.ts';
import { firstLayout, project } from '../projects.ts';
import { runs } from '../runs.ts';

const sound = project();
const first = firstLayout(sound);
const three: readonly Layout[] = ['window side', 'wall side', 'by the door'].map((name) => ({ ...first, name }));
const names = (layouts: readonly Layout[]): string[] => layouts.map(({ name }) => name);

function valueOf<Value>(result: Result<Value>): Value {
  if (!result.ok) throw new Error(result.faults.map(faultLine).join());
  return result.value;
}

describe('a list of layouts', () => {
  it('gets a copy of the current one at its end', () => {
    const list = valueOf(withLayoutAdded(three, 1));
    expect(names(list)).toEqual(['window side', 'wall side', 'by the door', 'wall side 2']);
    expect(list[3]).toEqual({ ...three[1], name: 'wall side 2' });
    expect(list[1]).toBe(three[1]);
  });

  it('gets a copy right after the one that is duplicated', () => {
    const twice = valueOf(withLayoutDuplicated(valueOf(withLayoutDuplicated(three, 0)), 0));
    expect(names(twice)).toEqual(['window side', 'window side 3', 'window side 2', 'wall side', 'by the door']);
  });

  it('loses one, but never the last', () => {
    expect(names(valueOf(withoutLayout(three, 1)))).toEqual(['window side', 'by the door']);
    expect(withoutLayout([first], 0)).toEqual({
      ok: false,
      faults: [{ pointer: '/layouts', message: 'expected at least one layout, got none: the last one stays' }],
    });
  });

  it('holds no more than a project may', () => {
    const full = Array.from({ length: MOST_LAYOUTS }, (_, index) => ({ ...first, name: `layout ${index + 1}` }));
    expect(checkProject({ ...sound, layouts: full }).ok).toBe(true);
    const refused = {
      ok: false,
      faults: [
        {
          pointer: '/layouts',
          message: `expected at most ${MOST_LAYOUTS} layouts, got ${MOST_LAYOUTS + 1}: delete one first`,
        },
      ],
    };
    expect(withLayoutAdded(full, 0)).toEqual(refused);
    expect(withLayoutDuplicated(full, 0)).toEqual(refused);
  });

  it.each([-1, 3, 0.5, NaN])('says that there is no layout at %s', (index) => {
    const refused = {
      ok: false,
      faults: [{ pointer: `/layouts/${index}`, message: `expected the place of a layout from 0 to 2, got ${index}` }],
    };
    expect(withLayoutAdded(three, index)).toEqual(refused);
    expect(withLayoutDuplicated(three, index)).toEqual(refused);
    expect(withoutLayout(three, index)).toEqual(refused);
    expect(withLayoutMoved(three, index, 0)).toEqual(refused);
    expect(withLayoutMoved(three, 0, index)).toEqual(refused);
  });

  it('moves one, keeps the order of the rest, and the index of each follows', () => {
    const at = fc.integer({ min: 0, max: 5 });
    const six = Array.from({ length: 6 }, (_, index) => ({ name: `layout ${index}` }));
    fc.assert(
      fc.property(at, at, at, (from, to, chosen) => {
        const moved = valueOf(withLayoutMoved(six, from, to));
        expect(moved[to]).toBe(six[from]);
        expect(moved.filter((entry) => entry !== six[from])).toEqual(six.filter((entry) => entry !== six[from]));
        expect(moved[indexAfterMove(chosen, from, to)]).toBe(six[chosen]);
      }),
    );
  });

  it('stays a sound project through any sequence', () => {
    const at = fc.integer({ min: 0, max: 7 });
    const step = fc.oneof(
      fc.tuple(fc.constant(withLayoutAdded<Layout>), at, at),
      fc.tuple(fc.constant(withLayoutDuplicated<Layout>), at, at),
      fc.tuple(fc.constant(withoutLayout<Layout>), at, at),
      fc.tuple(fc.constant(withLayoutMoved<Layout>), at, at),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 20 }), (steps) => {
        const layouts = steps.reduce((list: readonly Layout[], [operation, index, to]) => {
          const result = operation(list, index, to);
          return result.ok ? result.value : list;
        }, sound.layouts);
        expect(checkProject({ ...sound, layouts })).toMatchObject({ ok: true });
      }),
      { numRuns: runs(50) },
    );
  });
});
