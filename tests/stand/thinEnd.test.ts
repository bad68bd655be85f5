import fc from 'fast-check';
import { expect, it } from 'vitest';
import { coverOf } from '$lib/stand/cover.ts';
import { lowEndHeight } from '$lib/stand/thinEnd.ts';
import { anyCase, soundProfile } from './stands.ts';

it('is the height of the low end as it is built, finished and under the veneer', () => {
  fc.assert(
    fc.property(anyCase, (one) => {
      const { settings, tilt, lift } = one;
      const { core, frontHeight, rearHeight } = soundProfile(one);
      const lip = settings.stop?.thickness ?? 0;
      const [margin, finished, cornerOfSlice] =
        tilt >= 0 ? [settings.rearMargin, rearHeight, core[2]] : [settings.frontMargin, frontHeight, core[3]];
      const reach = Math.max(margin, lip);
      // Rounding of lengths of up to 1e3 mm.
      expect(lowEndHeight(settings, tilt, lift, reach, null)).toBeCloseTo(finished, 9);
      const underVeneer = (cornerOfSlice?.[1] ?? NaN) - (core[0]?.[1] ?? NaN);
      expect(lowEndHeight(settings, tilt, lift, reach, coverOf(settings))).toBeCloseTo(underVeneer, 8);
    }),
  );
});
