import type { Pane } from '$lib/drawing/pane.ts';
import type { ViewName } from '$lib/drawing/views.ts';
import type { AngleDimension, Dimension } from '$lib/drawing/view.ts';
import type { Stillness } from './hand.svelte.ts';

/** A dimension that is being typed into. */
export interface TypedInto {
  readonly view: ViewName;
  /** As it was when it was opened. */
  readonly dimension: Dimension | AngleDimension;
  readonly input: string;
  /** The key it was opened with, several where it took a while to open; empty for none. */
  readonly first: string;
  /** Another one for each opening. */
  readonly key: number;
}

/** Whether keys type something, and are no arrow. */
const isTyped = (keys: string): boolean => keys !== '' && !keys.startsWith('Arrow');

/** Which dimension of the sheet is typed into, and where the focus goes when that ends. */
export class Typing {
  #now = $state.raw<TypedInto | null>(null);
  #opened = 0;
  #paper: SVGSVGElement | null = null;
  readonly #panes: () => readonly Pane[];
  readonly #sheet: Stillness;

  constructor(panes: () => readonly Pane[], sheet: Stillness) {
    this.#panes = panes;
    this.#sheet = sheet;
  }

  get now(): TypedInto | null {
    return this.#now;
  }

  attach(paper: SVGSVGElement): void {
    this.#paper = paper;
  }

  /** False for a result: it cannot be typed into. */
  open(view: ViewName, dimension: Dimension | AngleDimension, first: string): boolean {
    const { input } = dimension;
    if (input === undefined) return false;
    const before = this.#keysFor(view, dimension, first);
    this.#opened += 1;
    this.#sheet.hold(view);
    this.#now = { view, dimension, input, first: before + first, key: this.#opened };
    return true;
  }

  /** What was typed before this key while the field was still on its way. */
  #keysFor(view: ViewName, { id }: Dimension | AngleDimension, key: string): string {
    const now = this.#now;
    const isSame = now?.view === view && now.dimension.id === id;
    return isSame && isTyped(key) && isTyped(now.first) ? now.first : '';
  }

  /** Ends the typing; the next or previous input of the sheet takes over. False where there is none. */
  readonly leave = (how: 'left' | 'closed' | 'next' | 'previous'): boolean => {
    const before = this.#now;
    if (!before) return false;
    this.#now = null;
    this.#sheet.release();
    if (how === 'left') return true;
    const target = how === 'closed' ? null : this.#beside(before, how === 'next' ? 1 : -1);
    if (target) return this.open(target.view, target.dimension, '');
    this.#focus(before);
    return how === 'closed';
  };

  #beside({ view, dimension }: TypedInto, by: 1 | -1): Pick<TypedInto, 'view' | 'dimension'> | undefined {
    const all = this.#panes().flatMap((pane) =>
      pane.view.items.flatMap((item) =>
        (item.kind === 'dimension' || item.kind === 'angle') && item.input !== undefined
          ? [{ view: pane.key, dimension: item }]
          : [],
      ),
    );
    const at = all.findIndex((one) => one.view === view && one.dimension.id === dimension.id);
    return at < 0 ? undefined : all[at + by];
  }

  #focus({ view, dimension }: TypedInto): void {
    const found = this.#paper?.querySelector<SVGElement>(
      `[data-view="${view}"] [data-item="${CSS.escape(dimension.id)}"]`,
    );
    found?.focus({ preventScroll: true });
  }
}
