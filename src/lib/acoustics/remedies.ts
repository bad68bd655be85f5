import type { Transfer } from './branches.ts';
import type { Field } from './field.ts';
import type { Remedy } from './notches.ts';
import { addWave, silence, type Wave } from './wave.ts';

/** What can make a notch: one of the room's surfaces, the drivers that arrive apart, or the two loudspeakers that do. */
export type Culprit =
  { readonly kind: 'surface'; readonly surface: number } | { readonly kind: 'drivers' } | { readonly kind: 'pair' };

/** A remedy, and what it takes away. */
export interface NamedRemedy extends Remedy {
  readonly culprit: Culprit;
}

/**
 * What would be heard from one loudspeaker, or from several at once, with each surface gone or the drivers lined up; the
 * latter only where it is `known` how they are.
 */
export function remediesFor(fields: readonly Field[], known: boolean): NamedRemedy[] {
  const surfaces = fields[0]?.bySurface.map((_, surface) => surface) ?? [];
  return [
    ...surfaces
      .filter((surface) => fields.some(({ bySurface }) => bySurface[surface]))
      .map((surface) => withoutSurface(fields, surface)),
    ...(known ? [linedUp(fields)] : []),
    ...(fields.length > 1 ? [togetherFrom(fields)] : []),
  ];
}

const withoutSurface = (fields: readonly Field[], surface: number): NamedRemedy => ({
  culprit: { kind: 'surface', surface },
  power: (i) => {
    const part = (of: 'im' | 're'): number =>
      fields.reduce((sum, { total, bySurface }) => sum + at(total, of, i) - at(bySurface[surface]?.sum, of, i), 0);
    return part('re') ** 2 + part('im') ** 2;
  },
});

/** Both loudspeakers' pressures added as if they arrived in step. */
const togetherFrom = (fields: readonly Field[]): NamedRemedy => ({
  culprit: { kind: 'pair' },
  power: (i) => fields.reduce((sum, { total }) => sum + Math.hypot(at(total, 're', i), at(total, 'im', i)), 0) ** 2,
});

/** The direct sound as large as if all drivers of a loudspeaker were equally far, turned as it is; all else unchanged. */
function linedUp(fields: readonly Field[]): NamedRemedy {
  const scratch = silence();
  const power = (i: number): number => {
    let [re, im] = [0, 0];
    for (const { total, direct, directWaves } of fields) {
      const [dRe, dIm] = [at(direct, 're', i), at(direct, 'im', i)];
      const size = sizeOf(scratch, directWaves, i);
      const could = sizeOf(scratch, directWaves.map(inStep), i);
      const more = size === 0 ? 0 : could / size - 1;
      re += at(total, 're', i) + (size === 0 ? could : dRe * more);
      im += at(total, 'im', i) + dIm * more;
    }
    return re * re + im * im;
  };
  return { culprit: { kind: 'drivers' }, power };
}

/** Without what its path turns it by: only the crossover's own phase remains. */
const inStep = (wave: Wave): Wave => ({ ...wave, turn: 0 });

function sizeOf(scratch: Transfer, waves: readonly Wave[], i: number): number {
  scratch.re[i] = 0;
  scratch.im[i] = 0;
  for (const wave of waves) addWave(scratch, wave, { first: i, end: i + 1 });
  return Math.hypot(at(scratch, 're', i), at(scratch, 'im', i));
}

const at = (transfer: Transfer | null | undefined, part: 'im' | 're', i: number): number => transfer?.[part][i] ?? 0;
