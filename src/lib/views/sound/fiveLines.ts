import { FURTHEST, type HeadReach } from '$lib/acoustics/headReach.ts';
import { sideNames, type SideName } from '$lib/project/project.ts';
import { sentenceText } from '$lib/project/sentence.ts';
import type { Plan } from '$lib/solution/document.ts';
import type { Finding, FindingCode } from '$lib/solution/findings/finding.ts';
import { gravest } from '$lib/solution/findings/harm.ts';
import { isStanding, TEST_PLANE } from '$lib/solution/findings/testPlane.ts';
import type { FindingLevel } from '$lib/solution/findings/told.ts';
import { verdict } from '$lib/solution/findings/verdict.ts';
import type { ListeningAreaPlan } from '$lib/solution/listeningArea.ts';
import type { SoundPlan } from '$lib/solution/soundDocument.ts';
import { formatNumber, quantityText, tapeText } from '$lib/views/ui/formatNumber.ts';
import { missText, withSpread } from '$lib/views/ui/spread.ts';
import { hertzText } from './hertz.ts';
import { causeName } from '$lib/solution/causeName.ts';

/** What is asked of a pair of loudspeakers, in the order of the page. */
export type LineName = 'Aimed' | 'In step' | 'Even' | 'Free' | 'Steady';

/** One line of the verdict: whether it is so, by how much, and where that is drawn. */
export interface Line {
  readonly name: LineName;
  /** `waiting` while that is still being worked out. */
  readonly level: FindingLevel | 'good' | 'waiting';
  /** The number that it is judged by, and what that is; both empty while waiting. */
  readonly figure: string;
  readonly of: string;
  readonly sentence: string;
  /** Id of the heading over what is drawn of it. */
  readonly at: string;
}

/** What the lines are made from; null for what has not come yet. */
export interface Heard {
  readonly plan: Plan;
  readonly sound: SoundPlan | null;
  readonly area: ListeningAreaPlan | null;
  /** Of the sound, beside those of the plan. */
  readonly findings: readonly Finding[] | null;
}

/** Whether the loudspeakers are aimed, in step, even, free and steady: of the worse of the two. */
export const fiveLines = (of: Heard): readonly Line[] => [
  aimed(of.plan),
  inStep(of),
  even(of),
  free(of),
  steady(of.plan),
];

/** The gravest that is said of it; `good` where nothing is. */
const levelOf = (
  { plan, findings }: Pick<Heard, 'plan' | 'findings'>,
  ...codes: readonly FindingCode[]
): Line['level'] => gravest([...plan.checks, ...(findings ?? [])].filter(({ code }) => codes.includes(code))) ?? 'good';

const waiting = (name: LineName, at: string): Line => ({
  name,
  level: 'waiting',
  figure: '',
  of: '',
  sentence: 'Being worked out.',
  at,
});

/** The side with the greatest of a number. */
const worse = (of: (side: SideName) => number): SideName => (of('left') > of('right') ? 'left' : 'right');

/** Whether each axis passes through the head. */
export function aimed(plan: Plan): Line {
  const { sides, project } = plan;
  const side = worse((one) => sides[one].miss);
  const { miss } = sides[side];
  const told = tapeText(miss, project.display);
  const open = missText(plan, side);
  return {
    name: 'Aimed',
    level: levelOf({ plan, findings: null }, 'axis-misses-head', 'axis-misses-ears'),
    figure: withSpread(told, open),
    of: 'past the head',
    sentence: `${
      miss < HAIR
        ? 'Each axis passes through the middle of the head'
        : `The ${side} axis passes the middle of the head ${told} away`
    }${open === '' ? '' : `; ${open} by the uncertainty of the measured values`}.`,
    at: 'response-title',
  };
}

/** What nobody sees on a tape, mm. */
const HAIR = 0.5;

function inStep(of: Heard): Line {
  const at = 'crossovers-title';
  const { sound, plan } = of;
  if (!sound) return waiting('In step', at);
  const level = levelOf(of, 'crossover-sum', 'lobe-unknown');
  const worst = worstCrossover(sound);
  if (!worst) {
    return { name: 'In step', level: 'good', figure: 'one', of: 'driver', sentence: 'There is no crossover.', at };
  }
  const { lower, upper, pathDifference, sum, frequency } = worst;
  const [further, nearer] = pathDifference > 0 ? [lower, upper] : [upper, lower];
  const path = `The ${further} is ${tapeText(Math.abs(pathDifference), plan.project.display)} further away than the ${nearer}.`;
  if (sum === null) {
    const unknown = `${path} How they add up is not known: where the maker lined them up is not given.`;
    return {
      name: 'In step',
      level: level === 'good' ? 'note' : level,
      figure: 'not known',
      of: '',
      sentence: unknown,
      at,
    };
  }
  return {
    name: 'In step',
    level,
    figure: sum.level === null ? 'cancelled' : quantityText(sum.level, 1, 'dB'),
    of: `at ${hertzText(frequency)}`,
    sentence: path,
    at,
  };
}

/** The crossover that loses most at the head, of both sides; undefined where there is none. */
export function worstCrossover({ sides }: SoundPlan): SoundPlan['sides'][SideName]['crossovers'][number] | undefined {
  const all = sideNames.flatMap((side) => sides[side].crossovers);
  const lost = ({ sum }: (typeof all)[number]): number => (sum ? (sum.level ?? -Infinity) : 0);
  const [worst] = all.toSorted((a, b) => lost(a) - lost(b) || Math.abs(b.pathDifference) - Math.abs(a.pathDifference));
  return worst;
}

function even(of: Heard): Line {
  const at = 'response-title';
  const { sound } = of;
  if (!sound) return waiting('Even', at);
  const voices = sideNames.map((side) => sound.sides[side]);
  const [deepest] = voices.flatMap(({ response }) => response.notches).toSorted((a, b) => b.depth - a.depth);
  const [loudest] = voices
    .flatMap(({ early }) => early)
    .filter(({ within }) => within)
    .toSorted((a, b) => b.level - a.level);
  const early = loudest
    ? `The ${causeName(loudest.surface, loudest.monitor)} answers ${quantityText(loudest.delay, 1, 'ms')} later, ${quantityText(Math.abs(loudest.level), 1, 'dB')} ${loudest.level < 0 ? 'lower' : 'louder'}.`
    : 'No surface near sends anything back.';
  const level = levelOf(of, 'early-reflection');
  if (!deepest) return { name: 'Even', level, figure: 'under 3\u202fdB', of: 'deep', sentence: early, at };
  return {
    name: 'Even',
    level: level === 'good' ? 'note' : level,
    figure: quantityText(-deepest.depth, 0, 'dB'),
    of: `at ${hertzText(deepest.frequency)}`,
    sentence: `${early} The deepest notch: ${causeName(deepest.cause, deepest.monitor)}.`,
    at,
  };
}

/** How far the head is free to move. */
export function free(of: Pick<Heard, 'plan' | 'area' | 'findings'>): Line {
  const at = 'head-title';
  const { area, plan } = of;
  if (!area) return waiting('Free', at);
  const { display } = plan.project;
  const { box, seats } = area;
  const told = ({ distance }: HeadReach): string =>
    distance >= FURTHEST ? `over ${tapeText(FURTHEST, display)}` : tapeText(distance, display);
  const level = levelOf(of, 'posture-suffers', 'time-difference', 'level-difference');
  return {
    name: 'Free',
    level: seats.some(({ out }) => out !== null) && level === 'good' ? 'note' : level,
    figure: `± ${told(box.left.distance < box.right.distance ? box.left : box.right)}`,
    of: 'sideways',
    sentence: `Beyond, what is heard changes. To the desk ${told(box.forward)}, back ${told(box.back)}, up ${told(box.up)}, down ${told(box.down)}.`,
    at,
  };
}

/** The side that gives way first. */
export const lessSteady = (balance: Plan['balance']): SideName => worse((one) => -balance[one].verdict.holds.least);

/** The side whose response has the deepest notch. */
export const lessEven = ({ sides }: SoundPlan): SideName =>
  worse((one) => Math.max(0, ...sides[one].response.notches.map(({ depth }) => depth)));

/** Whether each loudspeaker stays where it stands. */
export function steady({ balance, project, checks }: Plan): Line {
  const side = lessSteady(balance);
  const { holds } = balance[side].verdict;
  return {
    name: 'Steady',
    level: gravest(checks.filter(isStanding)) ?? 'good',
    figure: `${formatNumber(holds.least, 1)}°`,
    of: `of ${TEST_PLANE}° asked`,
    sentence: sentenceText(verdict(balance[side]), project.display),
    at: 'standing-title',
  };
}
