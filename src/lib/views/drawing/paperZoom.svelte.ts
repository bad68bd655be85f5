import type { Attachment } from 'svelte/attachments';
import type { Zoom } from '$lib/drawing/place.ts';
import type { Zooming } from './behaviours.ts';
import { pointerTools } from './pointerTools.ts';

/** How far a sheet can be enlarged. */
const MOST = 24;
const STEP = 1.35;
/** Paper moved by one press of an arrow key, px. */
const NUDGE = 48;

type Key = 'in' | 'out' | 'fit' | 'left' | 'right' | 'up' | 'down';

const KEYS: Readonly<Record<string, Key>> = {
  '+': 'in',
  '=': 'in',
  '-': 'out',
  _: 'out',
  '0': 'fit',
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
};

const WHOLE: Zoom = { k: 1, x: 0, y: 0 };

/** One look at the paper, moved by wheel, pinch, drag, keys and buttons. */
export class PaperZoom {
  #transform = $state.raw<Zoom>(WHOLE);
  #node: SVGSVGElement | null = null;
  #zooming: Zooming | null = null;
  #size = { width: 0, height: 0 };

  get transform(): Zoom {
    return this.#transform;
  }

  get enlarged(): boolean {
    return this.#transform.k > 1;
  }

  /** Makes the paper move; without a script it lies still and cannot be reached with the tab key. */
  readonly attach: Attachment<SVGSVGElement> = (node) => {
    this.#node = node;
    const press = (event: KeyboardEvent) => this.#press(event);
    void this.#start(node);
    node.addEventListener('keydown', press);
    return () => {
      node.removeEventListener('keydown', press);
      this.#zooming?.stop();
      this.#zooming = null;
      this.#node = null;
    };
  };

  /** The paper is this large; it cannot be pushed out of sight. */
  resize(width: number, height: number): void {
    this.#size = { width, height };
    this.#zooming?.resize(width, height);
  }

  readonly in = (): void => this.#act('in');
  readonly out = (): void => this.#act('out');
  readonly fit = (): void => this.#act('fit');

  async #start(node: SVGSVGElement): Promise<void> {
    const { makeZoomable } = await pointerTools();
    if (this.#node !== node) return;
    this.#zooming = makeZoomable(
      node,
      MOST,
      (event) => this.#takes(event),
      (look) => (this.#transform = look),
    );
    this.#zooming.resize(this.#size.width, this.#size.height);
    node.setAttribute('tabindex', '0');
  }

  #act(key: Key): void {
    const zooming = this.#zooming;
    if (!zooming) return;
    const shift = NUDGE / this.#transform.k;
    const acts: Readonly<Record<Key, () => void>> = {
      in: () => zooming.by(STEP),
      out: () => zooming.by(1 / STEP),
      fit: () => zooming.fit(),
      left: () => zooming.shift(shift, 0),
      right: () => zooming.shift(-shift, 0),
      up: () => zooming.shift(0, shift),
      down: () => zooming.shift(0, -shift),
    };
    acts[key]();
  }

  #press(event: KeyboardEvent): void {
    const key = KEYS[event.key];
    if (key === undefined || event.target !== this.#node || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    this.#act(key);
  }

  /** Leaves to the page what the whole sheet has no use for: scrolling on past it, and one finger's swipe. */
  #takes(event: Event): boolean {
    if (event instanceof WheelEvent) return this.enlarged || event.deltaY < 0;
    if (typeof TouchEvent !== 'undefined' && event instanceof TouchEvent)
      return this.enlarged || event.touches.length > 1;
    return event instanceof MouseEvent && event.button === 0 && !event.ctrlKey;
  }
}
