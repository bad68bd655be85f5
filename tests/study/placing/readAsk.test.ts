import { describe, expect, test } from 'vitest';
import { degrees, radians } from '$lib/geometry/angle.ts';
import { plainText } from '$lib/project/sentence.ts';
import { plan } from '$lib/solution/plan.ts';
import { readPlaceAsk } from '$lib/study/placing/readAsk.ts';
import { firstLayout, project } from '../../projects.ts';
import { withLayouts } from '../layouts.ts';

const of = project();
const layout = firstLayout(of);

const read = (document: unknown) => {
  const result = readPlaceAsk(document, of, layout);
  if (!result.ok) throw new Error(result.faults.map(({ message }) => plainText(message)).join());
  return result.value;
};

const refused = (document: unknown): string[] => {
  const result = readPlaceAsk(document, of, layout);
  return result.ok ? [] : result.faults.map(({ pointer, message }) => `${pointer}: ${plainText(message)}`);
};

describe('an ask for a place', () => {
  test('has the whole desk, the safe zone and no gaps where nothing else is said', () => {
    expect(read({ stands: { tilt: 12, lift: 20 } })).toEqual({
      stands: {
        left: { tilt: radians(12), lift: 20, toe: null, footprint: null },
        right: { tilt: radians(12), lift: 20, toe: null, footprint: null },
      },
      allowed: 'safe-zone',
      clear: { screen: 0, wall: 0 },
      marks: { left: -700, right: 700, front: 0, back: 700 },
      setback: null,
      earHeight: null,
    });
    expect(read({ stands: { tilt: 12, lift: 20 }, marks: false }).marks).toBeNull();
    expect(read({ stands: { tilt: 12, lift: 20 }, marks: { x: { from: 300, to: 400 } } }).marks).toEqual({ left: 300, right: 400, front: 0, back: 700 }); // prettier-ignore
  });

  test('takes the height under the front for what it is: lift and what the slope rises', () => {
    const { depth } = of.speaker;
    const { lift } = read({ stands: { tilt: 12, front: 80 } }).stands.left;
    expect(lift + depth * Math.sin(radians(12))).toBeCloseTo(80, 9);
    expect(read({ stands: { tilt: -12, front: 80 } }).stands.left.lift).toBe(80);
    expect(refused({ stands: { tilt: 12, front: 30 } })).toEqual([
      '/stands/front: expected a front at least as high as the slope rises, 42.7 mm, got 30 mm',
    ]);
  });

  test('takes the stands of another layout with their bases, turned back', () => {
    const two = withLayouts({}, { '/layouts/0/placement/left/x': -500, '/layouts/0/stand/lift': 30 });
    if (!two) throw new Error('both are sound');
    const [, other] = two.layouts;
    const result = readPlaceAsk({ stands: { layout: 'layout 1' } }, two, firstLayout(two));
    const made = other && plan(two, other, false);
    if (!result.ok || !made?.ok) throw new Error('it has stands');
    for (const side of ['left', 'right'] as const) {
      const { tilt, lift, footprint } = result.value.stands[side];
      expect(degrees(tilt)).toBeCloseTo(made.value.sides[side].tilt, 9);
      expect(lift).toBe(30);
      // Its front edge is square to the toed direction, with the mark in the middle of its width.
      const [a, b, c, d] = footprint ?? [];
      if (!a || !b || !c || !d) throw new Error('it has four corners');
      const xs = [a, b, c, d].map(([x]) => x).sort((one, two) => one - two);
      expect(xs[0]).toBeCloseTo(-(xs[3] ?? 0), 9);
      expect((xs[3] ?? 0) - (xs[0] ?? 0)).toBeCloseTo(made.value.stand[side].width, 9);
    }
  });

  test('is refused at its pointers', () => {
    expect(refused(3)).toEqual([': expected an object with stands, got 3']);
    expect(refused({})).toEqual([
      '/stands: expected an object with tilt and lift, or tilt and front, or layout, or left and right, got nothing',
    ]);
    expect(refused({ stands: { layout: 'nowhere' } })).toEqual([
      '/stands/layout: expected the name of a layout ("window side"), got "nowhere"',
    ]);
    expect(refused({ stands: { tilt: 80, lift: 10 } })).toEqual(['/stands/tilt: expected an angle from -60 to 60°, got 80']); // prettier-ignore
    expect(refused({ stands: { tilt: 8 } })).toEqual(['/stands: expected one of lift and front, got none']);
    expect(refused({ stands: { tilt: 8, lift: 'low' } })).toEqual(['/stands/lift: expected a length from 0 to 1500 mm, got "low"']); // prettier-ignore
    const stands = { tilt: 8, lift: 10 };
    expect(refused({ stands, miss: 0 })).toEqual(['/miss: expected a miss over 0 mm, got 0']);
    expect(refused({ stands, clear: { desk: 3 } })).toEqual(['/clear/desk: unknown key, expected one of screen, wall']);
    expect(refused({ stands, marks: 7 })).toEqual(['/marks: expected true, false, or an object with x and y, each from … to, got 7']); // prettier-ignore
    expect(refused({ stands, setback: { from: 300, to: 200 } })).toEqual(['/setback/to: expected 300 or more, where the range begins, got 200']); // prettier-ignore
    expect(refused({ stands, earHeight: { from: 300 } })).toEqual(['/earHeight/to: expected a length from 200 to 2500 mm, got nothing']); // prettier-ignore
    expect(refused({ stands, seat: 3 })[0]).toMatch(/^\/seat: unknown key, expected one of stands, /);
  });
});
