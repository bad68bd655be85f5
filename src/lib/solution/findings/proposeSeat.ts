import { rootBetween } from '$lib/geometry/root.ts';
import { sideNames } from '$lib/project/project.ts';
import { asMm, capital, joined, says } from '$lib/project/sentence.ts';
import type { Finding } from './finding.ts';
import { toTape } from '$lib/project/tape.ts';
import type { Case, Proposal } from './proposal.ts';
import { areMirrored, moved, movedBy } from './proposeMarks.ts';
import { overSixty, sitText, triangleWith, vanishing, withSeat } from './sixty.ts';
import { anyWorse } from './worse.ts';

/** Shares of the whole way that the marks go, and how far back or forth they go beside it, mm; the seat does the rest. */
const SHARES = [0, 0.25, 0.5, 0.75, 1] as const;
const BESIDE = [0, 45, 90, 135, -45, -90] as const;
/** So many that pass the plan are tried on the sound as well. */
const MOST_TRIED = 3;

/** Loudspeakers at unequal distances: the seat from which they are equally far. */
export function evenPair(of: Case): Proposal[] {
  const { layout } = of.of;
  const { display } = of.of.project;
  const apart = (offset: number): number => {
    const { leftDistance = NaN, rightDistance = NaN } = triangleWith(of, { listener: { offset } }) ?? {};
    return leftDistance - rightDistance;
  };
  const { left, right } = layout.placement;
  const found = areMirrored(layout) ? 0 : rootBetween(apart, left.x, right.x);
  if (found === null) return [];
  const offset = toTape(found, display) || 0;
  const by = offset - layout.listener.offset;
  const where = offset === 0 ? ', to the middle' : '';
  return [
    {
      label: says`Sit ${asMm(Math.abs(by))} further to the ${by > 0 ? 'right' : 'left'}${where}`,
      change: { listener: { offset } },
    },
  ];
}

/**
 * A triangle that is too wide or too narrow: the marks apart or together, back or forth, the seat back or forth, and what
 * of each together makes 60°, to places that the tape shows; what moves the least first, and nothing that the plan shows to
 * make something else worse.
 */
export function sixtyDegrees(of: Case): Proposal[] {
  const { of: now, findings, at, placed } = of;
  const { project, layout } = now;
  const { display } = project;
  const marks = (out: number, back: number) =>
    out === 0 && back === 0 ? {} : moved(layout, sideNames, { out, back }, display);
  const whole = vanishing((out) => overSixty(of, marks(out, 0))) ?? 0;
  const candidates = SHARES.flatMap((share) =>
    BESIDE.flatMap((beside) => {
      const [out, back] = [toTape(share * whole, display), toTape(beside, display)];
      const there = withSeat(of, marks(out, back));
      if (there === null) return [];
      return [{ ...there, size: Math.abs(out) + Math.abs(back) + Math.abs(there.by) }];
    }),
  ).sort((a, b) => a.size - b.size);
  const [code] = findings.map((finding) => finding.code);
  if (code === undefined) return [];
  const found: Proposal[] = [];
  for (const { by, change } of candidates) {
    const isWorse = (after: readonly Finding[] | undefined | null): boolean =>
      !after || anyWorse(now.checks, after, code);
    if (isWorse(placed(change)) || isWorse(at(change)?.checks)) continue;
    const { out, back } = movedBy(layout, change, 'right');
    const ways = [
      ...(out === 0 ? [] : [says`${asMm(Math.abs(out))} ${out > 0 ? 'outwards' : 'inwards'}`]),
      ...(back === 0 ? [] : [says`${asMm(Math.abs(back))} ${back > 0 ? 'back' : 'forwards'}`]),
    ];
    const move = ways.length === 0 ? [] : [says`move both marks ${joined(ways, ' and ')}`];
    found.push({ label: capital(joined([...move, ...(by === 0 ? [] : [sitText(by)])], ', and ')), change });
    if (found.length === MOST_TRIED) break;
  }
  return found;
}
