import { degrees } from '$lib/geometry/angle.ts';
import type { Arrival } from '$lib/acoustics/arrivals.ts';
import type { Part } from '$lib/acoustics/field.ts';
import { nearestPlace } from '$lib/acoustics/grid.ts';
import type { Transfer } from '$lib/acoustics/branches.ts';
import { together } from '$lib/acoustics/wave.ts';
import { levelAgainst } from '$lib/acoustics/response.ts';
import type { ReflectionPlan } from '$lib/solution/document.ts';
import type { ReflectionSound } from '$lib/solution/soundDocument.ts';

/** Where a reflection's level is stated, Hz: the octaves of the rule for early reflections. */
const LEVEL_FREQUENCIES = [1000, 2000, 4000, 8000] as const;

/** The plan's reflections, which come from the same ways in the same order, with their levels. */
export function reflectionSound(
  arrivals: readonly Arrival[],
  parts: readonly Part[],
  planned: readonly ReflectionPlan[],
): ReflectionSound[] {
  const bounced = arrivals.filter(({ surface }) => surface !== null);
  return planned.flatMap((reflection, index): ReflectionSound[] => {
    const arrival = bounced[index];
    if (!arrival) return [];
    const own = parts.filter(({ driver }) => driver === arrival.driver);
    const sent = own.find(({ surface }) => surface === arrival.surface)?.sum;
    const direct = together(own.filter(({ straight }) => straight));
    const absorption = 20 * Math.log10(arrival.kept);
    return [
      {
        ...reflection,
        leaving: degrees(arrival.leaving),
        absorption: Number.isFinite(absorption) ? absorption : null,
        levels: LEVEL_FREQUENCIES.map((frequency) => {
          const place = nearestPlace(frequency);
          return { frequency, level: levelAgainst(powerAt(sent, place), powerAt(direct, place)) };
        }),
      },
    ];
  });
}

const powerAt = (sum: Transfer | undefined, place: number): number =>
  sum ? (sum.re[place] ?? 0) ** 2 + (sum.im[place] ?? 0) ** 2 : 0;
