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

export interface Sheet {
  /** From the top of the sheet down. */
  readonly panes: readonly Pane[];
  readonly key: KeyPlace;
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

/** What a frame shows when nobody has asked for anything else. */
export const shownIn = ({ height }: Frame, { unit }: DimensionStyle): Shown =>
  height / unit >= BOTH_VIEWS ? 'both' : 'top';

/** The views of a layout with what there is room for. Sizes that the top view gives are not given again. */
function viewsOf({ project, layout, layoutIndex, plan, side }: SheetSource, shown: Shown, floor: Floor, rank: Rank) {
  const { speaker } = project;
  const top = closeRows(ofRank(topView(speaker, layout, layoutIndex, plan), rank));
  const below = ofRank(sideView(speaker, layout, layoutIndex, plan, side, floor), rank);
  const views: { key: ViewName; view: View }[] = [
    { key: 'top', view: top },
    { key: 'side', view: closeRows(shown === 'both' ? withoutRepeats(below, top) : below) },
  ];
  return views.filter(({ key }) => shown === 'both' || shown === key);
}

/**
 * A sheet that fills a frame of the paper: the views laid out as large as they can be, the key beside or below them,
 * whichever leaves more room, and the desk's legs whole or broken off likewise. `zoom`: how much it is enlarged, which adds
 * detail and moves nothing.
 */
export function sheetOf(source: SheetSource, shown: Shown, frame: Frame, style: DimensionStyle, zoom: number): Sheet {
  const coarse = arrange(source, shown, frame, style, 1);
  const { floor, key, places } = arrange(source, shown, frame, style, rankFor(scaleOf(coarse.places), style));
  const detailed = viewsOf(source, shown, floor, rankFor(scaleOf(places) * zoom, style));
  return {
    key,
    panes: detailed.flatMap(({ key: name, view }, index) => {
      const place = places[index];
      return place ? [{ key: name, view, place }] : [];
    }),
  };
}

/** The largest arrangement of what has a rank. */
function arrange(source: SheetSource, shown: Shown, frame: Frame, style: DimensionStyle, rank: Rank) {
  const best = (floor: Floor) => {
    const views = viewsOf(source, shown, floor, rank).map(({ view }) => view);
    return keyPlaces(frame, style)
      .map((key) => ({ floor, key, places: sheetLayout(views, key.rest, style) }))
      .reduce((a, b) => (scaleOf(b.places) > scaleOf(a.places) ? b : a));
  };
  const [whole, broken] = [best('true'), best('broken')];
  return scaleOf(whole.places) >= WHOLE_LEGS * scaleOf(broken.places) ? whole : broken;
}

const scaleOf = ([first]: readonly Place[]): number => first?.scale ?? 0;
