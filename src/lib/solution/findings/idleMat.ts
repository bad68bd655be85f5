import { asMm } from '$lib/project/sentence.ts';
import type { Check } from './check.ts';

/** A mat in the base that feet hold over the desk. */
export const idleMat: Check = ({ layout: { stand } }) =>
  stand.recess?.face === 'base' && stand.feet > 0
    ? [
        {
          code: 'idle-mat',
          level: 'caution',
          sides: [],
          subject: {},
          facts: {},
          quantities: { feet: asMm(stand.feet) },
          value: stand.feet,
          limit: 0,
          unit: 'mm',
          source: 'geometry',
        },
      ]
    : [];
