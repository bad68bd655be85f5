import { designPointOf } from '$lib/acoustics/designPoint.ts';
import { crossoverSums } from '$lib/acoustics/crossover.ts';
import { EARLY } from '$lib/acoustics/early.ts';
import { CANCELLED } from '$lib/acoustics/driversMeet.ts';
import { hearingAt } from '$lib/acoustics/headHearing.ts';
import { FURTHEST, reachOf, stepFor, type HeadWay } from '$lib/acoustics/headReach.ts';
import { sideNames } from '$lib/project/project.ts';
import type { FindingLevel } from '$lib/solution/findings/told.ts';
import { merged } from '$lib/solution/findings/whole.ts';
import { seatsOf } from '$lib/solution/headVoices.ts';
import type { Solution } from '$lib/solution/solution.ts';
import { deskLevel } from '$lib/solution/sound/early.ts';
import type { Standing } from '$lib/solution/sound/heard.ts';
import type { Measure } from './measure.ts';

/** Where a notch of the response counts, Hz: under it the room decides, over it notches are narrow and move with the head. */
const NOTCHES = { from: 200, to: 4000 };

const ways: readonly HeadWay[] = ['left', 'right', 'forward', 'back', 'up', 'down'];

/** Of what arrives at the head, and of everything that the checks have to say. */
export const soundMeasures: readonly Measure[] = [
  {
    name: 'crossover-loss',
    label: 'Summing loss',
    unit: 'dB',
    better: 'less',
    says: 'How much a crossover loses at the head because its two drivers are not heard in step; negative for a gain.',
    working: 'level of the sum re the drivers lined up, at each crossover and side; the largest loss, 120 dB at most',
    missing: { means: 'the design point is not known', is: 'unknown' },
    needs: 'heard',
    of: ({ speaker, sides, head, speedOfSound }) => {
      const point = designPointOf(speaker);
      const sums = sideNames.flatMap((side) =>
        crossoverSums(speaker.crossovers, sides[side].drivers, point, head, speedOfSound),
      );
      if (sums.some(({ sumKnown }) => !sumKnown)) return null;
      return sums.length === 0 ? 0 : Math.max(...sums.map(({ sumLevel }) => -(sumLevel ?? 20 * Math.log10(CANCELLED))));
    },
  },
  {
    name: 'desk-level',
    label: 'Desk reflection',
    unit: 'dB',
    better: 'less',
    says: 'How loud the early reflection from the desk is, against the direct sound.',
    working: 'mean level of the desk’s reflection from 1 to 8 kHz re the direct sound, within 15 ms; the louder side',
    missing: { means: 'no early reflection from the desk arrives', is: 'best' },
    limit: { value: EARLY.level, source: EARLY.source },
    needs: 'heard',
    of: deskLevel,
  },
  {
    name: 'deepest-notch',
    label: 'Deepest notch',
    unit: 'dB',
    better: 'less',
    says: 'How deep the deepest notch of either loudspeaker’s response is from 200 Hz to 4 kHz.',
    working: 'depth of each notch of the response at the head, 1/24 octave; the deepest, 0 where there is none',
    needs: 'sound',
    of: ({ sound }) =>
      Math.max(
        0,
        ...sideNames.flatMap((side) =>
          sound.sides[side].response.notches
            .filter(({ frequency }) => frequency >= NOTCHES.from && frequency <= NOTCHES.to)
            .map(({ depth }) => depth),
        ),
      ),
  },
  {
    name: 'safe-zone',
    label: 'Safe zone',
    unit: 'mm',
    better: 'more',
    says: 'How far every head may move in any one direction before treble, crossover or image give out.',
    working: `the way to the first limit that is reached, from every posture, to each side, forward, back, up and down; the least, ${FURTHEST} mm at most`,
    needs: 'heard',
    of: safeZone,
  },
  {
    name: 'faults',
    label: 'Faults',
    unit: '',
    better: 'less',
    says: 'How many findings say that the layout cannot be built or used as it is.',
    working: 'findings counted; one that both loudspeakers share counts once',
    needs: 'sound',
    of: (solution) => countOf(solution, 'fault'),
  },
  {
    name: 'cautions',
    label: 'Cautions',
    unit: '',
    better: 'less',
    says: 'How many findings call for care.',
    working: 'findings counted; one that both loudspeakers share counts once',
    needs: 'sound',
    of: (solution) => countOf(solution, 'caution'),
  },
];

/** The least reach of any head in any direction, mm: the least side of the safe zone. */
function safeZone({ speaker, layout, head: planned, speedOfSound, sides }: Standing): number {
  const hear = hearingAt(speaker, sides, planned, speedOfSound);
  const step = stepFor(Math.max(0, ...speaker.crossovers.map(({ frequency }) => frequency)), speedOfSound);
  let least: number = FURTHEST;
  for (const { head } of seatsOf(layout, { head: planned })) {
    for (const way of ways) {
      least = Math.min(least, reachOf(hear, head, way, step).distance);
      if (least === 0) return 0;
    }
  }
  return least;
}

const countOf = ({ findings }: Solution, level: FindingLevel): number =>
  merged(findings.filter((finding) => finding.level === level)).length;
