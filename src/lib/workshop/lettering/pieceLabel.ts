import { extentOf } from '$lib/geometry/extent.ts';
import type { Point } from '$lib/geometry/point.ts';
import { labelInside } from './label.ts';
import type { NameLabel, Part, PartLabel } from '$lib/workshop/part.ts';

/** The lettering of a part, line by line. */
export const labelsOf = (part: Part): readonly PartLabel[] =>
  typeof part.labels === 'string' ? nameLabel(part, part.labels) : part.labels;

/**
 * What is engraved on a piece of a stand: its name and, where it is seen from the side, which end is the front. As large as
 * fits in the longest stretch without a hole, or in the web under the windows where more of it fits there; shorter where
 * there is less room, none where there is none.
 */
function nameLabel({ name, outside, inside }: Part, kind: NameLabel): readonly PartLabel[] {
  const text = name.toUpperCase();
  const texts = kind === 'front and name' ? [`← FRONT · ${text}`, `← ${text}`, '← F', '←'] : [text];
  const corners = outside.vertices.map(({ x, y }): Point => [x, y]);
  const holes = inside.map((hole) => extentOf(hole));
  const length = Math.max(...corners.map(([x]) => x));
  const beside = labelInside(corners, widestGap(holes, length), texts);
  if (beside[0]?.text === texts[0] || holes.length === 0) return beside;
  const below = labelInside(webBelow(corners, holes, length), { from: 0, to: length }, texts);
  return rankOf(below, texts) < rankOf(beside, texts) ? below : beside;
}

/** Which of the texts a label has, the fullest first; behind all for no label. */
const rankOf = ([label]: readonly PartLabel[], texts: readonly string[]): number =>
  label ? texts.indexOf(label.text) : texts.length;

interface Stretch {
  readonly left: number;
  readonly right: number;
}

/** The longest stretch without a hole, from one end of the part to the other. */
function widestGap(holes: readonly Stretch[], length: number): { from: number; to: number } {
  let [from, best] = [0, { from: 0, to: 0 }];
  for (const { left, right } of [...holes, { left: length, right: length }].sort((a, b) => a.left - b.left)) {
    if (left - from > best.to - best.from) best = { from, to: left };
    from = Math.max(from, right);
  }
  return best;
}

/** The strip between everything cut into the base and the lowest hole; empty where an end or a hole leaves none. */
function webBelow(corners: readonly Point[], holes: readonly { bottom: number }[], length: number): readonly Point[] {
  const high = Math.min(...holes.map(({ bottom }) => bottom));
  const inner = corners.filter(([x, y]) => y < high && x > 0 && x < length);
  const low = Math.max(0, ...inner.map(([, y]) => y));
  const ends = corners.filter(([x]) => x <= 0 || x >= length);
  if (low >= high || ends.some(([, y]) => y > low && y < high)) return [];
  return [
    [0, low],
    [length, low],
    [length, high],
    [0, high],
  ];
}
