import { scaleLinear } from 'd3';
import type { MeasureRow } from './measureRows.ts';

/** A tag on the line from the worst of a row to the best, px. */
export interface Tag {
  readonly x: number;
  readonly width: number;
  readonly letters: string;
}

/** Of a tag with one letter, and what each further one adds, px. */
const TAG = 19;
const LETTER = 10;

const widthOf = (letters: string): number => TAG + LETTER * (letters.length - 1);

/**
 * Where each layout stands between the worst, at the left, and the best. Tags that would lie over each other are one, in the
 * middle of where they would be. Nothing can be better than a value that is missing and marked as the best; any other that is missing
 * has no tag.
 *
 * @param width of the whole line with its tags, px.
 */
export function tagsOf({ cells, measure, differs }: MeasureRow, letters: readonly string[], width: number): Tag[] {
  if (!differs) return [];
  const values = cells.flatMap(({ value }) => (value === null ? [] : [value]));
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const [worst, best] = measure.better === 'less' ? [most, least] : [least, most];
  const scale = scaleLinear([worst, best], [0, 1]);
  const placed = cells
    .flatMap(({ value, mark }, index) => {
      const at = value === null ? (mark === 'best' ? 1 : null) : worst === best ? 0 : scale(value);
      return at === null ? [] : [{ at, letters: letters[index] ?? '' }];
    })
    .sort((a, b) => a.at - b.at);
  return merged(placed, width);
}

interface Placed {
  readonly at: number;
  readonly letters: string;
}

function merged(placed: readonly Placed[], width: number): Tag[] {
  const tags = placed.map(({ at, letters }) => tagAt(at, letters, width));
  const clash = tags.findIndex((tag, index) => {
    const next = tags[index + 1];
    return next !== undefined && next.x - tag.x < (tag.width + next.width) / 2;
  });
  const [one, other] = [placed[clash], placed[clash + 1]];
  if (one === undefined || other === undefined) return tags;
  const both = { at: (one.at + other.at) / 2, letters: one.letters + other.letters };
  return merged(placed.toSpliced(clash, 2, both), width);
}

/** Whole within the line. */
function tagAt(at: number, letters: string, width: number): Tag {
  const own = widthOf(letters);
  return { x: own / 2 + at * (width - own), width: own, letters };
}
