import type { Item, Label, Outline, Round, Spot } from './view.ts';

/** Open lines that look alike and lie over each other in the same order: one path on a screen. */
export interface Lines {
  readonly kind: 'lines';
  /** Of the first of them. */
  readonly id: string;
  readonly first: Outline;
  readonly lines: readonly Outline['points'][];
}

export type Drawn = Outline | Round | Spot | Label | Lines;

/** The items of a view that are no dimensions, runs of lines that look alike taken together: a stand has a line a layer. */
export function batched(items: readonly Item[]): Drawn[] {
  const drawn: Drawn[] = [];
  for (const item of items) {
    if (item.kind === 'dimension' || item.kind === 'angle') continue;
    const last = drawn.at(-1);
    if (last && isLine(item) && goesWith(last, item)) drawn[drawn.length - 1] = joined(last, item);
    else drawn.push(item);
  }
  return drawn;
}

const isLine = (item: Item): item is Outline =>
  item.kind === 'outline' && !item.closed && !item.filled && !item.hatched;

/** Ids that differ in their last numbers only are the same thing to whoever points at them. */
const stem = (id: string): string => id.replace(/(?:-\d+)+$/, '');

function goesWith(last: Drawn, item: Outline): last is Outline | Lines {
  const before = last.kind === 'lines' ? last.first : last;
  return (
    before.kind === 'outline' &&
    isLine(before) &&
    before.subject === item.subject &&
    before.pen === item.pen &&
    stem(before.id) === stem(item.id)
  );
}

const joined = (last: Outline | Lines, { points }: Outline): Lines =>
  last.kind === 'lines'
    ? { ...last, lines: [...last.lines, points] }
    : { kind: 'lines', id: last.id, first: last, lines: [last.points, points] };
