import type { Point } from '$lib/geometry/point.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import { alternatives } from './alternatives.ts';
import type { DrawnDimension } from './drawnDimension.ts';
import { labelText } from './labelText.ts';
import { toPaper } from './place.ts';
import type { Frame } from './sheetLayout.ts';
import { corners, crosses, overlap, textBox, type TextBox } from './textBox.ts';
import type { AngleDimension, Dimension, Item, Label, View } from './view.ts';
import { dimensionOn, isDimension, thingPrimitives, type Paper } from './viewPrimitives.ts';

type Segment = readonly [Point, Point];
type Worded = Label | Dimension | AngleDimension;

/** A text with the lines that come with it. */
interface Placed {
  readonly item: Worded;
  readonly box: TextBox;
  readonly lines: readonly Segment[];
}

const isWorded = (item: Item): item is Worded => item.kind === 'label' || isDimension(item);

/**
 * The view with every text where it stands on no line but its own and on no other text: each in turn takes the first of its
 * places that is free, those of the first rank first, names last. What finds none is left out; it comes back when the paper
 * is enlarged.
 *
 * @param room of the paper that the texts keep to.
 */
export function placeTexts(view: View, paper: Paper, display: LengthDisplay, room: Frame): View {
  const worded = view.items.filter(isWorded);
  const place = (item: Worded): Placed => placedOn(item, view, paper, display);
  const things = view.items.flatMap((item) => (isWorded(item) ? [] : linesOfThing(item, paper)));
  /** The lines of each as it would be drawn, until it is decided. */
  const first = new Map(worded.map((item) => [item.id, place(item)]));
  const lines = new Map([...first].map(([id, placed]) => [id, placed.lines]));
  const decided = new Map<string, Placed>();
  const isFree = ({ item, box, lines: own }: Placed): boolean =>
    corners(box).every((corner) => isIn(room, corner)) &&
    [...decided.values()].every((other) => !overlap(box, other.box) && !crossed(other.box, own)) &&
    !crossed(box, things) &&
    [...lines].every(([id, others]) => id === item.id || !crossed(box, others));
  for (const item of [...worded].sort((a, b) => orderOf(a) - orderOf(b))) {
    const own = first.get(item.id);
    const found = own && isFree(own) ? own : firstOf(alternatives(item).slice(1), place, isFree);
    if (found) decided.set(item.id, found);
    lines.set(item.id, found?.lines ?? []);
  }
  return {
    ...view,
    items: view.items.flatMap((item): Item[] => {
      if (!isWorded(item)) return [item];
      const found = decided.get(item.id);
      return found ? [found.item] : [];
    }),
  };
}

function firstOf(items: readonly Worded[], place: (item: Worded) => Placed, isFree: (placed: Placed) => boolean) {
  for (const item of items) {
    const placed = place(item);
    if (isFree(placed)) return placed;
  }
  return null;
}

/** Dimensions by rank, then names. */
const orderOf = ({ kind, rank = 1 }: Worded): number => (kind === 'label' ? 10 : 0) + rank;

const crossed = (box: TextBox, lines: readonly Segment[]): boolean =>
  lines.some(([from, to]) => crosses(box, from, to));

const isIn = ({ left, top, width, height }: Frame, [x, y]: Point): boolean =>
  x >= left && x <= left + width && y >= top && y <= top + height;

function placedOn(item: Worded, { extent }: View, paper: Paper, display: LengthDisplay): Placed {
  if (item.kind === 'label') {
    return { item, box: textBox(labelText(item, paper.place, paper.style), paper.style), lines: [] };
  }
  const drawn = dimensionOn(item, extent, paper, display);
  return { item, box: textBox(drawn.text, paper.style), lines: linesOfDimension(drawn) };
}

const linesOfDimension = ({ extensions, lines, arrows }: DrawnDimension): Segment[] => [
  ...[...extensions, ...lines].flatMap((points) => segments(points, false)),
  ...arrows.flatMap((points) => segments(points, true)),
];

/** Hatching counts as its area's diagonals: no text of the drawing is small enough to miss them. */
function linesOfThing(item: Item, { place, style }: Paper): Segment[] {
  // What is laid over the drawing takes no room: the texts lie over it.
  if (isWorded(item) || item.subject === 'other') return [];
  if (item.kind === 'outline') {
    const points = item.points.map((point) => toPaper(place, point));
    const [a, b, c, d] = points;
    const across: Segment[] = item.hatched && a && b && c && d ? [[a, c], [b, d]] : []; // prettier-ignore
    return [...segments(points, item.closed), ...across];
  }
  return thingPrimitives(item, { place, style }).flatMap((primitive): Segment[] => {
    if (primitive.kind === 'line') return segments(primitive.points, primitive.closed);
    if (primitive.kind === 'text') return [];
    return segments(circle(primitive.centre, primitive.radius), true);
  });
}

const CIRCLE = 24;

const circle = ([x, y]: Point, radius: number): Point[] =>
  Array.from({ length: CIRCLE }, (_, step) => {
    const angle = (2 * Math.PI * step) / CIRCLE;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });

const segments = (points: readonly Point[], closed: boolean): Segment[] =>
  points.flatMap((point, index): Segment[] => {
    const next = points[index + 1] ?? (closed ? points[0] : undefined);
    return next ? [[point, next]] : [];
  });
