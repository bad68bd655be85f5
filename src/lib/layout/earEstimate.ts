import { rootBetween } from '$lib/geometry/root.ts';
import type { Person } from '$lib/project/project.ts';
import { density, deviationsAt, shareBelow, TO_P95 } from './normal.ts';
import { SHOES_AND_SLUMP_SOURCE, survey, SURVEY_SOURCE, type Measured, type Percentiles, type Sex } from './survey.ts';

/** One number of the sum that makes an ear height, mm: for showing the working. */
export interface EarTerm {
  readonly what: 'ear over the seat' | 'ear over the floor' | 'seat' | 'shoes' | 'slump';
  readonly value: number;
}

/** What is known of the ear heights of the people who could be meant. */
export interface EarGroup {
  readonly sex: Sex;
  /** Its share, 0…1. */
  readonly share: number;
  /** Add up to the middle of `heights`. */
  readonly terms: readonly EarTerm[];
  readonly heights: Percentiles;
}

/** An ear height that nobody measured, over the floor, mm. */
export interface EarEstimate {
  readonly earHeight: number;
  /** Nine in ten of the people who could be meant lie between. */
  readonly low: number;
  readonly high: number;
  /** Standard deviation: of a normal distribution with this low and high. The ± of the estimate. */
  readonly deviation: number;
  readonly groups: readonly EarGroup[];
  /** Where the numbers come from, and what is assumed. */
  readonly sources: readonly string[];
}

/**
 * The height of a sitting person's ears. From stature it is the middle of the people of that stature, and the spread is
 * theirs; without it the percentile asked for of all people, and the spread is everybody's, as a percentile only names
 * whom a desk is made for. Where the sex is not said, men and women count alike, by how common the stature is in each.
 *
 * A measured seat leaves the legs and the shoes out of the sum. Without one, and from stature, legs count as in
 * proportion to stature: an assumption, the figures give no rule for it. Slump and shoes are taken as exact.
 */
export function earEstimate(person: Person): EarEstimate {
  const groups = groupsOf(person);
  const at = (share: number) => quantile(groups, share);
  const [low, high] = [at(0.05), at(0.95)];
  const earHeight = at(person.stature === null ? person.percentile / 100 : 0.5);
  return { earHeight, low, high, deviation: (high - low) / (2 * TO_P95), groups, sources: sourcesOf(person) };
}

const sourcesOf = ({ stature, seat }: Person): string[] => [
  SURVEY_SOURCE,
  SHOES_AND_SLUMP_SOURCE,
  ...(stature !== null && seat === null ? ['Legs in proportion to stature: rule of thumb'] : []),
];

function groupsOf(person: Person): EarGroup[] {
  const sexes: readonly Sex[] = person.sex === 'not-said' ? ['man', 'woman'] : [person.sex];
  const commonness = sexes.map((sex) => (person.stature === null ? 1 : commonAt(survey[sex].stature, person.stature)));
  const all = commonness.reduce((sum, one) => sum + one, 0);
  return sexes.map((sex, i) => ({ sex, share: (commonness[i] ?? 0) / all, ...heightsOf(survey[sex], person) }));
}

const commonAt = (stature: Percentiles, at: number): number =>
  density((at - stature.p50) / deviation(stature)) / deviation(stature);

const deviation = ({ p5, p95 }: Percentiles): number => (p95 - p5) / (2 * TO_P95);

function heightsOf(of: Measured, person: Person): Pick<EarGroup, 'terms' | 'heights'> {
  const { stature, seat, slump } = person;
  const body = stature === null ? bodyOfAll(of, seat !== null) : bodyByStature(of, stature, seat !== null);
  const terms: EarTerm[] = [
    ...body.terms,
    ...(seat === null
      ? [{ what: 'shoes' as const, value: person.shoes ?? of.shoes }]
      : [{ what: 'seat' as const, value: seat }]),
    { what: 'slump', value: -slump },
  ];
  const p50 = terms.reduce((sum, { value }) => sum + value, 0);
  return { terms, heights: { p5: p50 - body.below, p50, p95: p50 + body.above } };
}

/** What the body adds to an ear height, and how far its P5 lies below and its P95 above. */
interface Body {
  readonly terms: readonly EarTerm[];
  readonly below: number;
  readonly above: number;
}

function bodyOfAll({ overSeat, overFloor }: Measured, seated: boolean): Body {
  const { p5, p50, p95 } = seated ? overSeat : overFloor;
  const what = seated ? 'ear over the seat' : 'ear over the floor';
  return { terms: [{ what, value: p50 }], below: p50 - p5, above: p95 - p50 };
}

/**
 * By a straight line through stature s with slope b. What s explains of a measure's variance is b²·var(s); the rest is
 * the spread among people of one stature.
 */
function bodyByStature(of: Measured, stature: number, seated: boolean): Body {
  const { slope, constant } = of.byStature;
  const legs = of.popliteal.p50 / of.stature.p50;
  const ear: EarTerm = { what: 'ear over the seat', value: slope * stature + constant };
  const explained = (seated ? slope : slope + legs) * deviation(of.stature);
  const rest = Math.sqrt(deviation(seated ? of.overSeat : of.overFloor) ** 2 - explained ** 2) * TO_P95;
  return { terms: seated ? [ear] : [ear, { what: 'seat', value: legs * stature }], below: rest, above: rest };
}

/** The height that a share of all the people stays under. */
function quantile(groups: readonly EarGroup[], share: number): number {
  const ends = groups.map(({ heights }) => heightAt(heights, deviationsAt(share)));
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  if (low === high) return low;
  const over = (height: number): number =>
    groups.reduce((sum, group) => sum + group.share * shareBelow(deviationsOf(group.heights, height)), 0) - share;
  return rootBetween(over, low, high) ?? (over(low) > 0 ? low : high);
}

/** A normal curve on each side of the middle, through all three percentiles. */
const heightAt = ({ p5, p50, p95 }: Percentiles, z: number): number =>
  p50 + (z * (z < 0 ? p50 - p5 : p95 - p50)) / TO_P95;

const deviationsOf = ({ p5, p50, p95 }: Percentiles, height: number): number =>
  ((height - p50) * TO_P95) / (height < p50 ? p50 - p5 : p95 - p50);
