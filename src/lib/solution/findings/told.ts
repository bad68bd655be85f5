import type { Quantity, Sentence } from '$lib/project/sentence.ts';

export type FindingLevel = 'fault' | 'caution' | 'note';

/** Where there is nothing to be said of a kind. */
export type Nothing = Readonly<Record<never, never>>;

/**
 * What the wording of a finding is made from.
 *
 * @typeParam Names The quantities that it always has.
 * @typeParam Subject What it is about beside a loudspeaker: what tells two findings of one code apart.
 * @typeParam Facts What else is so, where a number does not say it.
 * @typeParam Maybe The quantities that it has in some cases only.
 */
export interface Told<Names extends string = never, Subject = Nothing, Facts = Nothing, Maybe extends string = never> {
  readonly subject: Subject;
  readonly facts: Facts;
  readonly quantities: Readonly<Record<Names, Quantity>> & Readonly<Partial<Record<Maybe, Quantity>>>;
  /** What would do, worked out for this project; absent where it was not asked for or nothing is known. */
  readonly advice?: Sentence;
}

/** The loudspeakers that a sentence speaks of: `the left`, or `each` where it holds for both; with a capital to begin one. */
export interface Sides {
  readonly The: string;
  readonly the: string;
}
