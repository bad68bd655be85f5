import type { Point } from '$lib/geometry/point.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import { alternatives } from './alternatives.ts';
import { boxOf, type Box } from './box.ts';
import { dimensionText } from './dimensionText.ts';
import { drawDimension } from './drawDimension.ts';
import type { DrawnDimension } from './drawnDimension.ts';
import { labelText } from './labelText.ts';
import { toPaper } from './place.ts';
import type { Frame } from './sheetLayout.ts';
import { corners, crosses, overlap, textBox, type TextBox } from './textBox.ts';
import type { AngleDimension, Dimension, Item, Label, View } from './view.ts';
import { isDimension, thingPrimitives, type Paper } from './viewPrimitives.ts';

/** Points with a straight line from each to the next; of a closed one, from its last to its first as well: it is said twice. */
type Path = readonly Point[];
type Worded = Label | Dimension | AngleDimension;

/** Lines of one item, with the box round them by which most texts are told to be clear of all of them at once. */
interface Lines {
  readonly box: Box;
  readonly paths: readonly Path[];
}

/** A text as it would stand, and the dimension that it belongs to. */
interface Candidate {
  readonly item: Worded;
  readonly box: TextBox;
  readonly drawn: DrawnDimension | null;
}

/** A text with the lines that come with it. */
interface Placed extends Candidate {
  readonly lines: Lines;
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
  const things = view.items.flatMap((item) => (isWorded(item) ? [] : [boxed(linesOfThing(item, paper))]));
  /** The lines of each as it would be drawn, until it is decided. */
  const lines = new Map(
    worded.map((item) => [item.id, linesOf(candidate(item, view, paper, textOf(item, paper, display)))]),
  );
  const decided = new Map<string, Placed>();
  const isFree = ({ item, box }: Candidate): boolean => {
    if (!corners(box).every((corner) => isIn(room, corner))) return false;
    for (const other of decided.values()) if (overlap(box, other.box)) return false;
    for (const thing of things) if (crossed(box, thing)) return false;
    for (const [id, others] of lines) if (id !== item.id && crossed(box, others)) return false;
    return true;
  };
  /** The first place that is free, and whose lines leave the texts that stand already alone. */
  const find = (item: Worded): Placed | null => {
    const text = textOf(item, paper, display);
    const tried = (one: Worded): Placed | null => {
      const found = candidate(one, view, paper, text);
      if (!isFree(found)) return null;
      const own = linesOf(found);
      return [...decided.values()].every(({ box }) => !crossed(box, own)) ? { ...found, lines: own } : null;
    };
    // Most stand where they would like to: only of the others is it asked where else they may.
    const own = tried(item);
    if (own) return own;
    for (const other of alternatives(item).slice(1)) {
      const found = tried(other);
      if (found) return found;
    }
    return null;
  };
  for (const item of [...worded].sort((a, b) => orderOf(a) - orderOf(b))) {
    const found = find(item);
    if (found) decided.set(item.id, found);
    lines.set(item.id, found?.lines ?? NO_LINES);
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

/** Dimensions by rank, then names. */
const orderOf = ({ kind, rank = 1 }: Worded): number => (kind === 'label' ? 10 : 0) + rank;

const boxed = (paths: readonly Path[]): Lines => ({ box: boxOf(paths.flat()), paths });

const NO_LINES = boxed([]);

function crossed(box: TextBox, { box: [left, top, right, bottom], paths }: Lines): boolean {
  const [x, y] = box.middle;
  const reach = box.half[0] + box.half[1];
  if (x + reach < left || x - reach > right || y + reach < top || y - reach > bottom) return false;
  return paths.some((path) =>
    path.some((point, index) => {
      const next = path[index + 1];
      return next !== undefined && crosses(box, point, next);
    }),
  );
}

const isIn = ({ left, top, width, height }: Frame, [x, y]: Point): boolean =>
  x >= left && x <= left + width && y >= top && y <= top + height;

/** What a text says, wherever it stands. */
const textOf = (item: Worded, { style }: Paper, display: LengthDisplay): string =>
  item.kind === 'label' ? item.text : dimensionText(item, display, style.fineness);

function candidate(item: Worded, { extent }: View, { place, style }: Paper, text: string): Candidate {
  if (item.kind === 'label') return { item, box: textBox(labelText(item, place, style), style), drawn: null };
  const drawn = drawDimension(item, place, extent, style, text);
  return { item, box: textBox(drawn.text, style), drawn };
}

const linesOf = ({ drawn }: Candidate): Lines => (drawn ? boxed(linesOfDimension(drawn)) : NO_LINES);

const linesOfDimension = ({ extensions, lines, arrows }: DrawnDimension): Path[] => [
  ...extensions,
  ...lines,
  ...arrows.map(closed),
];

/** Hatching counts as its area's diagonals: no text of the drawing is small enough to miss them. */
function linesOfThing(item: Item, { place, style }: Paper): Path[] {
  // What is laid over the drawing takes no room: the texts lie over it.
  if (isWorded(item) || item.subject === 'other') return [];
  if (item.kind === 'outline') {
    const points = item.points.map((point) => toPaper(place, point));
    const [a, b, c, d] = points;
    const across: Path[] = item.hatched && a && b && c && d ? [[a, c], [b, d]] : []; // prettier-ignore
    return [item.closed ? closed(points) : points, ...across];
  }
  return thingPrimitives(item, { place, style }).flatMap((primitive): Path[] => {
    if (primitive.kind === 'line') return [primitive.closed ? closed(primitive.points) : primitive.points];
    if (primitive.kind === 'text') return [];
    return [closed(circle(primitive.centre, primitive.radius))];
  });
}

const CIRCLE = 24;

const circle = ([x, y]: Point, radius: number): Point[] =>
  Array.from({ length: CIRCLE }, (_, step) => {
    const angle = (2 * Math.PI * step) / CIRCLE;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });

const closed = (points: readonly Point[]): Path => [...points, ...points.slice(0, 1)];
