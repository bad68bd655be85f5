import type { LengthDisplay } from '$lib/project/units.ts';
import type { StandFit } from '$lib/study/standsCut.ts';
import { angleText, lengthText, tapeText } from '$lib/views/ui/formatNumber.ts';

export interface FitCell {
  readonly kind: 'own' | 'none' | 'fits' | 'fails';
  /** What the axis passes the head by, and how far off the axis the head is at the driver. */
  readonly miss: string;
  readonly angle: string;
}

/** Whose stands by rows, where they are put by columns, both in the order of the names. */
export const fitRows = (fits: readonly StandFit[], names: readonly string[], display: LengthDisplay): FitCell[][] =>
  names.map((from) =>
    names.map((to): FitCell => {
      if (from === to) return { kind: 'own', miss: '', angle: '' };
      const fit = fits.find((one) => one.from === from && one.to === to);
      if (!fit) return { kind: 'none', miss: '', angle: '' };
      return { kind: fit.fits ? 'fits' : 'fails', miss: tapeText(fit.miss, display), angle: angleText(fit.offAxis) };
    }),
  );

/** Limits of the safe zone, as a sentence names them. */
const limits = {
  treble: 'too much treble is lost off the axis',
  crossover: 'the drivers sum too differently at the crossover',
  time: 'the sides arrive too far apart',
  level: 'the sides differ too much in level',
} as const satisfies Readonly<Record<StandFit['by'], string>>;

/** Why the stands of one layout do not serve in another: `4.4° too flat: too much treble is lost off the axis`. */
export function failText({ tilt, toe, lift, by, used }: StandFit, display: LengthDisplay): string {
  const off = [
    ...(Math.abs(tilt) < 0.05 ? [] : [`${angleText(Math.abs(tilt))} too ${tilt > 0 ? 'steep' : 'flat'}`]),
    ...(Math.abs(toe) < 0.05 ? [] : [`${angleText(Math.abs(toe))} turned in too ${toe > 0 ? 'far' : 'little'}`]),
    ...(Math.abs(lift) < 0.5 ? [] : [`${lengthText(Math.abs(lift), display)} too ${lift > 0 ? 'high' : 'low'}`]),
  ];
  const why = used > 1 ? limits[by] : 'a cabinet would stand where something else is';
  return off.length === 0 ? why : `${off.join(', ')}: ${why}`;
}
