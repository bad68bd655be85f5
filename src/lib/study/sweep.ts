import { success, type Fault, type Result } from '$lib/project/fault.ts';
import { got } from '$lib/project/got.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import type { Finding } from '$lib/solution/findings/finding.ts';
import type { Solution } from '$lib/solution/solution.ts';
import { solve } from '$lib/solution/solve.ts';
import { edited, inputOfProject, mirrored, rangeFault, type Edited, type Input } from './input.ts';
import { kinksOf, type Kink } from './kinks.ts';
import { measureOf, type Measure } from './measure.ts';
import { findingStretches, type CheckedRow, type FindingStretch } from './sweepFindings.ts';
import { gapsOf, type Gap } from './sweepGaps.ts';
import type { SweepRow } from './sweepRow.ts';

/** What to change, over which range, and what to measure by it. */
export interface SweepRequest {
  /** JSON pointer of a number within the layout, or of one that all layouts share, such as /speaker/depth. */
  readonly over: string;
  readonly from: number;
  readonly to: number;
  /** How many values, both ends among them. */
  readonly steps: number;
  readonly of: readonly Measure[];
  /** Whether the other loudspeaker goes to the mirror image in x = 0. Only for a mark. */
  readonly mirror: boolean;
}

export interface Sweep {
  readonly over: Input;
  readonly rows: readonly SweepRow[];
  /** Where there is no answer. */
  readonly gaps: readonly Gap[];
  /** Where a measure bends or jumps. */
  readonly kinks: readonly Kink[];
  /** Where each finding of the checks of geometry and stands begins and ends. */
  readonly findings: readonly FindingStretch[];
}

/** More rows than this no chart shows and nobody reads. */
export const MOST_STEPS = 1000;

/** Kinds of measures that are worked out together, the quick ones first, and about how long one row of them takes, in ms. */
const PASSES: readonly { readonly needs: readonly Measure['needs'][]; readonly cost: number }[] = [
  { needs: ['aim', 'bodies', 'stands'], cost: 3 },
  { needs: ['heard', 'sound'], cost: 20 },
  { needs: ['sheets'], cost: 3500 },
];

/** Between two steps: how much is done, 0…1; or the sweep so far, whose rows have no value yet of what takes longer. */
export type SweepStep = { readonly share: number } | { readonly answer: Result<Sweep> };

/**
 * One number over a range against some measures of a layout: each row is the layout with that number set, planned anew.
 * Pure. Refused, with the pointer of what is wrong in the request, where there is no such number, or no such range.
 */
export const sweep = (project: Project, layout: Layout, request: SweepRequest): Result<Sweep> =>
  toTheEnd(sweepSteps(project, layout, request));

/** The same in steps of a row, with what is quick to work out told first. */
export function* sweepSteps(
  project: Project,
  layout: Layout,
  request: SweepRequest,
): Generator<SweepStep, Result<Sweep>> {
  const { from, to, steps, of } = request;
  const input = inputOfProject(project, layout, request.over, '/over');
  if (!input.ok) return input;
  const faults = requestFaults(request, input.value);
  if (faults.length > 0) return { ok: false, faults };
  const rowAt = (at: number, by: readonly Measure[]): SweepRow =>
    rowOf(layout, solvedAt(project, layout, request, at), at, by);
  const passes = PASSES.map(({ needs, cost }) => ({ cost, by: of.filter((measure) => needs.includes(measure.needs)) }));
  const [quick, ...slow] = passes.filter(({ by }, index) => index === 0 || by.length > 0);
  if (!quick) throw new Error('there is a first pass');
  const all = steps * [quick, ...slow].reduce((sum, { cost }) => sum + cost, 0);
  let done = 0;

  const rows: SweepRow[] = [];
  const checked: CheckedRow[] = [];
  const findingsAt = (at: number): readonly Finding[] => {
    const solved = solvedAt(project, layout, request, at);
    return solved.ok ? solved.value.checks : [];
  };
  for (let i = 0; i < steps; i++) {
    // The last one is the end itself, whatever rounding says.
    const at = i === steps - 1 ? to : from + ((to - from) * i) / (steps - 1);
    const solved = solvedAt(project, layout, request, at);
    rows.push(rowOf(layout, solved, at, quick.by));
    checked.push({ at, findings: solved.ok ? solved.value.checks : [] });
    yield { share: (done += quick.cost) / all };
  }
  const { whole } = input.value.field;
  const gaps = gapsOf(rows, whole ? null : (at) => rowAt(at, []).ok);
  const kinks: Kink[] = [];
  for (const measure of quick.by) {
    kinks.push(...kinksOf(rows, measure, (at) => rowAt(at, [measure]).values[measure.name] ?? null));
    yield { share: done / all };
  }
  const stretches = findingStretches(checked, whole ? null : findingsAt);
  let stretch = stretches.next();
  for (; !stretch.done; stretch = stretches.next()) yield { share: done / all };
  const findings = stretch.value;
  const swept = (): Sweep => ({ over: input.value, rows: [...rows], gaps, kinks, findings });
  for (const { by, cost } of slow) {
    yield { answer: success(swept()) };
    for (const [i, row] of rows.entries()) {
      rows[i] = { ...row, values: { ...row.values, ...rowAt(row.at, by).values } };
      yield { share: (done += cost) / all };
    }
  }
  return success(swept());
}

/** The project and layout with a number set, and the mirror image of a mark with it. */
export function changedTo(
  project: Project,
  layout: Layout,
  { over, mirror }: Pick<SweepRequest, 'over' | 'mirror'>,
  at: number,
): Result<Edited> {
  const edit = { pointer: over, value: at };
  const other = mirror ? mirrored(edit) : null;
  return edited(project, layout, other ? [edit, other] : [edit]);
}

function solvedAt(
  project: Project,
  layout: Layout,
  request: Pick<SweepRequest, 'over' | 'mirror'>,
  at: number,
): Result<Solution> {
  const changed = changedTo(project, layout, request, at);
  return changed.ok ? solve(changed.value.project, changed.value.layout, false) : changed;
}

function rowOf(layout: Layout, solved: Result<Solution>, at: number, by: readonly Measure[]): SweepRow {
  return {
    at,
    ok: solved.ok,
    values: Object.fromEntries(
      by.map((measure) => [measure.name, solved.ok ? measureOf(measure, solved.value, layout) : null]),
    ),
    reason: solved.ok ? null : solved.faults,
  };
}

function requestFaults({ over, from, to, steps, of, mirror }: SweepRequest, input: Input): Fault[] {
  const faults: Fault[] = [];
  for (const [pointer, end] of [
    ['/from', from],
    ['/to', to],
  ] as const) {
    const fault = rangeFault(input, end, pointer);
    if (fault) faults.push(fault);
  }
  if (faults.length === 0 && !(from < to)) {
    faults.push({ pointer: '/to', message: `expected more than ${from}, where the range begins, got ${got(to)}` });
  }
  if (!Number.isInteger(steps) || steps < 2 || steps > MOST_STEPS) {
    const message = `expected a whole number from 2 to ${MOST_STEPS}, both ends of the range among them, got ${got(steps)}`;
    faults.push({ pointer: '/steps', message });
  } else if (input.field.whole && !Number.isInteger((to - from) / (steps - 1))) {
    const message = `expected a number of values that leaves them whole, such as ${to - from + 1}, got ${got(steps)}`;
    faults.push({ pointer: '/steps', message });
  }
  if (of.length === 0) faults.push({ pointer: '/of', message: 'expected at least one measure, got none' });
  if (mirror && mirrored({ pointer: over, value: from }) === null) {
    const message = `expected a mark, such as /placement/right/x, to mirror, got ${got(over)}`;
    faults.push({ pointer: '/mirror', message });
  }
  return faults;
}
