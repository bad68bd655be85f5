import { select, zoom, zoomIdentity, type ZoomTransform } from 'd3';
import type { Attachment } from 'svelte/attachments';

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

/** One look at the paper, moved by wheel, pinch, drag, keys and buttons. */
export class PaperZoom {
  #transform = $state.raw<ZoomTransform>(zoomIdentity);
  readonly #behaviour = zoom<SVGSVGElement, unknown>()
    .scaleExtent([1, MOST])
    .filter((event: Event) => this.#takes(event))
    .on('zoom', (event: { transform: ZoomTransform }) => (this.#transform = event.transform));
  #node: SVGSVGElement | null = null;

  get transform(): ZoomTransform {
    return this.#transform;
  }

  get enlarged(): boolean {
    return this.#transform.k > 1;
  }

  /** Makes the paper move; without a script it lies still and cannot be reached with the tab key. */
  readonly attach: Attachment<SVGSVGElement> = (node) => {
    this.#node = node;
    const selection = select(node).call(this.#behaviour).on('dblclick.zoom', null);
    node.setAttribute('tabindex', '0');
    const press = (event: KeyboardEvent) => this.#press(event);
    node.addEventListener('keydown', press);
    return () => {
      selection.on('.zoom', null);
      node.removeEventListener('keydown', press);
      this.#node = null;
    };
  };

  /** The paper is this large; it cannot be pushed out of sight. */
  resize(width: number, height: number): void {
    this.#behaviour
      .extent([
        [0, 0],
        [width, height],
      ])
      .translateExtent([
        [0, 0],
        [width, height],
      ]);
    if (this.#node) select(this.#node).call(this.#behaviour.translateBy, 0, 0);
  }

  readonly in = (): void => this.#act('in');
  readonly out = (): void => this.#act('out');
  readonly fit = (): void => this.#act('fit');

  #act(key: Key): void {
    if (!this.#node) return;
    const paper = select(this.#node);
    const shift = NUDGE / this.#transform.k;
    const moves = { left: [shift, 0], right: [-shift, 0], up: [0, shift], down: [0, -shift] } as const;
    if (key === 'fit') paper.call(this.#behaviour.transform, zoomIdentity);
    else if (key === 'in') paper.call(this.#behaviour.scaleBy, STEP);
    else if (key === 'out') paper.call(this.#behaviour.scaleBy, 1 / STEP);
    else paper.call(this.#behaviour.translateBy, ...moves[key]);
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
