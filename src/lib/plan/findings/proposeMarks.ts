import { sideNames, type Layout, type SideName } from '$lib/project/project.ts';
import type { Case, Proposal } from './proposals.ts';
import { leastStep } from './leastStep.ts';
import { mmText } from './say.ts';
import type { LayoutChange } from './suggestion.ts';

type Way = 'outwards' | 'inwards' | 'forwards' | 'back';

/** Furthest that a mark is moved by a suggestion, mm: a desk's half. */
const FURTHEST = 500;

const steps: Readonly<Record<Way, (side: SideName, by: number) => readonly [x: number, y: number]>> = {
  outwards: (side, by) => [side === 'right' ? by : -by, 0],
  inwards: (side, by) => [side === 'right' ? -by : by, 0],
  forwards: (_, by) => [0, -by],
  back: (_, by) => [0, by],
};
const ways = ['outwards', 'inwards', 'forwards', 'back'] as const satisfies readonly Way[];

/** Whether the marks mirror each other: then they are moved together. */
export const areMirrored = ({ placement: { left, right } }: Layout): boolean =>
  left.x === -right.x && left.y === right.y;

export function moved(layout: Layout, sides: readonly SideName[], way: Way, by: number): LayoutChange {
  const to = (side: SideName) => {
    const [x, y] = steps[way](side, by);
    const mark = layout.placement[side];
    return { x: mark.x + x, y: mark.y + y };
  };
  return { placement: Object.fromEntries(sides.map((side) => [side, to(side)])) };
}

/** Something in the way of a loudspeaker: the least move of its mark, in whole mm, that clears it; the shortest way first. */
export function movedMarks({ layout, findings, at }: Case): Proposal[] {
  const own = sideNames.filter((side) => findings.some((finding) => finding.side === side));
  const sides = areMirrored(layout) ? sideNames : own;
  const codes = new Set(findings.map(({ code }) => code));
  const clears = (change: LayoutChange): boolean =>
    at(change)?.findings.every((finding) => !codes.has(finding.code)) ?? false;
  const both = sides.length > 1;
  return ways
    .flatMap((way) => {
      const by = leastStep((count) => clears(moved(layout, sides, way, count)), FURTHEST);
      return by === null ? [] : [{ way, by }];
    })
    .sort((a, b) => a.by - b.by)
    .map(({ way, by }) => ({
      label: `Move ${both ? 'both marks' : `the ${sides[0] ?? ''} mark`} ${mmText(by)} ${way}`,
      change: moved(layout, sides, way, by),
    }));
}
