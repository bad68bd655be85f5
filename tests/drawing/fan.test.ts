import { describe, expect, test } from 'vitest';
import { headIn } from '$lib/layout/ears.ts';
import { fromAbove, fromRight, type Projection } from '$lib/drawing/projection.ts';
import { sideView } from '$lib/drawing/sideView.ts';
import { topView } from '$lib/drawing/topView.ts';
import type { View } from '$lib/drawing/view.ts';
import { plan } from '$lib/solution/plan.ts';
import { firstLayout, project } from '../projects.ts';

const postures = [
  { name: 'leaning in', setback: 60, earHeight: 1150 },
  { name: 'standing', setback: 350, earHeight: 1560 },
];

function viewsWith(over: unknown): { readonly top: View; readonly side: View } {
  const of = project({ '/layouts/0/listener/postures': postures, '/layouts/0/aim/over': over });
  const layout = firstLayout(of);
  const planned = plan(of, layout);
  if (!planned.ok) throw new Error('it has a plan');
  return {
    top: topView(of.speaker, layout, 0, planned.value),
    side: sideView(of.speaker, layout, 0, planned.value, 'right', 'true'),
  };
}

const fanOf = ({ items }: View) => items.filter(({ id }) => /^fan-|-posture-|^posture-/.test(id));
const waysOf = ({ items }: View) =>
  items.flatMap((item) => (item.kind === 'outline' && item.id.startsWith('fan-') ? [item.points.at(-1)] : []));
const namesOf = (view: View) => fanOf(view).flatMap((item) => (item.kind === 'label' ? [item.text] : []));

describe('the fan of heads', () => {
  test('is not there while the aim is for the seat alone', () => {
    for (const over of [null, { postures: [] }])
      for (const view of Object.values(viewsWith(over))) expect(fanOf(view)).toEqual([]);
  });

  test.each<{ view: 'top' | 'side'; each: number; projection: Projection }>([
    { view: 'top', each: 2, projection: fromAbove },
    { view: 'side', each: 1, projection: fromRight },
  ])('has in the $view view a thin head with its name for each posture, and the ways to it', (expected) => {
    const of = project({ '/layouts/0/listener/postures': postures });
    const layout = firstLayout(of);
    const { listener } = layout;
    const shown = viewsWith({ postures: 'all' })[expected.view];
    const heads = listener.postures.map((one) => expected.projection.flat(headIn(one, layout, 'right')));
    expect(waysOf(shown)).toEqual(heads.flatMap((head) => Array.from({ length: expected.each }, () => head)));
    expect(namesOf(shown)).toEqual(['leaning in', 'standing']);
    const [left, bottom, right, top] = shown.extent;
    for (const [x, y] of heads) expect([x > left, x < right, y > bottom, y < top]).toEqual([true, true, true, true]);
    expect(new Set(shown.items.map(({ id }) => id)).size).toBe(shown.items.length);
  });

  test('has the chosen postures only', () => {
    expect(namesOf(viewsWith({ postures: ['standing'] }).side)).toEqual(['standing']);
  });
});
