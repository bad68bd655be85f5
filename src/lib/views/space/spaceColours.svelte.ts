import type { Attachment } from 'svelte/attachments';
import type { Palette, Rgb } from '$lib/drawing/space/colour.ts';
import type { Subject } from '$lib/drawing/view.ts';

/** The drawing's colours: of areas and of lines. */
const NAMES: Readonly<Record<Subject, { readonly tint: string; readonly edge: string }>> = {
  desk: { tint: '--desk', edge: '--line' },
  surface: { tint: '--desk', edge: '--line' },
  wall: { tint: '--wall', edge: '--line' },
  monitor: { tint: '--monitor', edge: '--line' },
  cabinet: { tint: '--cabinet', edge: '--cabinet-edge' },
  driver: { tint: '--driver', edge: '--cabinet-edge' },
  stand: { tint: '--wood', edge: '--wood-edge' },
  head: { tint: '--head', edge: '--line' },
  axis: { tint: '--aim', edge: '--aim' },
  triangle: { tint: '--sight', edge: '--sight' },
  sight: { tint: '--sight', edge: '--sight' },
  reflection: { tint: '--reflection', edge: '--reflection' },
  other: { tint: '--ink-soft', edge: '--ink-soft' },
};

/** What a change of makes other colours. */
const LOOKS = ['(prefers-color-scheme: dark)', '(prefers-contrast: more)', '(forced-colors: active)'] as const;
const [, , FORCED] = LOOKS;

/** The colours of the style sheet as numbers, for what does not draw with style sheets; null until they are read. */
export class Colours {
  #palette = $state.raw<Palette | null>(null);

  get palette(): Palette | null {
    return this.#palette;
  }

  /** Of an element that nobody sees. */
  readonly attach: Attachment<HTMLElement> = (node) => {
    const read = (): void => void (this.#palette = paletteOf(node));
    const lists = LOOKS.map((look) => window.matchMedia(look));
    read();
    for (const list of lists) list.addEventListener('change', read);
    return () => {
      for (const list of lists) list.removeEventListener('change', read);
    };
  };
}

function paletteOf(node: HTMLElement): Palette {
  const colour = (name: string): Rgb => {
    node.style.color = `var(${name})`;
    return rgbOf(getComputedStyle(node).color);
  };
  const both = (subject: Subject) => ({ tint: colour(NAMES[subject].tint), edge: colour(NAMES[subject].edge) });
  return {
    paper: colour('--paper'),
    colours: {
      desk: both('desk'),
      surface: both('surface'),
      wall: both('wall'),
      monitor: both('monitor'),
      cabinet: both('cabinet'),
      driver: both('driver'),
      stand: both('stand'),
      head: both('head'),
      axis: both('axis'),
      triangle: both('triangle'),
      sight: both('sight'),
      reflection: both('reflection'),
      other: both('other'),
    },
    unshaded: window.matchMedia(FORCED).matches,
  };
}

/** A computed colour, `rgb(1, 2, 3)` or `color(srgb 0 0.5 1)`. */
export function rgbOf(computed: string): Rgb {
  const [r = 0, g = 0, b = 0] = (computed.match(/-?[\d.]+(?:e-?\d+)?/g) ?? []).map(Number);
  const most = computed.startsWith('color(') ? 255 : 1;
  return [r * most, g * most, b * most];
}
