import { describe, expect, it } from 'vitest';
import { withLayoutAdded, withoutLayout } from '$lib/project/layouts.ts';
import { withLayouts } from '$lib/document/layoutEdit.ts';
import { valueAt } from '$lib/document/pointer.ts';
import { demoWith } from '../projects.ts';

describe('layouts of a draft', () => {
  it('can be rearranged while a value in them is half typed', () => {
    const draft = demoWith({ '/layouts/0/desk/outline/width': 'wid' });
    const added = withLayouts(draft, (layouts) => withLayoutAdded(layouts, 0));
    expect(added.ok).toBe(true);
    const after = added.ok ? added.value : null;
    expect(valueAt(after, '/layouts/1/name')).toBe('window side 2');
    expect(valueAt(after, '/layouts/1/desk/outline/width')).toBe('wid');
    expect(valueAt(after, '/speaker')).toBe(valueAt(draft, '/speaker'));
    expect(valueAt(draft, '/layouts/1')).toBeUndefined();
  });

  it('stay as they are, with the reason, where an operation refuses', () => {
    expect(withLayouts(demoWith(), (layouts) => withoutLayout(layouts, 0))).toMatchObject({
      ok: false,
      faults: [{ pointer: '/layouts', message: 'expected at least one layout, got none: the last one stays' }],
    });
  });

  it('are left alone where they have no names', () => {
    expect(withLayouts(demoWith({ '/layouts/0': 7 }), (layouts) => withLayoutAdded(layouts, 0))).toEqual({
      ok: false,
      faults: [{ pointer: '/layouts', message: 'expected layouts that have names' }],
    });
  });
});
