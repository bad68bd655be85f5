import { success, type Fault, type Result } from '$lib/project/fault.ts';
import { got } from '$lib/project/got.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { solve } from '$lib/solution/solve.ts';
import { edited, inputAt, mirrored, rangeFault, type Input } from './input.ts';
import { kinksOf, type Kink } from './kinks.ts';
import { measureOf, type Measure } from './measure.ts';
import { gapsOf, type Gap } from './sweepGaps.ts';
import type { SweepRow } from './sweepRow.ts';

/** What to change, over which range, and what to measure by it. */
export interface SweepRequest {
  /** JSON pointer of a number within the layout. */
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
}

/** More rows than this no chart shows and nobody reads. */
const MOST_STEPS = 1000;

/**
 * One number of a layout over a range against some measures: each row is the layout with that number set, planned anew.
 * Pure. Refused, with the pointer of what is wrong in the request, where there is no such number, or no such range.
 */
export function sweep(project: Project, layout: Layout, request: SweepRequest): Result<Sweep> {
  const { from, to, steps, of } = request;
  const input = inputAt(layout, request.over, '/over');
  if (!input.ok) return input;
  const faults = requestFaults(request, input.value);
  if (faults.length > 0) return { ok: false, faults };
  const rowAt = (at: number, by: readonly Measure[]): SweepRow => rowOf(project, layout, request, at, by);
  // The last one is the end itself, whatever rounding says.
  const places = Array.from({ length: steps }, (_, i) =>
    i === steps - 1 ? to : from + ((to - from) * i) / (steps - 1),
  );
  const rows = places.map((at) => rowAt(at, of));
  return success({
    over: input.value,
    rows,
    gaps: gapsOf(rows, input.value.field.whole ? null : (at) => rowAt(at, []).ok),
    kinks: of.flatMap((measure) => kinksOf(rows, measure, (at) => rowAt(at, [measure]).values[measure.name] ?? null)),
  });
}

function rowOf(
  project: Project,
  layout: Layout,
  { over, mirror }: SweepRequest,
  at: number,
  by: readonly Measure[],
): SweepRow {
  const edit = { pointer: over, value: at };
  const other = mirror ? mirrored(edit) : null;
  const changed = edited(project, layout, other ? [edit, other] : [edit]);
  const solved = changed.ok ? solve(changed.value.project, changed.value.layout, false) : changed;
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
