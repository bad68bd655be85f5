import { HEAD_LIMITS } from '$lib/acoustics/headHearing.ts';
import { nearestPlace } from '$lib/acoustics/grid.ts';
import { PRICE_FREQUENCY } from '$lib/acoustics/lineUp.ts';
import { asAngle, asLevel, asMm, asUnit } from '$lib/project/sentence.ts';
import { sideNames, type SideName } from '$lib/project/project.ts';
import type { Finding } from './finding.ts';
import type { CrossoverSound, EarlySound, SideSound, SoundPlan } from '$lib/solution/soundDocument.ts';

/** Least sum of a crossover re its drivers lined up, dB: half the power. */
const LEAST_SUM = -3;

/** What the geometry does to the sound, as findings: crossovers, treble, early reflections. Worst first within each. */
export const heardFindings = (sound: SoundPlan): Finding[] =>
  sideNames.flatMap((side) => [
    ...sound.sides[side].crossovers.flatMap((crossover) =>
      crossoverSum(side, crossover, sound.designPoint?.assumed ?? false),
    ),
    ...treble(side, sound.sides[side]),
    ...[...sound.sides[side].early]
      .sort((a, b) => b.level - a.level)
      .flatMap((early) => earlyReflection(side, early, sound)),
  ]);

/** Two drivers that reach the head so far out of step that they take from each other; nothing where that is not known. */
function crossoverSum(side: SideName, { lower, upper, frequency, sum }: CrossoverSound, assumed: boolean): Finding[] {
  if (sum === null) return [];
  const { level: sumLevel, relativeDifference, relativePhase } = sum;
  if (sumLevel !== null && sumLevel >= LEAST_SUM) return [];
  return [
    {
      code: 'crossover-sum',
      level: 'caution',
      sides: [side],
      subject: { between: [upper, lower] },
      facts: { assumed },
      quantities: {
        frequency: asUnit(frequency, 'Hz'),
        late: asMm(relativeDifference),
        phase: asAngle(relativePhase),
        ...(sumLevel !== null && { loss: asLevel(-sumLevel) }),
      },
      value: sumLevel ?? DEEPEST,
      limit: LEAST_SUM,
      unit: 'dB',
      source: 'half-power',
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
    const { limit } = HEAD_LIMITS.treble;
    if (-level <= limit) return [];
    return [
      {
        code: 'treble-off-axis',
        level: 'caution',
        sides: [side],
        subject: { driver: name },
        facts: {},
        quantities: {
          offAxis: asAngle(offAxis),
          less: asLevel(-level),
          frequency: asUnit(PRICE_FREQUENCY, 'Hz'),
          ...(radiatingEstimated && { estimated: asMm(radiating) }),
        },
        value: level,
        limit: -limit,
        unit: 'dB',
        source: 'head-treble',
      },
    ];
  });
}

/** The driver that a crossover calls the treble's and no other crossover hands on. */
function topDrivers(crossovers: readonly CrossoverSound[], drivers: SideSound['drivers']): SideSound['drivers'] {
  const [highest] = [...crossovers].sort((a, b) => b.frequency - a.frequency);
  return drivers.filter(({ name }) => name === highest?.treble);
}

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
  return [
    {
      code: 'early-reflection',
      level: 'note',
      sides: [side],
      subject: { surface: early.surface, monitor: early.monitor },
      facts: { notchOf: early.firstNotch?.driver ?? null, screenedBy: early.screenedBy },
      quantities: {
        delay: asUnit(early.delay, 'ms'),
        lower: asLevel(-early.level),
        ...(early.firstNotch && { firstNotch: asUnit(early.firstNotch.frequency, 'Hz') }),
        ...(deepest && { deepest: asLevel(deepest.depth), deepestAt: asUnit(deepest.frequency, 'Hz') }),
      },
      value: early.level,
      limit: rule.level,
      unit: 'dB',
      source: 'early-reflections',
    },
  ];
}
