import { priceText } from './price.ts';
import type { TriedSuggestion } from './suggestion.ts';

/** What a suggestion brings and what it costs, in half a sentence: `Clears 3 findings; 3 more layers a stand`. Null where there is nothing to add to its label. */
export function effectText({ clears, price }: Pick<TriedSuggestion, 'clears' | 'price'>): string | null {
  const gain =
    clears.length > 1
      ? [`clears ${clears.length} findings`]
      : clears.length === 0
        ? ['makes it half as bad, or better']
        : [];
  const text = [...gain, ...priceText(price)].join('; ');
  return text === '' ? null : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
