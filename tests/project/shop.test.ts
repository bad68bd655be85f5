import { expect, test } from 'vitest';
import { checkProject } from '$lib/project/parse.ts';
import { faultLine } from '$lib/project/fault.ts';
import { demoWith, project } from '../projects.ts';

test('a file without a workshop has a table saw of the common size, no band saw, no router, nothing known of the glue', () => {
  expect(project({ '/shop': undefined }).shop).toEqual({
    saw: { depth: 80, tiltsMost: 45, tilts: 'left' },
    bandSaw: null,
    router: { bit: null, tab: null },
    glue: { line: null, open: null, clamp: null, clamps: null, opening: null },
  });
});

test('what a file says of its workshop is kept, the rest filled in', () => {
  const { shop } = project({ '/shop': { saw: { tilts: 'right' }, bandSaw: { height: 250 }, router: { bit: 6 } } });
  expect(shop).toMatchObject({
    saw: { depth: 80, tilts: 'right' },
    bandSaw: { height: 250, tiltsMost: 45 },
    router: { bit: 6, tab: null },
  });
});

test.each([
  [{ saw: { depth: 0 } }, '/shop/saw/depth: expected a length over 0 mm, got 0'],
  [{ saw: { tilts: 'both' } }, '/shop/saw/tilts: expected "left" or "right", got "both"'],
  [{ bandSaw: {} }, '/shop/bandSaw/height: expected a length from 5 to 1000 mm, got nothing'],
  [{ router: { tab: { width: 6 } } }, '/shop/router/tab/height: expected a length from 0.5 to 50 mm, got nothing'],
  [{ glue: { opening: 5 } }, '/shop/glue/opening: expected a length from 20 to 3000 mm, got 5'],
  [{ glue: { clamps: 1.5 } }, '/shop/glue/clamps: expected a whole number from 1 to 200, got 1.5'],
])('%j is refused', (shop, fault) => {
  const checked = checkProject(demoWith({ '/shop': shop }));
  expect(checked.ok ? [] : checked.faults.map(faultLine)).toEqual([fault]);
});
