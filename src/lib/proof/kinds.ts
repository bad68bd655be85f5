import { usualSure } from '$lib/project/fields/readingKinds.ts';
import type { Cabinet } from './standing.ts';
import type { Taken } from './taken.ts';

const CORNERS = ['rear-outboard', 'rear-inboard', 'front-outboard', 'front-inboard'] as const;
const WHOLE = ['front-height', 'rear-height', 'inboard-height', 'outboard-height', 'slope', 'lean', 'toe'] as const;

/** Every reading that can be taken of a cabinet, with the usual tool's doubt and its numbers at nought. Rise over run: over the cabinet's depth. */
export const readingsOf = (cabinet: Pick<Cabinet, 'depth' | 'drivers'>): readonly Taken[] => [
  ...WHOLE.map((what): Taken => ({ what, value: 0, sure: usualSure(what) })),
  { what: 'rise', value: 0, run: Math.max(10, cabinet.depth), sure: usualSure('rise') },
  { what: 'mark', x: 0, y: 0, sure: usualSure('mark') },
  ...CORNERS.map((which): Taken => ({ what: 'corner', which, x: 0, y: 0, sure: usualSure('corner') })),
  ...cabinet.drivers.map(({ name }): Taken => ({
    what: 'driver-height',
    driver: name,
    value: 0,
    sure: usualSure('driver-height'),
  })),
  ...(['top', 'baffle'] as const).map((on): Taken => ({ what: 'spot', on, x: 0, z: 0, sure: usualSure('spot') })),
];
