import { degrees } from '$lib/geometry/angle.ts';
import type { AimSpread, MeasuredSpread } from '$lib/layout/aimSpread.ts';
import type { SureKey } from '$lib/project/sure.ts';
import type { Lengths } from '$lib/project/units.ts';
import { formatNumber, lengthText } from '$lib/views/ui/formatNumber.ts';

/** Less is not worth a word: a twentieth of a degree, a tenth of a millimetre; it would be shown as nothing. */
const LEAST_ANGLE = 0.05;
const LEAST_LENGTH = 0.1;

/** What a doubt does to the aim, in words: `tilt ± 0.8°, toe ± 0.1°`. Null where it does next to nothing. */
export function spreadText({ toe, tilt, lift }: AimSpread, unit: Lengths): string | null {
  const angle = (name: string, value: number): readonly string[] =>
    degrees(value) < LEAST_ANGLE ? [] : [`${name} ±\u202f${formatNumber(degrees(value), 1)}°`];
  const parts = [
    ...angle('tilt', tilt),
    ...angle('toe', toe),
    ...(lift < LEAST_LENGTH ? [] : [`lift ±\u202f${lengthText(lift, unit)}`]),
  ];
  return parts.length === 0 ? null : parts.join(', ');
}

/** What one value's doubt does, said beside it, and whether it does the most. `spreads`: of both loudspeakers; the worse one counts. */
export function effectText(spreads: readonly MeasuredSpread[], key: SureKey, unit: Lengths): string {
  const each = spreads.map(({ by }) => by.get(key));
  if (each.every((one) => one === undefined)) return 'no effect on aim';
  const known = each.filter((one) => one !== null && one !== undefined);
  if (known.length === 0) return 'so far off the aim has no answer';
  const text = spreadText(worst(known), unit);
  return text === null ? 'hardly moves the aim' : key === worstKey(spreads) ? `${text}: the most of all` : text;
}

/** What holds for all values together. */
interface WholeText {
  /** In at least nine cases of ten. */
  readonly text: string;
  /** As long as every value lies within its span; null where it is not known, or is the same. */
  readonly most: string | null;
  /** The value that does the most. */
  readonly mostly: SureKey | null;
}

/** The combined uncertainty, and the part of it that matters most. */
export function wholeText(spreads: readonly MeasuredSpread[], unit: Lengths): WholeText {
  const text = spreadText(worst(spreads.map(({ all }) => all)), unit);
  const ends = spreads.flatMap(({ most }) => most ?? []);
  const most = ends.length < spreads.length ? null : spreadText(worst(ends), unit);
  return {
    text: text ?? 'under a twentieth of a degree',
    most: most === text ? null : most,
    mostly: text === null ? null : worstKey(spreads),
  };
}

/** The value whose doubt moves an aim the most; null where none does. */
function worstKey(spreads: readonly MeasuredSpread[]): SureKey | null {
  const shares = spreads.flatMap(({ by }) =>
    [...by].flatMap(([key, one]) => (one === null ? [] : [{ key, size: share(one) }])),
  );
  return shares.reduce<{ key: SureKey | null; size: number }>((best, one) => (one.size > best.size ? one : best), {
    key: null,
    size: 0,
  }).key;
}

/** Angles weigh alike; where the lift is solved the tilt is given, so one of the two is always 0. */
const share = ({ toe, tilt, lift }: AimSpread): number => Math.hypot(toe, tilt, lift / ARM);

/** A lift turned into an angle to compare it by: seen from the distance of a desk, mm. */
const ARM = 700;

const worst = (all: readonly AimSpread[]): AimSpread => ({
  toe: Math.max(0, ...all.map(({ toe }) => toe)),
  tilt: Math.max(0, ...all.map(({ tilt }) => tilt)),
  lift: Math.max(0, ...all.map(({ lift }) => lift)),
});
