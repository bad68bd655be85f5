import { sideNames, type Layout, type SideName } from '$lib/project/project.ts';
import { asMm, says } from '$lib/project/sentence.ts';
import { tapeStep, toTape } from '$lib/project/tape.ts';
import type { Finding } from './finding.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import type { Case, Proposal } from './proposal.ts';
import { leastStep } from './leastStep.ts';
import { sitText, withSeat } from './sixty.ts';
import type { LayoutChange } from './suggestion.ts';
import { anyWorse } from './worse.ts';

type Way = 'outwards' | 'inwards' | 'forwards' | 'back';

/** Furthest that a mark is moved by a suggestion, mm: a desk's half. */
const FURTHEST = 500;
/** What is just clear may be too near, or hide something: so much further is looked, in steps so long, mm. */
const FURTHER = { by: 120, step: 10 };

const ways = ['outwards', 'inwards', 'forwards', 'back'] as const satisfies readonly Way[];

/** Whether the marks mirror each other: then they are moved together. */
export const areMirrored = ({ placement: { left, right } }: Layout): boolean =>
  left.x === -right.x && left.y === right.y;

/** Marks moved by so much outwards and back, mm (less than 0: inwards, forwards), to places that the tape shows. */
export function moved(
  { placement }: Layout,
  sides: readonly SideName[],
  { out, back }: { readonly out: number; readonly back: number },
  display: LengthDisplay,
): Pick<LayoutChange, 'placement'> {
  const to = (side: SideName) => {
    const { x, y } = placement[side];
    const outwards = side === 'right' ? out : -out;
    return {
      ...placement[side],
      x: out === 0 ? x : toTape(x + outwards, display),
      y: back === 0 ? y : toTape(y + back, display),
    };
  };
  return { placement: Object.fromEntries(sides.map((side) => [side, to(side)])) };
}

/** How far a mark really goes with a change, mm: less or more than asked by what brings it to the tape. */
export function movedBy(
  { placement }: Layout,
  { placement: there }: LayoutChange,
  side: SideName,
): { readonly out: number; readonly back: number } {
  const [from, to] = [placement[side], there?.[side] ?? placement[side]];
  return { out: Math.abs(to.x) - Math.abs(from.x), back: to.y - from.y };
}

const vectors: Readonly<Record<Way, (by: number) => { readonly out: number; readonly back: number }>> = {
  outwards: (by) => ({ out: by, back: 0 }),
  inwards: (by) => ({ out: -by, back: 0 }),
  forwards: (by) => ({ out: 0, back: -by }),
  back: (by) => ({ out: 0, back: by }),
};

/**
 * Something in the way of a loudspeaker: the least move of its mark that clears it and leaves nothing worse, to a place
 * that the tape shows, the seat moved along where the triangle would suffer; the shortest first.
 */
export function movedMarks(of: Case): Proposal[] {
  const { of: now, findings, at, placed } = of;
  const { layout } = now;
  const { display } = now.project;
  const own = sideNames.filter((side) => findings.some((finding) => finding.sides.includes(side)));
  const sides = areMirrored(layout) ? sideNames : own;
  const which = sides.length > 1 ? 'both marks' : `the ${sides[0] ?? ''} mark`;
  const [code] = findings.map((finding) => finding.code);
  if (code === undefined) return [];
  const step = tapeStep(display);
  const stride = Math.max(1, Math.round(FURTHER.step / step));
  const clears = (after: readonly Finding[] | undefined | null): boolean =>
    after?.every((finding) => finding.code !== code) ?? false;
  const helps = (after: readonly Finding[] | undefined | null): boolean =>
    clears(after) && !anyWorse(now.checks, after ?? [], code);
  // Most places are rejected before a stand is built.
  const isClear = (change: LayoutChange): boolean => clears(placed(change)) && clears(at(change)?.checks);
  const isGood = (change: LayoutChange): boolean => helps(placed(change)) && helps(at(change)?.checks);
  return ways
    .flatMap((way) => {
      const change = (steps: number) => moved(layout, sides, vectors[way](steps * step), display);
      const first = leastStep((steps) => isClear(change(steps)), Math.floor(FURTHEST / step));
      if (first === null) return [];
      for (let steps = first; (steps - first) * step <= FURTHER.by; steps += stride) {
        const there = change(steps);
        const { out, back } = movedBy(layout, there, sides[0] ?? 'right');
        const label = says`Move ${which} ${asMm(Math.hypot(out, back))} ${way}`;
        if (isGood(there)) return [{ by: steps * step, label, change: there }];
        const seated = withSeat(of, there);
        if (seated && seated.by !== 0 && isGood(seated.change)) {
          const by = steps * step + Math.abs(seated.by);
          return [{ by, label: says`${label}, and ${sitText(seated.by)}`, change: seated.change }];
        }
      }
      return [];
    })
    .sort((a, b) => a.by - b.by)
    .map(({ label, change }) => ({ label, change }));
}
