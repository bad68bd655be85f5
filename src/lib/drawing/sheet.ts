import { belowCaption } from './captions.ts';
import type { DimensionStyle } from './dimensionStyle.ts';
import type { Handle } from './handle.ts';
import { laidOver } from './laidOver.ts';
import type { Pane, Shown } from './pane.ts';
import { TOP, type Floor } from './roomFromSide.ts';
import { placeTexts } from './placeTexts.ts';
import { zoomed, type Zoom } from './place.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import { isNarrow, roomsOf, withoutRooms, type Room } from './rooms.ts';
import { closeRows, givesAtRest, ofRank, withoutRepeats } from './rows.ts';
import { isSqueezed, sheetLayout, type Frame } from './sheetLayout.ts';
import type { SheetSource } from './sheetSource.ts';
import { reachesDown } from './surfaceItems.ts';
import type { Rank, View } from './view.ts';
import { viewNames, views, type ViewName } from './views.ts';

/** A sheet with everything it could show, and where. */
export interface Sheet {
  /** The plan first. */
  readonly panes: readonly Pane[];
  /** Where the key to the lines stands; null where there is no room for it. */
  readonly key: Frame | null;
  /** How the floor is drawn on the side view. */
  readonly floor: Floor;
}

/** The legs are drawn whole when the scale is no less than this share of what it is with broken ones. */
const WHOLE_LEGS = 0.97;
/** How far the sheet is enlarged for one rank more of items. */
const MORE = 1.8;

/** The rank of items shown in a room of the sheet that is enlarged so many times. */
function rankAt(frame: Frame, zoom: number, style: DimensionStyle): Rank {
  const atRest = isNarrow(frame, style) ? 1 : 2;
  if (zoom >= MORE ** 2) return 4;
  return zoom < MORE ? atRest : atRest === 1 ? 2 : 4;
}

/** One view of a project, with what is laid over it. */
export function viewOf(key: ViewName, source: SheetSource, floor: Floor): View {
  const view = views[key].draw(source, floor);
  const { over, ...own } = source;
  if (!over) return view;
  const { project, layout, layoutIndex } = over;
  return laidOver(view, views[key].draw({ ...own, project, layout, layoutIndex, plan: over }, floor));
}

/** The first view that gives a value without being enlarged, tried in their order but for one before all; null where none does. */
export const viewGiving = (pointer: string, source: SheetSource, floor: Floor, first: ViewName): ViewName | null =>
  [first, ...viewNames].find((key) => givesAtRest(viewOf(key, source, floor), pointer)) ?? null;

/**
 * A sheet that fills a frame of the paper, each view as large as its own room allows with the dimensions shown at rest. It
 * holds dimensions of every rank; `detailed` leaves out what there is no room for. `atScale`: what becomes of the largest
 * scale that fits, where not every scale will do. A close-up whose room does not even hold its dimensions is left out.
 */
export function sheetOf(
  source: SheetSource,
  shown: Shown,
  frame: Frame,
  style: DimensionStyle,
  atScale: (most: number) => number = (most) => most,
): Sheet {
  const { rooms, key } = roomsOf(shown, frame, style);
  const filled = (floor: Floor): readonly Pane[] => {
    const panes = arranged(rooms, floor);
    const squeezed = new Set(panes.flatMap((pane) => (standsBeside(pane, panes) && isSqueezed(pane.place) ? [pane.key] : []))); // prettier-ignore
    return squeezed.size === 0 ? panes : arranged(withoutRooms(rooms, squeezed), floor);
  };
  const arranged = (rooms: readonly Room[], floor: Floor): readonly Pane[] => {
    const whole = rooms.map((room) => ({ room, view: viewOf(room.key, source, floor) }));
    const restful = givenOnce(
      whole.map(({ room, view }) => ({ key: room.key, view: ofRank(view, rankAt(room.frame, 1, style)) })),
    );
    return whole.map(({ room, view }, index): Pane => {
      const [place] = sheetLayout([restful[index]?.view ?? view], belowCaption(room, style), style, atScale);
      if (!place) throw new Error('A view is given a place.');
      return { ...room, view, place };
    });
  };
  const sheet = (floor: Floor): Sheet => ({ panes: filled(floor), key, floor });
  // Only the side view shows the floor.
  const broken = sheet('broken');
  if (!rooms.some(isSide)) return broken;
  const whole = sheet('true');
  if (reachesDown(source.layout, -TOP)) return whole;
  return sideScale(whole) >= WHOLE_LEGS * sideScale(broken) ? whole : broken;
}

const isSide = ({ key }: Pick<Room, 'key'>): boolean => key === 'side';
const sideScale = ({ panes }: Sheet): number => panes.find(isSide)?.place.scale ?? 0;

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

/** Views of one loudspeaker and its stand: the dearest to draw, and of which nothing is held that shows on the others. */
const CLOSE_UPS: ReadonlySet<ViewName> = new Set(['front', 'stand']);

/** Whether a view stands beside those of the desk. */
export const standsBeside = ({ key }: Pick<Pane, 'key'>, panes: readonly Pane[]): boolean =>
  panes.length > 1 && CLOSE_UPS.has(key);

/** The views that may follow when the numbers come to rest: those beside the desk's, but for the one that is worked on. */
export const canWait = ({ panes }: Sheet, workedOn: ViewName | null): ReadonlySet<ViewName> =>
  new Set(panes.flatMap((pane) => (standsBeside(pane, panes) && pane.key !== workedOn ? [pane.key] : [])));

/** A size that several views could give is given in the first of these that is there. */
const GIVES_FIRST = ['front', 'top', 'side', 'stand'] as const satisfies readonly ViewName[];

/** The views without sizes that another of them gives already, their rows closed. */
function givenOnce<Shows extends { readonly key: ViewName; readonly view: View }>(shown: readonly Shows[]): Shows[] {
  const before = (one: ViewName, other: ViewName): boolean => GIVES_FIRST.indexOf(one) < GIVES_FIRST.indexOf(other);
  return shown.map((pane) => {
    const givers = shown.filter((other) => before(other.key, pane.key));
    return { ...pane, view: closeRows(givers.reduce((left, giver) => withoutRepeats(left, giver.view), pane.view)) };
  });
}

/** The sheet's views with the detail that there is room for when it is looked at enlarged. Nothing moves. */
export const detailed = ({ panes }: Sheet, zoom: number, style: DimensionStyle): Pane[] =>
  givenOnce(panes.map((pane) => ({ ...pane, view: ofRank(pane.view, rankAt(pane.frame, zoom, style)) })));

/** The views on the enlarged paper, their texts clear of each other and of the lines. */
export const textsPlaced = (
  panes: readonly Pane[],
  zoom: Zoom,
  style: DimensionStyle,
  display: LengthDisplay,
): Pane[] =>
  panes.map((pane) => {
    const place = zoomed(pane.place, zoom);
    const { left, top, width, height } = belowCaption(pane, style);
    const room = {
      left: zoom.k * left + zoom.x,
      top: zoom.k * top + zoom.y,
      width: zoom.k * width,
      height: zoom.k * height,
    };
    return { ...pane, place, view: placeTexts(pane.view, { place, style }, display, room) };
  });

/** What can be moved on a view of a sheet. */
export const handlesOf = ({ key, view }: Pane, source: SheetSource, { floor }: Sheet): Handle[] =>
  views[key].handles(source, floor, view);
