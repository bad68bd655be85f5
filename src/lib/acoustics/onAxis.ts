import type { Speaker } from '$lib/project/project.ts';
import { designPointOf } from './designPoint.ts';
import { frequencies } from './grid.ts';
import { pistonRadius } from './piston.ts';
import { addWave, silence } from './wave.ts';
import type { Source } from './field.ts';

/** A maker evens out no dip deeper than this at the design point: 12 dB, as a ratio of pressures. Common practice, no source. */
const MOST_EVENED = 10 ** (12 / 20);

/**
 * By how much the maker has evened the loudspeaker out at each frequency, a ratio of pressures 0.25 or more: the size of
 * its own sum at the design point, where it counts as flat. Drivers beside the aimed one beam past that point a little.
 * All 1 without a design point: then each driver counts as flat on its own axis. `speed` is the speed of sound, m/s.
 */
export function evenedAtDesign(speaker: Speaker, source: Source, speed: number): Float64Array {
  const point = designPointOf(speaker);
  const aimed = point && speaker.drivers.find(({ name }) => name === point.driver);
  if (!point || !aimed) return new Float64Array(frequencies.length).fill(1);
  const sum = silence();
  speaker.drivers.forEach((driver, index) => {
    const branch = source.branches[index];
    if (!branch) return;
    const aside = Math.hypot(driver.offset - aimed.offset, driver.height - aimed.height);
    const sine = aside / Math.hypot(aside, point.distance);
    const argument = (2 * Math.PI * pistonRadius(driver) * sine) / (1000 * speed);
    addWave(sum, { gain: 1, turn: 0, argument, filled: 0, behind: 0, branch, bent: null });
  });
  return sum.re.map((re, i) => Math.max(Math.hypot(re, sum.im[i] ?? 0), 1 / MOST_EVENED));
}
