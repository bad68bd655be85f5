import { describe, expect, test } from 'vitest';
import { mendByTurning } from '$lib/proof/mend.ts';
import { demoWith } from '../projects.ts';
import { blank, off, planned, taken } from '../proof/stands.ts';
import { command } from './ran.ts';

const { run, file } = command('prove');

const it = planned('left');
const real = off(it.plan, [6, -4, 2, 1.5, -1, 0]);
const readings = taken([blank.front, blank.rear, blank.toe, blank.mark, blank.slope], real, it);
const built = (left: unknown, right: unknown = { readings: [] }) =>
  file(demoWith({ '/layouts/0/built': { sides: { left, right } } }));

describe('prove', () => {
  test('prints how the stand stands and what to do, as the engine has it', () => {
    const { status, out, lines } = run(built({ readings }));
    expect({ status, lines }).toEqual({ status: 0, lines: [] });
    const acts = mendByTurning(it.cabinet, real, it.head) ?? [];
    const [card, turn] = acts;
    if (card?.act !== 'shim' || turn?.act !== 'turn') throw new Error('a card and a turn mend it');
    const found = JSON.parse(out);
    expect(found).toMatchObject({
      format: 'wedgewright/prove',
      version: 1,
      layout: 'window side',
      sides: {
        left: {
          known: true,
          levelTaken: true,
          odd: [],
          unclear: [],
          do: [{ act: 'shim', where: card.where }, { act: 'turn' }],
        },
        right: null,
      },
    });
    const { left } = found.sides;
    expect(left.mark.x).toBeCloseTo(-real.x, 2);
    expect(left.toe).toBeCloseTo((real.toe * 180) / Math.PI, 3);
    expect(left.do[0].by).toBeCloseTo(card.by, 2);
    expect(left.do[1].by).toBeCloseTo((turn.by * 180) / Math.PI, 2);
    expect(left.do[1].then).toBeLessThan(0.05);
    expect(left.spread.pass.major).toBeGreaterThan(left.spread.pass.minor);
    expect(left.residuals.map(({ reading }: { reading: unknown }) => reading)).toEqual(readings);
  });

  test('says what to read next where it is not known', () => {
    const { out } = run(built({ readings: taken([blank.front, blank.rear, blank.mark], real, it) }));
    expect(JSON.parse(out).sides.left).toMatchObject({
      known: false,
      miss: null,
      do: null,
      next: { then: { known: true } },
    });
  });

  test('leaves a stand that cannot be told from a true one', () => {
    const { out } = run(built({ readings: taken([blank.front, blank.rear, blank.toe, blank.mark], it.plan, it) }));
    expect(JSON.parse(out).sides.left.do).toEqual([{ act: 'leave', then: expect.any(Number) }]);
  });

  test('refuses bad input at its place', () => {
    const lines = (path: string, ...words: string[]) => {
      const { status, out, lines } = run(path, ...words);
      expect([status, out]).toEqual([2, '']);
      return lines;
    };
    expect(lines(file(demoWith()))).toContainEqual(expect.stringContaining('expected readings of the finished stands under built of the layout "window side", got none')); // prettier-ignore
    const at = '/layouts/0/built/sides/left/readings/0';
    expect(lines(built({ readings: [{ what: 'weight', value: 2, sure: 1 }] }))[0]).toMatch(new RegExp(`^${at}/what: expected "front-height" or .*, got "weight"$`)); // prettier-ignore
    expect(lines(built({ readings: [{ ...blank.driver, driver: 'horn' }] }))[0]).toBe(`${at}/driver: expected the name of a driver ("tweeter", "woofer"), got "horn"`); // prettier-ignore
    expect(lines(built({ readings: [{ ...blank.front, sure: 0 }] }))[0]).toMatch(new RegExp(`^${at}/sure: expected a length .*, got 0$`)); // prettier-ignore
    expect(lines(built({ readings: [{ ...blank.mark, y: 'far' }] }))[0]).toMatch(new RegExp(`^${at}/y: expected a position .*, got "far"$`)); // prettier-ignore
  });

  test('says how it is used', () => {
    expect(run('-h')).toMatchObject({ status: 0, out: expect.stringContaining('usage: npm run --silent prove') });
  });
});
