import { mmText } from './say.ts';
import type { Check } from './check.ts';

/** A mat in the base that feet hold over the desk. */
export const idleMat: Check = ({ layout: { stand } }) =>
  stand.recess?.face === 'base' && stand.feet > 0
    ? [
        {
          code: 'idle-mat',
          level: 'caution',
          text: `The mat in the base does not touch the desk: feet hold the stand ${mmText(stand.feet)} over it. Leave out the feet, or the recess.`,
          value: stand.feet,
          limit: 0,
          unit: 'mm',
          source: 'the geometry itself',
        },
      ]
    : [];
