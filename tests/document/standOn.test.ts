import { describe, expect, test } from 'vitest';
import { withEdits } from '$lib/document/edit.ts';
import { newSurface } from '$lib/document/newSurface.ts';
import { standOn, withCarriers } from '$lib/document/standOn.ts';
import { withoutSurface } from '$lib/document/withoutEntry.ts';
import { referencesTo } from '$lib/document/references.ts';
import { faultLine } from '$lib/project/fault.ts';
import { checkProject } from '$lib/project/parse.ts';
import { firstLayout, project } from '../projects.ts';

const at = (side: string, key: string): string => `/layouts/0/placement/${side}/${key}`;
const shelf = { name: 'shelf', y: 560, width: 1200, depth: 240, height: 1180 };
const withShelf = project({ '/layouts/0/surfaces': [shelf] });
const onShelf = project({
  '/layouts/0/surfaces': [shelf],
  '/layouts/0/placement': { left: { x: -430, y: 600, on: 'shelf' }, right: { x: 430, y: 600, on: 'shelf' } },
});

describe('a mark that is moved', () => {
  const carriers = (of: typeof withShelf, edits: readonly (readonly [string, number])[], both = false) =>
    withCarriers(firstLayout(of), 0, edits, both).filter(([pointer]) => pointer.endsWith('/on'));

  test('onto a surface stands on it, and the other one that mirrors it too', () => {
    const move = [[at('right', 'y'), 600]] as const;
    expect(carriers(withShelf, move)).toEqual([[at('right', 'on'), 'shelf']]);
    expect(carriers(withShelf, move, true)).toEqual([
      [at('left', 'on'), 'shelf'],
      [at('right', 'on'), 'shelf'],
    ]);
  });

  test('off it onto the desk stands on that', () => {
    expect(carriers(onShelf, [[at('right', 'y'), 400]])).toEqual([[at('right', 'on'), 'desk']]);
  });

  test('within it, or off it where nothing is, stays on it', () => {
    expect(carriers(onShelf, [[at('right', 'y'), 700]])).toEqual([[at('right', 'on'), 'shelf']]);
    expect(carriers(onShelf, [[at('right', 'x'), 1400]])).toEqual([[at('right', 'on'), 'shelf']]);
  });

  test('under a surface that it was under before stays on the desk', () => {
    const under = project({ '/layouts/0/surfaces': [{ ...shelf, y: 200, height: 1400 }] });
    expect(carriers(under, [[at('right', 'y'), 320]])).toEqual([[at('right', 'on'), 'desk']]);
  });

  test('of a project without surfaces is that move', () => {
    const move = [[at('right', 'y'), 600]] as const;
    expect(withCarriers(firstLayout(project()), 0, move, true)).toBe(move);
  });
});

describe('a loudspeaker that is put', () => {
  test('on a surface has its mark on it, with room for the cabinet behind', () => {
    const put = checkProject(withEdits(withShelf, standOn(withShelf, 0, 'right', 'shelf', false)));
    expect(put.ok && put.value.layouts[0]?.placement.right).toEqual({ x: 430, y: 560, on: 'shelf' });
    const deep = project({
      '/layouts/0/surfaces': [{ ...shelf, width: 400, depth: 400, y: 400, x: 100, height: 1400 }],
    });
    expect(standOn(deep, 0, 'right', 'shelf', true).map(([, value]) => value)).toEqual(['shelf', 217.5, 400]);
  });

  test('back on the desk, or on the floor, keeps its place, as the other one does that mirrors it', () => {
    expect(standOn(onShelf, 0, 'left', 'floor', true)).toEqual([
      [at('left', 'on'), 'floor'],
      [at('left', 'x'), -430],
      [at('left', 'y'), 600],
      [at('right', 'on'), 'floor'],
    ]);
  });
});

describe('a surface', () => {
  test('that is added is sound, one after the other', () => {
    let of = project();
    for (let count = 0; count < 3; count++) {
      const layout = firstLayout(of);
      const next = checkProject(withEdits(of, [[`/layouts/0/surfaces/${count}`, newSurface(layout)]]));
      expect(next.ok ? [] : next.faults.map(faultLine)).toEqual([]);
      if (next.ok) of = next.value;
    }
    expect(firstLayout(of).surfaces.map(({ name, height }) => [name, height])).toEqual([
      ['shelf', 1180],
      ['shelf 2', 1500],
      ['shelf 3', 1820],
    ]);
  });

  test('that is removed leaves what was on it to the desk', () => {
    const rest = checkProject(withoutSurface(onShelf, '/layouts/0', 0));
    expect(rest.ok && rest.value.layouts[0]?.placement.left.on).toBe('desk');
  });

  test('takes its name along where it is changed', () => {
    expect(referencesTo(onShelf, '/layouts/0/surfaces/0/name')).toEqual([at('left', 'on'), at('right', 'on')]);
  });
});
