import { pointerTo } from '$lib/project/fault.ts';
import type { Sentence } from '$lib/project/sentence.ts';
import type { FindingCode, FindingKind } from './finding.ts';
import type { Price } from './price.ts';
import type { Layout } from '$lib/project/project.ts';

/** One value to set in the project, by its JSON pointer. */
export interface SuggestedEdit {
  readonly pointer: string;
  readonly value: unknown;
}

/** What would answer a finding: in words for a button, and as edits of the project. All together are one step. */
export interface Suggestion {
  readonly label: Sentence;
  readonly edits: readonly SuggestedEdit[];
}

/** A suggestion that has been tried: what else goes with it, and what it costs. */
export interface TriedSuggestion extends Suggestion {
  /** What kinds of findings are gone once it is done, its own among them where nothing of it is left. */
  readonly clears: readonly FindingKind[];
  readonly price: Price;
}

/** New values for a few settings of a layout: what is not named stays. */
export interface LayoutChange {
  readonly listener?: Partial<Pick<Layout['listener'], 'offset' | 'setback'>>;
  readonly placement?: Partial<Layout['placement']>;
  readonly aim?: Partial<Layout['aim']>;
  readonly stand?: Partial<Layout['stand']>;
}

/** The layout with a change made. */
export const changedLayout = (layout: Layout, change: LayoutChange): Layout => ({
  ...layout,
  listener: { ...layout.listener, ...change.listener },
  placement: { ...layout.placement, ...change.placement },
  aim: { ...layout.aim, ...change.aim },
  stand: { ...layout.stand, ...change.stand },
});

/** The same change as edits of the project that the layout is number `index` of. */
export const editsOf = (change: LayoutChange, index: number): SuggestedEdit[] =>
  Object.entries(change).flatMap(([group, settings]) =>
    Object.entries(settings).map(([key, value]) => ({ pointer: pointerTo('layouts', index, group, key), value })),
  );

/** What a suggestion sets, whatever to: one that was followed and did what could be done is not offered again with a little more. */
export const kindOf = ({ edits }: Suggestion): string => edits.map(({ pointer }) => pointer).join(' ');

/** The suggestions but those that set what one has just set that was followed. */
export const notTaken = (
  suggestions: ReadonlyMap<FindingCode, TriedSuggestion>,
  taken: ReadonlySet<string>,
): Map<FindingCode, TriedSuggestion> =>
  new Map([...suggestions].filter(([, suggestion]) => !taken.has(kindOf(suggestion))));
