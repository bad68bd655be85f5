import { OCTAVES_APART } from '$lib/acoustics/grid.ts';
import { DESK_KNOWN_FROM } from '$lib/acoustics/leftOut.ts';
import { dipsOf } from '$lib/acoustics/notches.ts';
import { FINE } from '$lib/acoustics/response.ts';
import type { NotchPlan, NotchRange, ResponseBand, ResponsePlan } from '$lib/solution/soundDocument.ts';
import type { KeptCurve } from './onGrid.ts';
import type { Overlay } from './overlay.ts';

/** A predicted notch with where it may lie. */
export interface Expected {
  readonly notch: NotchPlan;
  /** Hz. */
  readonly range: NotchRange['frequency'];
}

/** A dip of a measured response, 3 dB deep or more. */
export interface MeasuredDip {
  /** Hz. */
  readonly frequency: number;
  /** dB, aligned. */
  readonly level: number;
  /** dB. */
  readonly depth: number;
  /** What makes it: the loudspeaker itself, as it is there near the driver too; a notch that is predicted here; null where nothing explains it. */
  readonly by: 'loudspeaker' | Expected | null;
  /** Difference of two ways that would first cancel here, mm: where nothing explains it, what is to be looked for. */
  readonly detour: number;
}

export interface Matched {
  readonly dips: readonly MeasuredDip[];
  /** Predicted within what was measured and smoothed, and not there. */
  readonly missing: readonly Expected[];
  /** How many dips lie under where the prediction is told, and are not looked at. */
  readonly under: number;
  /** How far a measured dip may lie from where it shows, octaves each way: half its windows and half a step. */
  readonly within: number;
}

/** A predicted dip that smoothing leaves, is this near to where it was, octaves. */
const NEAR = 1 / 12;

/** How far a dip of a kept curve may lie from where it shows, octaves each way. */
const resolution = ({ step }: Pick<KeptCurve, 'step'>, already: number): number => (FINE + step + already) / 2;

/**
 * The dips of a measured response, each held against what is predicted: dip and notch match where the dip, within the
 * measurement's own resolution, may lie where the notch may lie as the measured values of the desk may be off. Of several
 * the nearest go together, each once.
 *
 * @param near The same loudspeaker measured so near that nothing else is heard, laid over anything; null for none.
 * @param speed Of sound, m/s.
 */
export function matchDips(
  kept: Pick<KeptCurve, 'step'>,
  already: number,
  overlay: Overlay,
  response: Pick<ResponsePlan, 'notches'>,
  band: Pick<ResponseBand, 'notches'> | null,
  near: Overlay | null,
  speed: number,
): Matched {
  const within = resolution(kept, already);
  const all = dipsOf(overlay.measured).map((dip) => ({ ...dip, frequency: overlay.frequencies[dip.index] ?? 0 }));
  const dips = all.filter(({ frequency }) => frequency >= DESK_KNOWN_FROM);
  const own = near ? dipsOf(near.measured).map(({ index }) => near.frequencies[index] ?? 0) : [];
  const isOwn = (frequency: number): boolean => own.some((one) => apart(one, frequency) <= 2 * within);
  const expected = expectedOf(overlay, response, band);
  const pairs = dips
    .flatMap((dip, at) => (isOwn(dip.frequency) ? [] : expected.flatMap((one, notch) => fits(dip.frequency, one, within) ? [{ at, notch, far: apart(dip.frequency, one.notch.frequency) }] : [])))
    .sort((a, b) => a.far - b.far);
  const taken = new Map<number, number>();
  const used = new Set<number>();
  for (const { at, notch } of pairs) {
    if (taken.has(at) || used.has(notch)) continue;
    taken.set(at, notch);
    used.add(notch);
  }
  return {
    dips: dips.map(({ frequency, level, depth }, at) => ({
      frequency,
      level,
      depth,
      by: isOwn(frequency) ? 'loudspeaker' : (expected[taken.get(at) ?? -1] ?? null),
      detour: (speed * 1000) / (2 * frequency),
    })),
    missing: expected.filter((one, notch) => !used.has(notch) && !isOwn(one.notch.frequency)),
    under: all.length - dips.length,
    within,
  };
} // prettier-ignore

const apart = (a: number, b: number): number => Math.abs(Math.log2(a / b));

const fits = (frequency: number, { range: [low, high] }: Expected, within: number): boolean =>
  frequency >= low * 2 ** -within && frequency <= high * 2 ** within;

/** What is predicted within the measured range, and still a dip in the window that all is seen through. */
function expectedOf(
  { from, predicted, frequencies, window }: Overlay,
  { notches }: Pick<ResponsePlan, 'notches'>,
  band: Pick<ResponseBand, 'notches'> | null,
): readonly Expected[] {
  const left = window > FINE ? dipsOf(predicted).map(({ index }) => frequencies[index] ?? 0) : null;
  return notches.flatMap((notch, index) => {
    const inside = notch.index > from && notch.index < from + frequencies.length - 1;
    const seen = left === null || left.some((one) => apart(one, notch.frequency) <= NEAR);
    if (!inside || !seen || notch.frequency < DESK_KNOWN_FROM) return [];
    const half = 2 ** (OCTAVES_APART / 2);
    const range = band?.notches[index]?.frequency ?? ([notch.frequency / half, notch.frequency * half] as const);
    return [{ notch, range }];
  });
}
