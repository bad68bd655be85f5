import type { Words } from '$lib/project/sentence.ts';
import type { Quantity, Subject, Term } from './term.ts';

/** What the picture beside a formula shows. */
export type FigureName =
  | 'toe'
  | 'side'
  | 'miss'
  | 'triangle'
  | 'driver'
  | 'crossover'
  | 'reflection'
  | 'stack'
  | 'profile'
  | 'rod'
  | 'tip'
  | 'slide'
  | 'piston';

export type Topic =
  | 'Air'
  | 'Aim'
  | 'Postures'
  | 'Triangle'
  | 'Screens'
  | 'Drivers'
  | 'Crossovers'
  | 'Reflections'
  | 'Stand'
  | 'Stability';

/** How a number of the results is found. */
export interface Formula {
  /** The number that it explains, by a word of its own. */
  readonly id: string;
  readonly topic: Topic;
  readonly title: string;
  readonly result: Quantity;
  /** What it equals. */
  readonly term: Term;
  /** Whether there is a number to explain; always where nothing is said. */
  readonly known?: (subject: Subject) => boolean;
  /** When it is this formula that counts; always where nothing is said. */
  readonly holds?: (subject: Subject) => boolean;
  /** When that is, in words. */
  readonly when?: string;
  /** The document it is from; geometry itself where nothing is said. */
  readonly source?: string;
  /** Where it stops being true; exact for the numbers as measured where nothing is said. */
  readonly limits?: Words;
  readonly figure: FigureName | null;
}
