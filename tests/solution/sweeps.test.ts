import { describe, expect, it } from 'vitest';
import { plainText } from '$lib/project/sentence.ts';
import { recessWithBorder, reliefWithCorners, ribsWithSkin, sweep } from '../sweeps.ts';

/** Every case with `WEDGEWRIGHT_RUNS=1`, else one in so many: a prime number, so that no range is stepped over alike. */
const EVERY = Number(process.env.WEDGEWRIGHT_RUNS ?? 0) >= 1 ? 1 : 37;

const nothing = (): void => undefined;

describe('through whole ranges every stand has a plan, or a reason at the setting that wants another value', () => {
  it(`ribs with a skin, one in ${EVERY}`, () => {
    const { planned, refused } = sweep(ribsWithSkin, EVERY, nothing);
    expect(planned).toBeGreaterThan((0.95 * ribsWithSkin.length) / EVERY);
    for (const pointer of Object.keys(refused)) expect(pointer).toMatch(/\/stand\/(lift|ribs|ribs\/cross)$/);
  });

  it(`relief windows behind rounded corners, one in ${EVERY}: each has them, or says that there is no room`, () => {
    const { planned, refused } = sweep(reliefWithCorners, EVERY, ({ parts, stand }, name) => {
      const windows = parts.flatMap(({ inside }) => inside.filter(({ kind }) => kind === 'path'));
      const told = stand.left.notes.some((note) => plainText(note).startsWith('There are no windows'));
      expect(windows.length > 0, name).not.toBe(told);
    });
    expect(planned).toBe(Math.ceil(reliefWithCorners.length / EVERY));
    expect(refused).toEqual({});
  });

  it(`recesses with narrow borders, one in ${EVERY}`, () => {
    const { planned, refused } = sweep(recessWithBorder, EVERY, nothing);
    expect(planned).toBeGreaterThan((0.5 * recessWithBorder.length) / EVERY);
    expect(Object.keys(refused)).toEqual(['/layouts/0/stand/recess/border']);
  });
});
