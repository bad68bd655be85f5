import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Point } from '$lib/geometry/point.ts';
import { stand } from '$lib/project/fields/stand.ts';
import { noRoom } from '$lib/stand/rodFault.ts';
import { anyCase, mustBuild, soundProfile } from './stands.ts';

it('tries the profile that more lift would really give', () => {
  fc.assert(
    fc.property(anyCase, (one) => {
      const { core } = soundProfile(one);
      const rods = { diameter: 6, count: 2, clearance: 0.1, edge: 2 };
      const tried: (readonly Point[])[] = [];
      noRoom(rods, core, (asked, profile) => {
        if (asked === rods) tried.push(profile);
        return false;
      });
      const more = stand.lift.max;
      const real = mustBuild(one.settings, one.depth, one.tilt, one.lift + more).core;
      expect(tried).toHaveLength(1);
      tried[0]?.forEach(([u, z], corner) => {
        // A raised stand seen from its own top; 1e3 mm of lift stretch the rounding of a low end's corners.
        expect(Math.abs(u - (real[corner]?.[0] ?? NaN))).toBeLessThan(1e-7);
        expect(Math.abs(z + more - (real[corner]?.[1] ?? NaN))).toBeLessThan(1e-7);
      });
    }),
  );
});
