import type { Transfer } from './branches.ts';
import { placesFrom } from './grid.ts';
import { levelAgainst } from './response.ts';

/** Early reflections: as far under the direct sound as this, dB, if they come within this time, ms, over this band, Hz. */
export const EARLY = {
  level: -10,
  window: 15,
  band: [1000, 8000],
  source: 'EBU Tech 3276 §2.2: early reflections at least 10 dB below the direct sound in the first 15 ms, 1 to 8 kHz',
  plainly:
    'A bare desk cannot meet this by distance alone: the detour over it is short, so spreading leaves its reflection only about 2 dB down. Only a driver that beams past it, something in the way, or a surface that absorbs can do the rest.',
} as const;

/**
 * Mean level of a sum of reflections re the direct sound, both over 1 to 8 kHz, all drivers of the loudspeaker together,
 * spreading, directivity, screens and absorption included; dB, from −120 to 120.
 */
export const earlyLevel = (sent: Transfer, direct: Transfer): number =>
  levelAgainst(bandPower(sent), bandPower(direct));

const band = placesFrom(...EARLY.band);

/** Sum of the powers at the grid's frequencies in the band; these are evenly spread in octaves. */
function bandPower({ re, im }: Transfer): number {
  let sum = 0;
  for (let i = band.first; i < band.end; i++) sum += (re[i] ?? 0) ** 2 + (im[i] ?? 0) ** 2;
  return sum;
}
