import { sideNames } from '$lib/project/project.ts';
import type { Plan } from '$lib/solution/document.ts';
import type { Case, Proposal } from './proposal.ts';
import { tapeStep, toTape } from '$lib/project/tape.ts';
import { asAngle, asDegrees, asMm, asUnit, says } from '$lib/project/sentence.ts';
import { leastStep } from './leastStep.ts';

const aimedAtHead: Proposal = {
  label: says`Aim both at the head`,
  change: { aim: { toe: { rule: 'to-head' }, tilt: { rule: 'tilt-to-ear' } } },
};

/** An axis that passes beside the head: let the rules aim it. */
export const axisThroughHead = ({ of: { layout } }: Case): Proposal[] => [
  ...(layout.aim.tilt.rule === 'as-set'
    ? [{ label: says`Let the tilt follow the ear`, change: { aim: { tilt: { rule: 'tilt-to-ear' as const } } } }]
    : []),
  { label: says`Turn both to the head`, change: { aim: { toe: { rule: 'to-head' } } } },
  aimedAtHead,
];

/** How much lift is tried, mm; no desk stand is higher. */
const MOST_LIFT = 400;

const flatWithin =
  (limit: number) =>
  (plan: Plan | null): boolean =>
    plan !== null && sideNames.every((side) => Math.abs(plan.sides[side].axisElevation) <= limit);

/** A steep axis: as much more lift (or less) as brings it to its limit, or the tilt that does where the lift follows. */
export function flatterAxis({ of: { project, layout, sides }, findings, at }: Case): Proposal[] {
  const { display } = project;
  const flat = flatWithin(findings[0]?.limit ?? 0);
  if (layout.aim.tilt.rule === 'lift-to-ear') {
    const now = layout.aim.tilt.degrees;
    const sign = sides.right.axisElevation > 0 ? -1 : 1;
    const to = (tenths: number) => Number((now + (sign * tenths) / 10).toFixed(1));
    const aim = (tenths: number) => ({ tilt: { rule: 'lift-to-ear' as const, degrees: to(tenths) } });
    const tenths = leastStep((steps) => flat(at({ aim: aim(steps) })), 600);
    return tenths === null
      ? []
      : [
          {
            label: says`Tilt the cabinets ${asAngle(tenths / 10)} further ${sign > 0 ? 'back' : 'forwards'}, to ${asAngle(to(tenths))}`,
            change: { aim: aim(tenths) },
          },
        ];
  }
  const now = sides.right.lift;
  const sign = sides.right.axisElevation > 0 ? 1 : -1;
  const to = (steps: number) => Math.max(0, toTape(now + sign * steps * tapeStep(display), display));
  const steps = leastStep(
    (count) => flat(at({ stand: { lift: to(count) } })),
    Math.floor(MOST_LIFT / tapeStep(display)),
  );
  return steps === null
    ? []
    : [
        {
          label: says`${sign > 0 ? 'Raise' : 'Lower'} the lift by ${asMm(Math.abs(to(steps) - now))}, to ${asMm(to(steps))}`,
          change: { stand: { lift: to(steps) } },
        },
      ];
}

/** What would line the drivers of a crossover up, the cheaper for the treble first. */
export const linedUpDrivers = ({ of: { sides, sound }, findings }: Case): Proposal[] =>
  findings
    .flatMap(({ sides }) => sides.flatMap((side) => sound.sides[side].crossovers))
    .flatMap(({ lower, upper, sum }) => (sum ? [{ lower, upper, ...sum }] : []))
    .flatMap(({ lower, upper, lineUp: { tilt, aimedPoint }, level }, _, all) => {
      if (level !== null && all.some((other) => (other.level ?? -Infinity) < level)) return [];
      return [
        ...(aimedPoint
          ? [{ price: aimedPoint.price.level, proposal: throughPoint(lower, upper, aimedPoint.value) }]
          : []),
        ...(tilt ? [{ price: tilt.price.level, proposal: tilted(tilt.value, sides.right.lift) }] : []),
      ];
    })
    .sort((a, b) => b.price - a.price)
    .map(({ proposal }) => proposal)
    .concat(aimedAtHead);

/** Fractions and angles as a person would type them. */
const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals));

export const throughPoint = (lower: string, upper: string, fraction: number): Proposal => ({
  label: says`Aim through the point ${asUnit(100 * fraction, '%')} of the way from ${lower} to ${upper}`,
  change: { aim: { through: { between: [lower, upper], fraction: rounded(fraction, 3) } } },
});

/** A tilt that is set needs a lift that is: the one that it was found with. */
export const tilted = (degrees: number, lift: number): Proposal => ({
  label: says`Set the tilt to ${asDegrees(degrees)}`,
  change: { aim: { tilt: { rule: 'as-set', degrees: rounded(degrees, 2) } }, stand: { lift: rounded(lift, 1) } },
});

/** A tweeter that beams past the head: let its own axis meet the head. */
export const trebleAtHead = ({ of: { sound }, findings }: Case): Proposal[] =>
  findings.flatMap(({ sides: [side = 'right'] }) => {
    const treble = sound.sides[side].crossovers[0]?.treble;
    const name = treble ?? sound.sides.right.drivers[0]?.name;
    const rules = { toe: { rule: 'to-head' as const }, tilt: { rule: 'tilt-to-ear' as const } };
    return name === undefined
      ? []
      : [{ label: says`Aim the ${name} at the head`, change: { aim: { ...rules, through: name } } }, aimedAtHead];
  });
