import fc from 'fast-check';
import { expect, test } from 'vitest';
import { markingChecks, markingOut } from '$lib/solution/markingOut.ts';
import { solve } from '$lib/solution/solve.ts';
import { anyDesk, firstLayout, project } from '../projects.ts';

/** Rounding of coordinates of a few metres, mm. */
const DUST = 1e-9;

test('every corner is found again from the two lines, named as the listener sees it', () => {
  fc.assert(
    fc.property(anyDesk, (changes) => {
      const of = project(changes);
      const made = solve(of, firstLayout(of));
      fc.pre(made.ok);
      if (!made.ok) return;
      const rows = markingOut(made.value);
      expect(rows).toHaveLength(8);
      for (const side of ['left', 'right'] as const) {
        const own = rows.filter((row) => row.side === side);
        const back = own.map(({ fromCentre, hand, fromEdge }): readonly [number, number] => [
          hand === 'left' ? -fromCentre : fromCentre,
          fromEdge,
        ]);
        expect(back).toEqual(made.value.stand[side].footprint.map(([x, y]) => [Math.abs(x) === 0 ? 0 : x, y]));
        const at = (corner: string) => own.findIndex((row) => row.corner === corner);
        const [fl, fr, rr] = [back[at('front left')], back[at('front right')], back[at('rear right')]];
        if (!fl || !fr || !rr) throw new Error('a base has four corners');
        // A quarter turn counter-clockwise leads from the front edge to the depth.
        const turn = (fr[0] - fl[0]) * (rr[1] - fr[1]) - (fr[1] - fl[1]) * (rr[0] - fr[0]);
        expect(turn).toBeGreaterThan(0);
        const [one, other] = markingChecks(made.value).diagonals[side];
        expect(Math.abs(one - other)).toBeLessThan(DUST * 1000);
      }
    }),
  );
});
