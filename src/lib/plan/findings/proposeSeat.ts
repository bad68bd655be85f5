import { rootBetween } from '$lib/geometry/root.ts';
import { ranges } from '$lib/project/ranges.ts';
import { sideNames } from '$lib/project/project.ts';
import type { Case, Proposal } from './proposals.ts';
import { areMirrored, moved } from './proposeMarks.ts';
import { mmText } from './say.ts';

const WANTED = 60;
/** How far marks and seat are moved for a better triangle, mm. */
const FURTHEST = 600;

/** Loudspeakers at unequal distances: the seat from which they are equally far. */
export function evenPair({ layout, at }: Case): Proposal[] {
  const apart = (offset: number): number => {
    const { leftDistance = NaN, rightDistance = NaN } = at({ listener: { offset } })?.triangle ?? {};
    return leftDistance - rightDistance;
  };
  const { left, right } = layout.placement;
  const found = areMirrored(layout) ? 0 : rootBetween(apart, left.x, right.x);
  if (found === null) return [];
  const offset = Math.round(found) || 0;
  const where = offset === 0 ? 'in the middle' : `${mmText(Math.abs(offset))} to the ${offset > 0 ? 'right' : 'left'}`;
  return [{ label: `Sit ${where}`, change: { listener: { offset } } }];
}

/** A triangle that is too wide or too narrow: marks nearer or further apart, the seat back or forth; the shorter way first. */
export function sixtyDegrees({ layout, at }: Case): Proposal[] {
  const marks = (by: number) => moved(layout, sideNames, 'outwards', Math.round(by));
  const seat = (by: number) => ({ listener: { setback: layout.listener.setback + Math.round(by) } });
  const solved = (change: typeof marks | typeof seat): number | null => {
    const off = (by: number): number => (at(change(by))?.triangle.angle ?? NaN) - WANTED;
    const here = off(0);
    const ends = [FURTHEST / 8, FURTHEST / 4, FURTHEST / 2, FURTHEST].flatMap((by) => [-by, by]);
    const end = ends.find((by) => off(by) < 0 !== here < 0 && !Number.isNaN(off(by)));
    const by = end === undefined ? null : rootBetween(off, Math.min(0, end), Math.max(0, end));
    return by === null || Math.round(by) === 0 ? null : Math.round(by);
  };
  const [apart, back] = [solved(marks), solved(seat)];
  const proposals = [
    ...(apart === null
      ? []
      : [
          {
            by: Math.abs(apart),
            label: `Move both marks ${mmText(Math.abs(apart))} ${apart > 0 ? 'outwards' : 'inwards'}`,
            change: marks(apart),
          },
        ]),
    ...(back === null || layout.listener.setback + back > ranges.setback.max
      ? []
      : [
          {
            by: Math.abs(back),
            label: `Sit ${mmText(Math.abs(back))} ${back > 0 ? 'further back' : 'nearer'}`,
            change: seat(back),
          },
        ]),
  ];
  return proposals.sort((a, b) => a.by - b.by).map(({ label, change }) => ({ label, change }));
}
