import type { Plan } from '$lib/plan/document.ts';
import type { Layout, Project, SideName } from '$lib/project/project.ts';
import type { DimensionStyle } from './dimensionStyle.ts';
import { keyPlaces, type KeyPlace } from './keyPlace.ts';
import type { Place } from './place.ts';
import type { Floor } from './roomFromSide.ts';
import { closeRows, ofRank, withoutRepeats } from './rows.ts';
import { sheetLayout, type Frame } from './sheetLayout.ts';
import { sideView } from './sideView.ts';
import { topView } from './topView.ts';
import type { Rank, View } from './view.ts';

/** What a sheet is made from. */
export interface SheetSource {
  readonly project: Project;
  readonly layout: Layout;
  readonly layoutIndex: number;
  readonly plan: Plan;
  /** Whose loudspeaker the side view shows. */
  readonly side: SideName;
}

export type ViewName = 'top' | 'side';
/** Which views a sheet shows. */
export type Shown = 'both' | ViewName;

/** A view where it lies on the paper. */
export interface Pane {
  readonly key: ViewName;
  readonly view: View;
  readonly place: Place;
}

/** A sheet with everything it could show, and where. */
export interface Sheet {
  /** From the top of the sheet down. */
  readonly panes: readonly Pane[];
  readonly key: KeyPlace;
}

interface NamedView {
  readonly key: ViewName;
  readonly view: View;
}

/** The legs are drawn whole when that costs no more than this share of the scale. */
const WHOLE_LEGS = 0.9;

/** Scales of the paper from which the second and the third rank of items have room: 1:22 and 1:7. */
const SECOND_RANK = 1 / 22;
const THIRD_RANK = 1 / 7;
/** Least height for both views, in paper mm: below it they would be too small to read, and one is shown at a time. */
const BOTH_VIEWS = 135;

/** The rank of items that a scale has room for, paper units for each real mm. */
export function rankFor(scale: number, { unit }: DimensionStyle): Rank {
  if (scale / unit >= THIRD_RANK) return 3;
  return scale / unit >= SECOND_RANK ? 2 : 1;
}

/** Whether a frame has room for both views at once. */
export const bothFit = ({ height }: Frame, { unit }: DimensionStyle): boolean => height / unit >= BOTH_VIEWS;

/** What is shown of what was asked for (null: nothing yet): both views where they fit, else one. */
export function shownOf(asked: Shown | null, fit: boolean): Shown {
  const wanted = asked ?? 'both';
  return wanted === 'both' && !fit ? 'top' : wanted;
}

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

/** The largest arrangement of what has a rank: the key in whichever place leaves more room, the legs whole or broken. */
function arrange(candidates: readonly (readonly NamedView[])[], rank: Rank, frame: Frame, style: DimensionStyle) {
  const [whole, broken] = candidates.map((views) =>
    keyPlaces(frame, style)
      .map((key) => ({
        views,
        key,
        places: sheetLayout(
          ranked(views, rank).map(({ view }) => view),
          key.rest,
          style,
        ),
      }))
      .reduce((a, b) => (scaleOf(b.places) > scaleOf(a.places) ? b : a)),
  );
  if (!whole || !broken) throw new Error('A sheet is arranged from two candidates: legs whole, legs broken.');
  return scaleOf(whole.places) >= WHOLE_LEGS * scaleOf(broken.places) ? whole : broken;
}

const scaleOf = ([first]: readonly Place[]): number => first?.scale ?? 0;

/**
 * A sheet that fills a frame of the paper: third angle, the views laid out as large as they can be with the dimensions
 * that their scale has room for. It holds dimensions of every rank; `detailed` leaves out what there is no room for.
 */
export function sheetOf(source: SheetSource, shown: Shown, frame: Frame, style: DimensionStyle): Sheet {
  const { project, layout, layoutIndex, plan, side } = source;
  const { speaker } = project;
  const top = topView(speaker, layout, layoutIndex, plan);
  const candidates = (['true', 'broken'] as const).map((floor: Floor): NamedView[] =>
    [
      { key: 'top' as const, view: top },
      { key: 'side' as const, view: sideView(speaker, layout, layoutIndex, plan, side, floor) },
    ].filter(({ key }) => shown === 'both' || shown === key),
  );
  const coarse = arrange(candidates, 1, frame, style);
  const { views, key, places } = arrange(candidates, rankFor(scaleOf(coarse.places), style), frame, style);
  return {
    key,
    panes: views.flatMap(({ key: name, view }, index) => {
      const place = places[index];
      return place ? [{ key: name, view, place }] : [];
    }),
  };
}

/** The sheet's views with the detail that there is room for when it is looked at enlarged. Nothing moves. */
export function detailed({ panes }: Sheet, zoom: number, style: DimensionStyle): Pane[] {
  const rank = rankFor((panes[0]?.place.scale ?? 0) * zoom, style);
  const views = ranked(panes, rank);
  return panes.map((pane, index) => ({ ...pane, view: views[index]?.view ?? pane.view }));
}
