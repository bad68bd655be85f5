import { countIn, FIT, type Room } from './rows.ts';
import { moved, type Filled, type Strip } from './strips.ts';
import type { Nestable } from './nestable.ts';
import type { Spot, View } from './rows.ts';

/** Strips beside and above the boxes are filled with boxes in turn, this deep. */
const DEPTH = 2;

/** One copy, or two of which one is turned by half a turn, in the rectangle round them. */
interface Box {
  readonly width: number;
  readonly height: number;
  readonly spots: readonly Spot[];
}

/** Boxes of one kind in rows and columns, and what the strips beside and above them hold. */
interface Packing {
  readonly room: Strip;
  readonly count: number;
  /** Null where nothing lies. */
  readonly boxes: { readonly box: Box; readonly across: number; readonly up: number } | null;
  readonly strips: readonly Packing[];
}

/**
 * Copies in boxes, no more than wanted: singly and in pairs, at every turn allowed, the strips that are left filled in the
 * same manner. A plain way to lay them, and on some boards better than rows.
 */
export function fillWithBoxes({ views }: Nestable, room: Room, spacing: number, wanted: number): Filled {
  const packing = packed(views.flatMap(boxesOf), { ...room, x: 0, y: 0 }, spacing, DEPTH);
  return { spots: spotsIn(packing, spacing).slice(0, wanted), free: freeIn(packing) };
}

/** Side by side, or one above the other where the view has x and y swapped; a single copy comes with the former. */
function boxesOf(view: View): Box[] {
  const [halfLast, halfFirst] = [view.advance(false, 0), view.advance(true, 0)];
  const [near, far] = halfLast <= halfFirst ? [view.quarters, view.quarters + 2] : [view.quarters + 2, view.quarters];
  const step = Math.max(0, Math.min(halfLast, halfFirst));
  const long = view.width + step;
  if (view.swapped) {
    const pair = [
      { x: 0, y: 0, quarters: near },
      { x: 0, y: step, quarters: far },
    ];
    return [{ width: view.height, height: long, spots: pair }];
  }
  const pair = [
    { x: 0, y: 0, quarters: near },
    { x: step, y: 0, quarters: far },
  ];
  return [
    { width: view.width, height: view.height, spots: [{ x: 0, y: 0, quarters: view.quarters }] },
    { width: long, height: view.height, spots: pair },
  ];
}

function packed(boxes: readonly Box[], room: Strip, spacing: number, depth: number): Packing {
  let best: Packing = { room, count: 0, boxes: null, strips: [] };
  for (const box of boxes) {
    const across = countIn(room.width, box.width, spacing);
    const up = countIn(room.height, box.height, spacing);
    if (across < 1 || up < 1) continue;
    const [used, high] = [across * (box.width + spacing), up * (box.height + spacing)];
    const strips = [
      { x: room.x + used, y: room.y, width: room.width - used, height: room.height },
      { x: room.x, y: room.y + high, width: used - spacing, height: room.height - high },
    ].map((strip) =>
      depth > 0 ? packed(boxes, strip, spacing, depth - 1) : { room: strip, count: 0, boxes: null, strips: [] },
    );
    const count = strips.reduce((sum, strip) => sum + strip.count, across * up * box.spots.length);
    if (count > best.count) best = { room, count, boxes: { box, across, up }, strips };
  }
  return best;
}

function spotsIn({ room, boxes, strips }: Packing, spacing: number): Spot[] {
  if (boxes === null) return [];
  const { box, across, up } = boxes;
  const own = Array.from({ length: across * up }, (_, i) => ({
    x: room.x + (i % across) * (box.width + spacing),
    y: room.y + Math.floor(i / across) * (box.height + spacing),
  })).flatMap((at) => moved(box.spots, at));
  return [...own, ...strips.flatMap((strip) => spotsIn(strip, spacing))];
}

const freeIn = ({ room, boxes, strips }: Packing): Strip[] => {
  if (boxes !== null) return strips.flatMap(freeIn);
  return room.width > FIT && room.height > FIT ? [room] : [];
};
