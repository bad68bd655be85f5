import { contourLength } from '$lib/geometry/contourLength.ts';
import { signedArea } from '$lib/geometry/area.ts';
import { solve } from '$lib/solution/solve.ts';
import { soundOf } from '$lib/solution/sound.ts';
import type { Plan, SidePlan } from '$lib/solution/document.ts';
import type { Finding } from '$lib/solution/findings/finding.ts';
import { sideNames, type Project } from '$lib/project/project.ts';
import type { Vec3 } from '$lib/geometry/point.ts';
import { firstLayout } from '../projects.ts';

/** What is recorded of a plan: every name stands for one number, or for a word that must be the same. */
export type PlanFigures = Readonly<Record<string, number | string>>;

/**
 * The figures of a project's first layout: aim, triangle, balance, stand, each part's outline by area, length and count of lines,
 * findings by code, side and value. Where there is no plan, the kind of refusal and its pointers.
 */
export function planFigures(of: Project): PlanFigures {
  const planned = solve(of, firstLayout(of));
  if (!planned.ok) return { refused: [planned.kind, ...planned.faults.map(({ pointer }) => pointer).sort()].join(' ') };
  const { value } = planned;
  return {
    ...Object.assign(
      {},
      ...sideNames.flatMap((side) => [sideFigures(value.sides[side], side), standFigures(value, side)]),
    ),
    'triangle base': value.triangle.base,
    'triangle angle': value.triangle.angle,
    'triangle time': value.triangle.timeDifference,
    'triangle level': value.triangle.levelDifference,
    ...Object.assign({}, ...value.parts.map(partFigures)),
    ...Object.assign({}, ...value.checks.map(findingFigures)),
  };
}

/** What the names of the sound's figures begin with. */
export const NOTCH = 'notch';

/** The notches of the response at the ears, both loudspeakers together; none where there is no plan. */
export function soundFigures(of: Project): PlanFigures {
  const planned = solve(of, firstLayout(of));
  if (!planned.ok) return {};
  const { notches } = soundOf(of, firstLayout(of), planned.value).both;
  const told = notches.map(({ frequency, level }, at) => ({
    [`${NOTCH} ${at} Hz`]: frequency,
    [`${NOTCH} ${at} dB`]: level,
  }));
  return Object.assign({}, ...told) as PlanFigures;
}

const vector = (name: string, { x, y, z }: Vec3): PlanFigures => ({
  [`${name} x`]: x,
  [`${name} y`]: y,
  [`${name} z`]: z,
});

function sideFigures(one: SidePlan, side: string): PlanFigures {
  const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
  return {
    [`${side} toe`]: one.toe,
    [`${side} tilt`]: one.tilt,
    [`${side} front height`]: one.frontEdgeHeight,
    [`${side} rear height`]: one.rearEdgeHeight,
    [`${side} miss`]: one.miss,
    ...vector(`${side} aimed point`, one.aimedPoint),
    [`${side} driver distances`]: sum(one.drivers.map(({ distance }) => distance)),
    [`${side} off axis`]: sum(one.drivers.map(({ offAxis }) => offAxis)),
    [`${side} crossover paths`]: sum(one.crossovers.map(({ pathDifference }) => pathDifference)),
    [`${side} reflection paths`]: sum(one.reflections.map(({ pathDifference }) => pathDifference)),
    [`${side} reflections that land`]: one.reflections.filter(({ lands }) => lands).length,
  };
}

function standFigures({ stand, balance }: Plan, side: 'left' | 'right'): PlanFigures {
  const [made, held] = [stand[side], balance[side]];
  return {
    [`${side} width`]: made.width,
    [`${side} layers`]: made.layers,
    [`${side} volume`]: made.volume,
    [`${side} mass`]: made.mass ?? 'unknown',
    ...vector(`${side} centre`, made.centre),
    [`${side} pieces`]: made.pieces.reduce((sum, { quantity }) => sum + quantity, 0),
    [`${side} printed`]: made.printed.reduce((sum, { quantity }) => sum + quantity, 0),
    [`${side} cut length`]: made.figures.cutLength,
    [`${side} balance`]: JSON.stringify(held.missing),
    [`${side} holds`]: held.verdict?.holds.least ?? 'unknown',
  };
}

const partFigures = ({ name, quantity, outside, inside }: Plan['parts'][number]): PlanFigures => ({
  [`${name} quantity`]: quantity,
  [`${name} area`]: signedArea(outside),
  [`${name} outline`]: contourLength(outside),
  [`${name} lines`]: outside.kind === 'path' ? outside.vertices.length : 1,
  [`${name} holes`]: inside.length,
  [`${name} hole area`]: inside.reduce((sum, hole) => sum + Math.abs(signedArea(hole)), 0),
});

const findingFigures = ({ code, sides: [side], value }: Finding): PlanFigures => ({
  [`finding ${code} ${side ?? 'both'}`]: value,
});
