import type { Point } from '$lib/geometry/point.ts';
import { asideFrames, ASIDE_LEAST } from './aside.ts';
import { belowCaption } from './captions.ts';
import type { DimensionStyle } from './dimensionStyle.ts';
import type { Handle } from './handle.ts';
import { keyPlaces, type KeyPlace } from './keyPlace.ts';
import type { Pane, Shown } from './pane.ts';
import type { Place } from './place.ts';
import type { Floor } from './roomFromSide.ts';
import { closeRows, ofRank, withoutRepeats } from './rows.ts';
import { sheetLayout, widthAt, type Frame } from './sheetLayout.ts';
import type { SheetSource } from './sheetSource.ts';
import type { Rank, View } from './view.ts';
import { views, type ViewName } from './views.ts';

/** A sheet with everything it could show, and where. */
export interface Sheet {
  /** The views of the desk from the top of the sheet down, then those beside them. */
  readonly panes: readonly Pane[];
  readonly key: KeyPlace;
  /** How the floor is drawn on the side view. */
  readonly floor: Floor;
}

interface NamedView {
  readonly key: ViewName;
  readonly view: View;
}

/** The legs are drawn whole when that costs no more than this share of the scale. */
const WHOLE_LEGS = 0.9;
/** The views of the desk give way to those beside them by no more than this share of their scale. */
const BESIDE = 0.8;

/** Scales of the paper from which the second and the third rank of items have room: 1:22 and 1:7. */
const SECOND_RANK = 1 / 22;
const THIRD_RANK = 1 / 7;
/** Least height for both views of the desk, in paper mm: below it they would be too small to read, and one is shown. */
const BOTH_VIEWS = 135;

/** The rank of items that a scale has room for, paper units for each real mm. */
function rankFor(scale: number, { unit }: DimensionStyle): Rank {
  if (scale / unit >= THIRD_RANK) return 3;
  return scale / unit >= SECOND_RANK ? 2 : 1;
}

/** Whether a frame has room for several views at once. */
export const severalFit = ({ height }: Frame, { unit }: DimensionStyle): boolean => height / unit >= BOTH_VIEWS;

/** What is shown of what was asked for (null: nothing yet): all views where they fit, else one. */
export function shownOf(asked: Shown | null, fit: boolean): Shown {
  const wanted = asked ?? 'all';
  return wanted === 'all' && !fit ? 'top' : wanted;
}

/** One view of a project. */
export const viewOf = (key: ViewName, source: SheetSource, floor: Floor): View => views[key].draw(source, floor);

/** The views with what a rank has room for. Sizes that the view above gives are not given again. */
function ranked(views: readonly NamedView[], rank: Rank): NamedView[] {
  const [first] = views;
  const shown = first && ofRank(first.view, rank);
  return views.map(({ key, view }) => {
    if (shown && view === first?.view) return { key, view: closeRows(shown) };
    const below = ofRank(view, rank);
    return { key, view: closeRows(shown ? withoutRepeats(below, shown) : below) };
  });
}

const viewsOf = (named: readonly NamedView[]): View[] => named.map(({ view }) => view);

/** The largest arrangement of what has a rank: the key in whichever place leaves more room, the legs whole or broken. */
function arrange(
  candidates: readonly Candidate[],
  rank: Rank,
  keys: readonly KeyPlace[],
  style: DimensionStyle,
): Arranged {
  const [whole, broken] = candidates.map((candidate) => {
    const views = viewsOf(candidate.ranked(rank));
    return keys
      .map((key) => ({ ...candidate, key, places: sheetLayout(views, key.rest, style) }))
      .reduce((a, b) => (scaleOf(b.places) > scaleOf(a.places) ? b : a));
  });
  if (!whole || !broken) throw new Error('A sheet is arranged from two candidates: legs whole, legs broken.');
  return scaleOf(whole.places) >= WHOLE_LEGS * scaleOf(broken.places) ? whole : broken;
}

interface Candidate {
  readonly views: readonly NamedView[];
  readonly floor: Floor;
  /** The views with what a rank has room for. */
  readonly ranked: (rank: Rank) => readonly NamedView[];
}

/** A candidate that works out each rank once, however many arrangements of it are tried. */
function candidateOf(views: readonly NamedView[], floor: Floor): Candidate {
  const known = new Map<Rank, readonly NamedView[]>();
  return {
    views,
    floor,
    ranked: (rank) => {
      const found = known.get(rank) ?? ranked(views, rank);
      known.set(rank, found);
      return found;
    },
  };
}

interface Arranged extends Candidate {
  readonly key: KeyPlace;
  readonly places: readonly Place[];
}

const scaleOf = ([first]: readonly Place[]): number => first?.scale ?? 0;

/** The largest arrangement with the detail that its scale has room for. */
function arrangeDetailed(candidates: readonly Candidate[], keys: readonly KeyPlace[], style: DimensionStyle): Arranged {
  const coarse = arrange(candidates, 1, keys, style);
  return arrange(candidates, rankFor(scaleOf(coarse.places), style), keys, style);
}

const panesOf = (views: readonly NamedView[], places: readonly Place[], corner: Point | null = null): Pane[] =>
  views.flatMap((named, index) => {
    const place = places[index];
    return place ? [{ ...named, place, corner }] : [];
  });

/**
 * A sheet that fills a frame of the paper: third angle, the views laid out as large as they can be with the dimensions
 * that their scale has room for. It holds dimensions of every rank; `detailed` leaves out what there is no room for. Where
 * the views of the desk leave room at the right, the front of the cabinet and its stand are shown there, each at a scale of
 * its own.
 */
export function sheetOf(source: SheetSource, shown: Shown, frame: Frame, style: DimensionStyle): Sheet {
  const keys: readonly ViewName[] = shown === 'all' ? ['top', 'side'] : [shown];
  const whole = keys.map((key) => ({ key, view: viewOf(key, source, 'true') }));
  // Only the side view shows the floor.
  const broken = whole.map((named) =>
    named.key === 'side' ? { key: named.key, view: viewOf('side', source, 'broken') } : named,
  );
  const candidates = [candidateOf(whole, 'true'), candidateOf(broken, 'broken')];
  const room = shown === 'front' ? belowCaption(frame, style) : frame;
  const alone = arrangeDetailed(candidates, keyPlaces(room, style), style);
  const beside = shown === 'all' ? withAside(source, alone, candidates, frame, style) : null;
  return beside ?? { key: alone.key, floor: alone.floor, panes: panesOf(alone.views, alone.places) };
}

/** The sheet with the front view and the stand beside the views of the desk; null where there is no room for them. */
function withAside(
  source: SheetSource,
  alone: Arranged,
  candidates: readonly Candidate[],
  frame: Frame,
  style: DimensionStyle,
): Sheet | null {
  const scale = scaleOf(alone.places);
  const rank = rankFor(scale, style);
  const desk = viewsOf(alone.ranked(rank));
  const spare = frame.width - ASIDE_LEAST * style.unit;
  if (widthAt(desk, BESIDE * scale, style) > spare) return null;
  const aside = asideFrames(frame, Math.min(spare, widthAt(desk, scale, style)), style);
  const { views, floor, places, key } = arrangeDetailed(candidates, [aside.desk], style);
  const others = (['front', 'stand'] as const).flatMap((name) => {
    const view = viewOf(name, source, floor);
    const { left, width, top } = aside[name];
    return panesOf([{ key: name, view }], sheetLayout([closeRows(view)], belowCaption(aside[name], style), style), [
      left + width,
      top,
    ]);
  });
  return { key, floor, panes: [...panesOf(views, places), ...others] };
}

/**
 * The same sheet of other numbers: every view stays where it lies. For a drag, and for typing.
 *
 * @param waiting views that keep the picture they have.
 */
export const redrawn = (source: SheetSource, sheet: Sheet, waiting: ReadonlySet<ViewName> = NONE): Sheet => ({
  ...sheet,
  panes: sheet.panes.map((pane) =>
    waiting.has(pane.key) ? pane : { ...pane, view: viewOf(pane.key, source, sheet.floor) },
  ),
});

const NONE: ReadonlySet<ViewName> = new Set();

/**
 * The views that may follow when the numbers come to rest: those beside the desk's, which are the dearest to draw and of
 * which nothing is held, but for the one that is worked on.
 */
export const canWait = ({ panes }: Sheet, workedOn: ViewName | null): ReadonlySet<ViewName> =>
  new Set(panes.flatMap(({ key, corner }) => (corner === null || key === workedOn ? [] : [key])));

/** A size that several views could give is given in the first of these that is there. */
const GIVES_FIRST = ['front', 'top', 'side', 'stand'] as const satisfies readonly ViewName[];

/** The sheet's views with the detail that there is room for when it is looked at enlarged. Nothing moves. */
export function detailed({ panes }: Sheet, zoom: number, style: DimensionStyle): Pane[] {
  const shown = panes.map((pane) => ({
    ...pane,
    view: ofRank(pane.view, rankFor(pane.place.scale * zoom, style)),
  }));
  const before = (one: ViewName, other: ViewName): boolean => GIVES_FIRST.indexOf(one) < GIVES_FIRST.indexOf(other);
  return shown.map((pane) => {
    const givers = shown.filter((other) => before(other.key, pane.key));
    return { ...pane, view: closeRows(givers.reduce((left, giver) => withoutRepeats(left, giver.view), pane.view)) };
  });
}

/** What can be moved on a view of a sheet. */
export const handlesOf = ({ key, view }: Pane, source: SheetSource, { floor }: Sheet): Handle[] =>
  views[key].handles(source, floor, view);
