import { batched, type Drawn } from '$lib/drawing/batch.ts';
import type { DimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import type { DrawnPane } from '$lib/drawing/steady.ts';
import type { Item, Subject } from '$lib/drawing/view.ts';
import { isDimension, thingPrimitives } from '$lib/drawing/viewPrimitives.ts';
import { sameJson } from '$lib/project/sameJson.ts';
import type { SideName } from '$lib/project/project.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import { dimensionOnPaper, type DimensionOnPaper } from './dimensionOnPaper.ts';
import { elementsOf, type Element } from './elements.ts';
import { handleOnPaper, type HandleOnPaper } from './handleOnPaper.ts';

/** Something on a view: whose loudspeaker the view shows, where it shows one. */
export interface OnView {
  readonly view: DrawnPane['key'];
  readonly side: SideName | null;
}

/** What a screen draws for one item that is no dimension, in px on the sheet. */
interface ShapeOnPaper {
  readonly id: string;
  /** What it is a picture of: the first, where several lines are one. */
  readonly item: Item;
  readonly subject: Subject;
  readonly elements: readonly Element[];
}

/** A view as a screen draws it. */
export interface PaneOnPaper {
  readonly key: DrawnPane['key'];
  readonly name: string;
  readonly shapes: readonly (ShapeOnPaper & OnView)[];
  readonly handles: readonly (HandleOnPaper & OnView)[];
  readonly dimensions: readonly (DimensionOnPaper & OnView)[];
  /** What it was made from. */
  readonly pane: DrawnPane;
  readonly style: DimensionStyle;
  readonly display: LengthDisplay;
  readonly side: SideName;
  readonly drawn: readonly Drawn[];
  /** Whether what is pressed and heard is still that of an earlier picture. */
  readonly lags: boolean;
}

/**
 * The views in px. Whatever comes of the very same item as before, at the same place, is the very same object again: the
 * screen has only what has changed to look at.
 *
 * @param moving The numbers are changing just now: what is pressed and heard, and not seen, stays as it was until they rest.
 */
export const onPaper = (
  before: readonly PaneOnPaper[],
  panes: readonly DrawnPane[],
  style: DimensionStyle,
  display: LengthDisplay,
  side: SideName,
  moving = false,
): PaneOnPaper[] =>
  panes.map((pane) =>
    paneOnPaper(
      before.find(({ key }) => key === pane.key),
      pane,
      style,
      display,
      side,
      moving,
    ),
  );

function paneOnPaper(
  last: PaneOnPaper | undefined,
  pane: DrawnPane,
  style: DimensionStyle,
  display: LengthDisplay,
  side: SideName,
  moving: boolean,
): PaneOnPaper {
  const { key, view, place } = pane;
  const isSame = last?.pane === pane && last.style === style && last.display === display && last.side === side;
  if (isSame && (moving || !last.lags)) return last;
  const stays = last?.pane.place === place && last.style === style && last.side === side;
  const on: OnView = { view: key, side: key === 'top' ? null : side };
  const saysAlike = stays && sameJson(last.display, display);
  const rows = saysAlike && last.pane.view.extent === view.extent;
  const drawn = batched(view.items);
  const touched = <Made extends Touched>(made: Made, old: Made | undefined): Made =>
    moving && old ? { ...made, touch: old.touch } : made;
  const upToDate = moving || !last?.lags;
  const paper = { place, style };
  return {
    key,
    name: view.name,
    shapes: kept(
      drawn,
      stays ? last.drawn : [],
      last?.shapes ?? [],
      (one): ShapeOnPaper & OnView => ({ ...shapeOf(one), elements: elementsOf(thingPrimitives(one, paper)), ...on }),
      sameDrawn,
    ),
    handles: kept(
      pane.handles,
      saysAlike ? last.pane.handles : [],
      last?.handles ?? [],
      (handle, old) => touched({ ...handleOnPaper(handle, place, display), ...on }, old),
      upToDate ? Object.is : NEVER,
    ),
    dimensions: kept(
      view.items.filter(isDimension),
      rows ? last.dimensions.map(({ dimension }) => dimension) : [],
      last?.dimensions ?? [],
      (dimension, old) => touched({ ...dimensionOnPaper(dimension, view.extent, paper, display), ...on }, old),
      upToDate ? Object.is : NEVER,
    ),
    lags: moving,
    pane,
    style,
    display,
    side,
    drawn,
  };
}

interface Touched {
  readonly touch: unknown;
}

const NEVER = (): boolean => false;

function shapeOf(drawn: Drawn): Omit<ShapeOnPaper, 'elements'> {
  const item = drawn.kind === 'lines' ? drawn.first : drawn;
  return { id: drawn.id, item, subject: item.subject };
}

/**
 * What is made of each; of one that was there before and is the same, what was made of it then. `made[i]` was made of
 * `before[i]`, where that is still worth comparing.
 */
function kept<From extends { readonly id: string }, Made>(
  now: readonly From[],
  before: readonly From[],
  made: readonly (Made & { readonly id: string })[],
  make: (from: From, old: Made | undefined) => Made,
  same: (one: From, other: From) => boolean = Object.is,
): Made[] {
  const places = new Map(made.map(({ id }, index) => [id, index]));
  return now.map((from) => {
    const index = places.get(from.id) ?? -1;
    const [old, of] = [made[index], before[index]];
    return old !== undefined && of !== undefined && same(of, from) ? old : make(from, old);
  });
}

/** Lines taken together are put together anew each time: of the same lines they are the same. */
const sameDrawn = (one: Drawn, other: Drawn): boolean =>
  one === other ||
  (one.kind === 'lines' &&
    other.kind === 'lines' &&
    one.first === other.first &&
    one.lines.length === other.lines.length &&
    one.lines.every((line, index) => line === other.lines[index]));
