import { describe, expect, test } from 'vitest';
import { mendByTurning } from '$lib/proof/mend.ts';
import { demoWith } from '../projects.ts';
import { blank, off, planned, taken } from '../proof/stands.ts';
import { command } from './ran.ts';

const { run, file, textFile } = command('prove');

/** s: by the desk, from the demo's right tweeter to the head. */
const DELAY = 0.7943508944e-3;
const comb = Array.from({ length: 4000 }, (_, i) => 20 + 5 * i)
  .map((f) => `${f}\t${(80 + 10 * Math.log10(1.526 + 1.45 * Math.cos(2 * Math.PI * f * DELAY))).toFixed(3)}`)
  .join('\n');

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
    expect(lines(file(demoWith()))).toContainEqual(expect.stringContaining('expected readings of the finished stands or measured responses under built of the layout "window side", got none')); // prettier-ignore
    const at = '/layouts/0/built/sides/left/readings/0';
    expect(lines(built({ readings: [{ what: 'weight', value: 2, sure: 1 }] }))[0]).toMatch(new RegExp(`^${at}/what: expected "front-height" or .*, got "weight"$`)); // prettier-ignore
    expect(lines(built({ readings: [{ ...blank.driver, driver: 'horn' }] }))[0]).toBe(`${at}/driver: expected the name of a driver ("tweeter", "woofer"), got "horn"`); // prettier-ignore
    expect(lines(built({ readings: [{ ...blank.front, sure: 0 }] }))[0]).toMatch(new RegExp(`^${at}/sure: expected a length .*, got 0$`)); // prettier-ignore
    expect(lines(built({ readings: [{ ...blank.mark, y: 'far' }] }))[0]).toMatch(new RegExp(`^${at}/y: expected a position .*, got "far"$`)); // prettier-ignore
  });

  test('holds a measured response in a file against the prediction', () => {
    const { status, out, lines } = run(file(demoWith()), '--heard', textFile(comb), '--of', 'right');
    expect({ status, lines }).toEqual({ status: 0, lines: [] });
    const { heard, sides } = JSON.parse(out);
    expect(sides).toEqual({ left: null, right: null });
    expect(heard).toHaveLength(1);
    const [{ dips, ...of }] = heard;
    expect(of).toMatchObject({ of: 'right', at: 'seat', smoothed: 'none', moved: { x: 0, y: 0, z: 0 } });
    // By the delay of the desk's own reflection.
    const first = dips.find(({ frequency }: { frequency: number }) => frequency > 3000);
    expect(Math.abs(first.frequency / (2.5 / DELAY) - 1)).toBeLessThan(0.02);
    expect(first.by).toMatchObject({ surface: 'desk', monitor: null });
    expect(dips.some(({ by }: { by: unknown }) => by === null)).toBe(true);
  });

  test('refuses a response that is none, and what is said of it', () => {
    const project = file(demoWith());
    const told = (text: string, ...words: string[]): string | undefined => {
      const { status, out, lines } = run(project, '--heard', textFile(text), ...words);
      expect([status, out]).toEqual([2, '']);
      return lines[0];
    };
    expect(told('20 80\n30 81\n40 NaN\n', '--of', 'left')).toMatch(/^\/: .*: line 3: expected a level of -300 to 300 dB, got "NaN"$/);
    expect(told('1,100;80\n1,200;81\n1,300;82\n', '--of', 'left')).toMatch(/line 1: expected --commas to tell whether 1,100 is 1.1 \(decimal\) or 1100 \(thousands\), got nothing$/);
    expect(told('20 80', '--of', 'middle')).toBe('/: expected left, right or both after --of, got middle');
    expect(told('20 80')).toBe('/: expected left, right or both after --of, got nothing');
    expect(told('20 80', '--of', 'left', '--at', 'door')).toBe('/: expected seat or near after --at, got door');
    expect(told('20 80', '--of', 'left', '--commas', 'many')).toBe('/: expected decimal or thousands after --commas, got many');
    expect(run(project, '--of', 'left').lines[0]).toBe('/: expected --heard with --of, --at or --commas, got nothing');
    expect(run(project, '--heard', 'nowhere.txt', '--of', 'left').lines[0]).toBe('/: expected a measured response in nowhere.txt, got a file that cannot be read');
  }); // prettier-ignore

  test('says how it is used', () => {
    expect(run('-h')).toMatchObject({ status: 0, out: expect.stringContaining('usage: npm run --silent prove') });
  });
});
