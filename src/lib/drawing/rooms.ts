import type { DimensionStyle } from './dimensionStyle.ts';
import { keyPlace } from './keyPlace.ts';
import type { Shown } from './pane.ts';
import type { Frame } from './sheetLayout.ts';
import type { ViewName } from './views.ts';

/** What a view has of the sheet. */
export interface Room {
  readonly key: ViewName;
  readonly frame: Frame;
  /** Whether its name and scale stand at its head. */
  readonly headed: boolean;
}

/** How a sheet is divided. `key`: where the key to the lines stands; null where there is no room for it. */
export interface Rooms {
  readonly rooms: readonly Room[];
  readonly key: Frame | null;
}

/** Least sizes of a sheet, in text sizes: for plan and side view, and for the front and the stand as well. */
const TWO = { width: 42.85, height: 14 };
const FOUR = { width: 46, height: 30 };
/** A narrower room than this, in text sizes, shows at rest what is typed, and one angle. */
const NARROW = 31;
/** What of the width the plan has, and what of the other column's height the side view has. */
const PLAN_SHARE = 0.6;
const SIDE_SHARE = 0.55;

const holds = ({ width, height }: Frame, least: typeof TWO, { textSize }: DimensionStyle): boolean =>
  width >= least.width * textSize && height >= least.height * textSize;

export const isNarrow = ({ width }: Frame, { textSize }: DimensionStyle): boolean => width < NARROW * textSize;

/** Whether a frame has room for several views at once. */
export const severalFit = (frame: Frame, style: DimensionStyle): boolean => holds(frame, TWO, style);

/** What is shown of what was asked for (null: nothing yet): all views where they fit, else one. */
export function shownOf(asked: Shown | null, fit: boolean): Shown {
  const wanted = asked ?? 'all';
  return wanted === 'all' && !fit ? 'top' : wanted;
}

/**
 * The rooms of a sheet: the plan at the left has the most, the side view beside it, over the stand and the front. A
 * view that has a narrow sheet to itself is named by what it was chosen with: its head's room goes to the drawing.
 */
export function roomsOf(shown: Shown, frame: Frame, style: DimensionStyle): Rooms {
  if (shown !== 'all') return { rooms: [{ key: shown, frame, headed: !isNarrow(frame, style) }], key: null };
  const { left, top, width, height } = frame;
  const headed = true;
  const plan: Frame = { left, top, width: PLAN_SHARE * width, height };
  const beside = { left: left + plan.width, width: width - plan.width };
  if (!holds(frame, FOUR, style)) {
    const rooms = [{ key: 'top', frame: plan, headed }, { key: 'side', frame: { ...beside, top, height }, headed }] as const; // prettier-ignore
    return { rooms, key: null };
  }
  const { block, rest } = keyPlace(plan, style);
  const side = SIDE_SHARE * height;
  const under = { top: top + side, height: height - side, width: beside.width / 2 };
  return {
    rooms: [
      { key: 'top', frame: rest, headed },
      { key: 'side', frame: { ...beside, top, height: side }, headed },
      { key: 'front', frame: { ...under, left: beside.left + under.width }, headed },
      { key: 'stand', frame: { ...under, left: beside.left }, headed },
    ],
    key: block,
  };
}

/** Without the views of one loudspeaker that are named: the other takes the room of both. */
export function withoutRooms(rooms: readonly Room[], left: ReadonlySet<ViewName>): readonly Room[] {
  const under = rooms.filter(({ key }) => UNDER.has(key));
  const width = under.reduce((sum, { frame }) => sum + frame.width, 0);
  const from = Math.min(...under.map(({ frame }) => frame.left));
  return rooms
    .filter(({ key }) => !left.has(key))
    .map((room) => (UNDER.has(room.key) ? { ...room, frame: { ...room.frame, left: from, width } } : room));
}

const UNDER: ReadonlySet<ViewName> = new Set(['front', 'stand']);
