import { sameJson } from '$lib/project/sameJson.ts';
import type { Handle } from './handle.ts';
import type { Place } from './place.ts';
import { rowCounts } from './rows.ts';
import { standsBeside, type Sheet } from './sheet.ts';
import type { Pane } from './pane.ts';
import type { View } from './view.ts';

/** A sheet whose views would be no more than this larger or smaller, and no further off, stays as it is: nothing jumps. */
const SCALE_SLACK = 0.02;
/** Paper units: within what is kept free round the views. */
const SHIFT_SLACK = 8;

/** The new sheet, arranged as the one before where that serves as well. */
export function steadySheet(before: Sheet | null, after: Sheet): Sheet {
  if (!before || before.floor !== after.floor || !sameJson(before.key, after.key)) return after;
  if (before.panes.length !== after.panes.length) return after;
  const serves = after.panes.every((pane, index) => {
    const old = before.panes[index];
    return old?.key === pane.key && sameJson(old.frame, pane.frame) && isNear(old, pane);
  });
  if (!serves) return after;
  return {
    ...after,
    panes: after.panes.map((pane, index) => ({ ...pane, place: before.panes[index]?.place ?? pane.place })),
  };
}

/**
 * Whether a sheet that is drawn of other numbers, every view where it lay, still goes by the arrangement it was given: no
 * row more or less, and no view of the desk reaches further, or less far, than its sheet has room for.
 */
export const stillServes = (arranged: Sheet, after: Sheet): boolean =>
  arranged.panes.length === after.panes.length &&
  after.panes.every((pane, index) => {
    const { key, view, place } = pane;
    const old = arranged.panes[index];
    if (old?.key !== key) return false;
    return (
      standsBeside(pane, after.panes) ||
      (reach(old.view, view) * place.scale <= SHIFT_SLACK && sameRows(old.view, view))
    );
  });

/** How far apart two views' edges lie at most, mm. */
const reach = (one: View, other: View): number =>
  Math.max(...one.extent.map((edge, index) => Math.abs(edge - (other.extent[index] ?? NaN))));

const sameRows = (one: View, other: View): boolean => sameJson(rowCounts(one), rowCounts(other));

/** Whether two corners of the view, drawn at both places, lie near each other. */
function isNear({ place: old }: Pane, { place, view }: Pane): boolean {
  if (Math.abs(old.scale / place.scale - 1) > SCALE_SLACK) return false;
  const [left, bottom, right, top] = view.extent;
  return [[left, bottom] as const, [right, top] as const].every(([x, y]) => shift(old, place, x, y) <= SHIFT_SLACK);
}

const shift = (a: Place, b: Place, x: number, y: number): number =>
  Math.max(
    Math.abs(a.origin[0] + a.scale * x - b.origin[0] - b.scale * x),
    Math.abs(a.origin[1] - a.scale * y - b.origin[1] + b.scale * y),
  );

/** A view as it is drawn: where it lies on the paper that is looked at, and what can be moved on it. */
export interface DrawnPane extends Pane {
  readonly handles: readonly Handle[];
}

/**
 * The new views with every part that says the same as before in the old one's place, the very same object: a screen that
 * draws what has changed then has little to draw.
 */
export function steadyPanes(before: readonly DrawnPane[], after: readonly DrawnPane[]): DrawnPane[] {
  return after.map((pane) => {
    const old = before.find(({ key }) => key === pane.key);
    return old ? steadyPane(old, pane) : pane;
  });
}

function steadyPane(old: DrawnPane, pane: DrawnPane): DrawnPane {
  const view = steadyView(old.view, pane.view);
  const place = same(old.place, pane.place);
  const frame = same(old.frame, pane.frame);
  const handles = sameOnes(old.handles, pane.handles);
  const stays = view === old.view && place === old.place && frame === old.frame && handles === old.handles;
  return stays ? old : { ...pane, view, place, frame, handles };
}

function steadyView(old: View, view: View): View {
  const extent = same(old.extent, view.extent);
  const items = sameOnes(old.items, view.items);
  return extent === old.extent && items === old.items && view.name === old.name ? old : { ...view, extent, items };
}

const same = <Value>(before: Value, after: Value): Value => (sameJson(before, after) ? before : after);

/** The very list of before, where every one of it says the same. */
function sameOnes<Value extends { readonly id: string }>(
  before: readonly Value[],
  after: readonly Value[],
): readonly Value[] {
  const old = new Map(before.map((one) => [one.id, one]));
  const kept = after.map((one) => {
    const other = old.get(one.id);
    return other === undefined ? one : same(other, one);
  });
  return kept.length === before.length && kept.every((one, index) => one === before[index]) ? before : kept;
}
