import type { Fault } from '$lib/project/fault.ts';
import type { Sheet } from '$lib/workshop/part.ts';
import type { Plan } from '$lib/solution/document.ts';

/** One file to download. */
export interface Download {
  /** Below the archive's folder, `/` between the parts. */
  readonly path: string;
  readonly text: string;
}

/** The cut files of what is shown: made when asked for, never while typing, by code that is fetched with the first asking. */
export type CutState =
  | { readonly kind: 'none' }
  | { readonly kind: 'made'; readonly files: readonly Download[] }
  | { readonly kind: 'refused'; readonly faults: readonly Fault[] };

/** What makes the files, its parts lying as on these sheets: handed in, so that the maker and its libraries load late. */
export type CutMaker = (shown: Plan, sheets: readonly Sheet[]) => Promise<CutState>;

export class CutSet {
  #state = $state.raw<CutState>({ kind: 'none' });
  #asked: {
    readonly shown: Plan;
    readonly sheets: readonly Sheet[];
    readonly coming: Promise<CutState>;
  } | null = null;
  readonly #make: CutMaker;

  constructor(make: CutMaker) {
    this.#make = make;
  }

  /** What the last asking came to. */
  get state(): CutState {
    return this.#state;
  }

  /** The files of what is shown; the same asking twice is answered once, and an answer that is out of date never shows. */
  async ask(shown: Plan, sheets: readonly Sheet[]): Promise<CutState> {
    const known = this.#asked?.shown === shown && this.#asked.sheets === sheets ? this.#asked : null;
    const asked = known ?? { shown, sheets, coming: this.#make(shown, sheets) };
    this.#asked = asked;
    try {
      const state = await asked.coming;
      if (this.#asked === asked) this.#state = state;
      return state;
    } catch (error) {
      if (this.#asked === asked) this.#asked = null;
      throw error;
    }
  }
}
