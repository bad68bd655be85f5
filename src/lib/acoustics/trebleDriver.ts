import type { Driver } from '$lib/project/project.ts';
import { pistonRadius } from './piston.ts';

const order = { tweeter: 0, 'full-range': 1, midrange: 2, woofer: 3 } as const;

/** The driver that plays the treble: the one with the highest role, the smallest of several. */
export function trebleDriver(drivers: readonly Driver[]): Driver {
  const [first] = [...drivers].sort((a, b) => order[a.role] - order[b.role] || pistonRadius(a) - pistonRadius(b));
  if (!first) throw new Error('a loudspeaker has at least one driver');
  return first;
}
