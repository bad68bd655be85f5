import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changedPointers, changeLabel } from '$lib/document/changes.ts';
import { valueAt, withValue } from '$lib/document/pointer.ts';
import { demoWith } from '../projects.ts';

const before = demoWith();

describe('what a change is called', () => {
  it.each([
    [{ '/layouts/0/listener/earHeight': 1200 }, 'Listener, ear height'],
    [{ '/speaker/drivers/1/height': 90 }, 'Loudspeaker, driver 2, centre height'],
    [{ '/layouts/0/placement/left/x': -400, '/layouts/0/placement/right/x': 400 }, 'Placement'],
    [{ '/layouts/0/monitors': [] }, 'Screens'],
    [{ '/title': 'Attic' }, 'Title'],
    [{ '/display/length': 'in' }, 'Units'],
    [{ '/layouts/0/name': 'wall side' }, 'Layout name'],
    [{ '/layouts': [] }, 'Layouts'],
    [{ '/speaker/drivers/0/name': 'dome', '/layouts/0/aim/through': 'dome' }, 'Loudspeaker, driver 1, name'],
    [{ '/layouts/0/desk/outline/width': 1500, '/layouts/0/stand/lift': 9 }, 'Desk, width'],
  ])('%j is %j', (changes, label) => {
    expect(changeLabel(before, demoWith(changes))).toBe(label);
  });
});

describe('where two documents differ', () => {
  it('is nowhere for the same', () => {
    expect(changedPointers(before, demoWith())).toEqual([]);
  });

  it('names keys that came and went, and escapes them', () => {
    expect(changedPointers({ 'a/b': 1, c: 2 }, { c: 2, 'd~': 3 })).toEqual(['/a~1b', '/d~0']);
    expect(changedPointers([1, 2], [1, 2, 3])).toEqual(['']);
    expect(changedPointers({ a: [] }, { a: {} })).toEqual(['/a']);
    expect(changedPointers(1, 2)).toEqual(['']);
  });

  it('is all there is to copy to turn one into the other', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), (one, other) => {
        const turned = changedPointers(one, other).reduce(
          (done: unknown, pointer) => withValue(done, pointer, valueAt(other, pointer)),
          one,
        );
        expect(JSON.parse(JSON.stringify(turned))).toEqual(JSON.parse(JSON.stringify(other)));
      }),
    );
  });
});
