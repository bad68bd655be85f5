import { expect, test } from 'vitest';
import { asBuilt } from '$lib/files/buildSheet/asBuilt.ts';
import { plan } from '$lib/solution/plan.ts';
import { firstLayout, project } from '../../projects.ts';

function sectionsOf(changes: Record<string, unknown>) {
  const of = project(changes);
  const made = plan(of, firstLayout(of));
  if (!made.ok) throw new Error('it has an answer');
  return asBuilt({ plan: made.value, sheets: [] });
}

test('the record is told in the order of the work, with what was not known', () => {
  const stand = { tilt: 15, toe: 40, lift: 12 };
  const record = [
    { side: 'left', date: '14 March', note: 'dry stack', stand, pass: { right: 12, over: -5, sure: 7.6 }, done: [{ act: 'shim', where: 'rear', by: 1.62 }, { act: 'turn', by: 0.84 }] },
    { side: 'right', stand, done: [{ act: 'leave' }] },
  ]; // prettier-ignore
  const [section] = sectionsOf({ '/layouts/0/built': { sides: { left: {}, right: {} }, record } });
  const items = section?.blocks.flatMap((block) => (block.kind === 'list' ? block.items : [])) ?? [];
  expect(items.map((item) => item.replaceAll('\u202f', ' '))).toEqual([
    'Left stand, 14 March, dry stack: the axis passed the head by 13 mm ± 8 mm; 1.6 mm of card, rear edge; turned in 0.8°.',
    'Right stand: where the axis passes was not known; left as it was.',
  ]);
});

test('nothing is told before there is a record', () => {
  expect(sectionsOf({})).toEqual([]);
  expect(sectionsOf({ '/layouts/0/built': { sides: { left: {}, right: {} } } })).toEqual([]);
});
