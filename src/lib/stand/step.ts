import { type Quantities, type Sentence } from '$lib/project/sentence.ts';

/** So many of one piece, body or kind. */
export interface Some {
  readonly name: string;
  readonly count: number;
}

/** What a step of the work does, with all that it takes to do it. */
export type Doing =
  | { readonly act: 'cut'; readonly pieces: readonly Some[] }
  | { readonly act: 'print'; readonly bodies: readonly Some[] }
  /** To a blank's size. */
  | { readonly act: 'square-up'; readonly block: string }
  | { readonly act: 'template'; readonly block: string }
  /** Of its templates, once the last of their lines is used. */
  | { readonly act: 'strip'; readonly block: string }
  /** One of the block's cuts, by its place among them. */
  | { readonly act: 'saw'; readonly block: string; readonly cut: number }
  | { readonly act: 'plane'; readonly block: string }
  /** Layers side by side across the width, from inboard, without glue. */
  | { readonly act: 'stack'; readonly layers: readonly Some[] }
  | { readonly act: 'rod'; readonly count: number; readonly diameter: number }
  | { readonly act: 'interlock'; readonly ribs: readonly Some[]; readonly crosses: readonly Some[] }
  /** What is stacked or fitted, or a part onto the rest. */
  | { readonly act: 'glue'; readonly parts: readonly string[] }
  /** Down to the edge of each layer that is right as cut, or flush with its neighbours. */
  | { readonly act: 'sand'; readonly to: 'inboard' | 'outboard' | 'flush' }
  | { readonly act: 'fill' | 'check' | 'mill' | 'round' | 'veneer' | 'mat' | 'feet' | 'pad' | 'load' };

/** One step of the work, as a sentence and as what it does. */
export type Step = Sentence &
  Doing & {
    readonly quantities: Quantities;
    /** What its numbers are for: one stand, or the pair. */
    readonly per: 'stand' | 'both';
  };

/** A step on one stand. */
export const step = (doing: Doing, template: string, quantities: Quantities = {}): Step => ({
  ...doing,
  per: 'stand',
  template,
  quantities,
});
