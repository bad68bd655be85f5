import { HEAD_LIMITS } from '$lib/acoustics/headHearing.ts';
import { frequencies } from '$lib/acoustics/grid.ts';
import { PRICE_FREQUENCY } from '$lib/acoustics/lineUp.ts';
import { sideNames, type SideName } from '$lib/project/project.ts';
import type { Finding } from '$lib/plan/document.ts';
import type { CrossoverSound, EarlySound, SideSound, SoundPlan } from '$lib/plan/soundDocument.ts';
import { levelText, degreesText, frequencyText, millisecondsText, mmText } from './say.ts';
import { obstacleText, surfaceText } from './surfaceText.ts';

/** Least sum of a crossover re its drivers lined up, dB: half the power. */
const LEAST_SUM = -3;

/** What the geometry does to the sound, as findings: crossovers, treble, early reflections. Worst first within each. */
export const heardFindings = (sound: SoundPlan): Finding[] =>
  sideNames.flatMap((side) => [
    ...sound.sides[side].crossovers.flatMap((crossover) => crossoverSum(side, crossover)),
    ...treble(side, sound.sides[side]),
    ...[...sound.sides[side].early]
      .sort((a, b) => b.level - a.level)
      .flatMap((early) => earlyReflection(side, early, sound)),
  ]);

/** Two drivers that reach the head so far out of step that they take from each other; nothing where that is not known. */
function crossoverSum(side: SideName, { lower, upper, frequency, sum }: CrossoverSound): Finding[] {
  if (sum === null) return [];
  const { level: sumLevel, relativeDifference, relativePhase } = sum;
  if (sumLevel !== null && sumLevel >= LEAST_SUM) return [];
  const later = relativeDifference > 0 ? lower : upper;
  const loss = sumLevel === null ? 'cancel each other' : `lose ${levelText(-sumLevel)}`;
  return [
    {
      code: 'crossover-sum',
      level: 'caution',
      side,
      text: `At ${frequencyText(frequency)} ${upper} and ${lower} of the ${side} loudspeaker ${loss} at the head: the ${later} comes ${mmText(Math.abs(relativeDifference))} or ${degreesText(Math.abs(relativePhase))} late.`,
      value: sumLevel ?? DEEPEST,
      limit: LEAST_SUM,
      unit: 'dB',
      source: 'half the power: rule of thumb',
    },
  ];
}

/** Stands for an outright null where a number is needed, dB: nobody hears the difference. */
const DEEPEST = -60;

/** A head that sits outside the beam of the driver that plays the treble. */
function treble(side: SideName, { crossovers, drivers }: SideSound): Finding[] {
  const highest = crossovers.length === 0 ? drivers.slice(0, 1) : topDrivers(crossovers, drivers);
  return highest.flatMap(({ name, offAxis, levels, radiating, radiatingEstimated }): Finding[] => {
    const level = levels[nearestPlace(PRICE_FREQUENCY)] ?? 0;
    const { limit, source } = HEAD_LIMITS.treble;
    if (-level <= limit) return [];
    const estimate = radiatingEstimated
      ? ` That is for a radiating diameter of ${mmText(radiating)}, which is an estimate: measure it.`
      : '';
    return [
      {
        code: 'treble-off-axis',
        level: 'caution',
        side,
        text: `The head is ${degreesText(offAxis)} off the axis of the ${name} of the ${side} loudspeaker, which beams: up to ${levelText(-level)} less at ${frequencyText(PRICE_FREQUENCY)}.${estimate}`,
        value: level,
        limit: -limit,
        unit: 'dB',
        source,
      },
    ];
  });
}

/** The driver that a crossover calls the treble's and no other crossover hands on. */
function topDrivers(crossovers: readonly CrossoverSound[], drivers: SideSound['drivers']): SideSound['drivers'] {
  const [highest] = [...crossovers].sort((a, b) => b.frequency - a.frequency);
  return drivers.filter(({ name }) => name === highest?.treble);
}

const nearestPlace = (frequency: number): number => {
  const above = frequencies.findIndex((one) => one >= frequency);
  return above < 0 ? frequencies.length - 1 : above;
};

/** A surface that answers too soon and too loudly. */
function earlyReflection(side: SideName, early: EarlySound, { early: rule, sides }: SoundPlan): Finding[] {
  if (early.passes) return [];
  const notches = sides[side].response.notches.filter(
    ({ cause, monitor }) => cause === early.surface && monitor === early.monitor,
  );
  const deepest = notches.reduce<(typeof notches)[number] | null>(
    (a, b) => (a === null || b.depth > a.depth ? b : a),
    null,
  );
  const first =
    early.firstNotch === null
      ? ''
      : ` Its first notch is at ${frequencyText(early.firstNotch.frequency)}, of the ${early.firstNotch.driver}.`;
  const notch =
    deepest === null
      ? ''
      : ` In the response its deepest is one of ${levelText(deepest.depth)} at ${frequencyText(deepest.frequency)}.`;
  const screened =
    early.screenedBy === null
      ? ''
      : ` Counted with ${obstacleText(early.screenedBy)} in its way, which takes more the higher the sound.`;
  const bare = early.surface === 'desk' ? ' A bare desk cannot be made to pass by distance alone.' : '';
  return [
    {
      code: `early-${early.surface}${early.monitor === null ? '' : `-${early.monitor + 1}`}`,
      level: 'note',
      side,
      text: `${surfaceText(early)} sends the sound of the ${side} loudspeaker back ${millisecondsText(early.delay)} later and only ${levelText(-early.level)} lower.${first}${notch}${screened}${bare}`,
      value: early.level,
      limit: rule.level,
      unit: 'dB',
      source: rule.source,
    },
  ];
}
