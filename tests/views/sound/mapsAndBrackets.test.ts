import fc from 'fast-check';
import { expect, test } from 'vitest';
import { awayFrom } from '$lib/views/sound/awayFrom.ts';
import { bracketsOf } from '$lib/views/sound/chartScale.ts';
import { runs } from '../../runs.ts';

test('neighbours of one name share a bracket, one by itself has none', () => {
  const marks = [
    { x: 300, text: 'desk' },
    { x: 100, text: 'drivers apart' },
    { x: 200, text: 'desk' },
    { x: 400, text: 'wall behind' },
    { x: 500, text: 'desk' },
    { x: 600, text: 'desk' },
    { x: 700, text: 'desk' },
  ];
  expect(bracketsOf(marks)).toEqual([
    { text: 'desk', from: 200, to: 300, count: 2 },
    { text: 'desk', from: 500, to: 700, count: 3 },
  ]);
});

test('brackets never overlap and hold only marks of their name', () => {
  const mark = fc.record({ x: fc.integer({ min: 0, max: 900 }), text: fc.constantFrom('desk', 'wall', 'screen 1') });
  let seen = 0;
  fc.assert(
    fc.property(fc.uniqueArray(mark, { selector: ({ x }) => x, maxLength: 20 }), (marks) => {
      const brackets = bracketsOf(marks);
      seen += brackets.length;
      for (const [index, { from, to, text, count }] of brackets.entries()) {
        const inside = marks.filter(({ x }) => x >= from && x <= to);
        expect(inside.map((one) => one.text)).toEqual(Array.from({ length: count }, () => text));
        expect(from).toBeGreaterThan(brackets[index - 1]?.to ?? -1);
      }
    }),
    { numRuns: runs(300) },
  );
  expect(seen).toBeGreaterThan(runs(300) / 3);
});

test('the figures of a map count from the planned head, in mm or in inches, within its ends', () => {
  expect(awayFrom(-180, [-480, 120], 'mm')).toEqual(
    [-300, -200, -100, 0, 100, 200, 300].map((away) => ({
      at: away - 180,
      text: away > 0 ? `+${away}` : String(away).replace('-', '−'),
    })),
  );
  const inches = awayFrom(0, [-300, 300], 'in');
  expect(inches.map(({ text }) => text)).toEqual(['−8', '−4', '0', '+4', '+8']);
  // 25.4 mm to the inch, by its definition.
  expect(inches.at(-1)?.at).toBeCloseTo(8 * 25.4, 9);
});
