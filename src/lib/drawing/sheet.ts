import type { Plan } from '$lib/plan/document.ts';
import type { Layout, Project, SideName } from '$lib/project/project.ts';
import type { DimensionStyle } from './dimensionStyle.ts';
import type { Floor } from './roomFromSide.ts';
import { closeRows, ofRank, withoutRepeats } from './rows.ts';
import { sheetLayout, type Frame, type SheetLayout } from './sheetLayout.ts';
import { sideView } from './sideView.ts';
import { titlePlaces, type TitlePlace } from './titlePlace.ts';
import { topView } from './topView.ts';
import type { Rank, View } from './view.ts';

/** What a sheet is made from. */
export interface SheetSource {
  readonly project: Project;
  readonly layout: Layout;
  readonly layoutIndex: number;
  readonly plan: Plan;
  readonly side: SideName;
}

export interface Sheet {
  readonly top: View;
  readonly side: View;
  readonly layout: SheetLayout;
  readonly title: TitlePlace;
}

/** The legs are drawn whole when that costs no more than this share of the scale. */
const WHOLE_LEGS = 0.9;

/** Widths of the paper, in paper mm, from which the second and the third rank of items have room. */
const SECOND_RANK = 110;
const THIRD_RANK = 165;

/** The rank of items that a paper has room for; looking at it enlarged makes room for more. */
export function rankFor(width: number, zoom: number, { unit }: DimensionStyle): Rank {
  const room = (width / unit) * zoom;
  if (room >= THIRD_RANK) return 3;
  return room >= SECOND_RANK ? 2 : 1;
}

/** The two views of a layout with what there is room for. Sizes that the top view gives are not given again. */
function viewsOf({ project, layout, layoutIndex, plan, side }: SheetSource, floor: Floor, rank: Rank) {
  const top = ofRank(topView(project.speaker, layout, layoutIndex, plan), rank);
  const below = ofRank(sideView(project.speaker, layout, layoutIndex, plan, side, floor), rank);
  return { top: closeRows(top), side: closeRows(withoutRepeats(below, top)) };
}

/**
 * A sheet that fills a frame of the paper: the views laid out as large as they can be, the title block beside or below
 * them, whichever leaves more room, and the desk's legs whole or broken off likewise. `zoom`: how much it is enlarged,
 * which adds detail and moves nothing.
 */
export function sheetOf(source: SheetSource, frame: Frame, style: DimensionStyle, zoom: number): Sheet {
  const rank = rankFor(frame.width, 1, style);
  const best = (floor: Floor) => {
    const { top, side } = viewsOf(source, floor, rank);
    return titlePlaces(frame, style)
      .map((title) => ({ floor, title, layout: sheetLayout(top, side, title.rest, style) }))
      .reduce((a, b) => (b.layout.top.scale > a.layout.top.scale ? b : a));
  };
  const [whole, broken] = [best('true'), best('broken')];
  const { floor, title, layout } = whole.layout.top.scale >= WHOLE_LEGS * broken.layout.top.scale ? whole : broken;
  return { ...viewsOf(source, floor, rankFor(frame.width, zoom, style)), layout, title };
}
