import * as v from 'valibot';
import { faultLine } from '$lib/project/fault.ts';
import { checkProject } from '$lib/project/parse.ts';
import type { Nested } from '$lib/workshop/nest.ts';
import type { Project } from '$lib/project/project.ts';

/** What the page asks of the worker: to nest one layout. The ticket is told again with every reply. */
export interface Ask {
  readonly kind: 'nest';
  readonly ticket: number;
  readonly project: Project;
  readonly layoutIndex: number;
}

/** Why nesting has come to an end: nothing better can be found, the work is spent, the time is up, or it was left. */
export type Ending = 'done' | 'time' | 'stopped';

/** What the worker says. */
export type Reply =
  | { readonly kind: 'better'; readonly ticket: number; readonly nested: Nested }
  | { readonly kind: 'progress'; readonly ticket: number; readonly share: number }
  | { readonly kind: 'ended'; readonly ticket: number; readonly ending: Exclude<Ending, 'stopped'> }
  | {
      readonly kind: 'refused';
      readonly ticket: number;
      readonly faults: readonly { pointer: string; message: string }[];
    }
  | { readonly kind: 'failed'; readonly ticket: number; readonly message: string };

const ticket = v.pipe(v.number(), v.integer());
const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const finite = v.pipe(v.number(), v.finite());
const fault = v.object({ pointer: v.string(), message: v.string() });

const ask = v.object({ kind: v.literal('nest'), ticket, project: v.unknown(), layoutIndex: count });

/** A message as an ask; an error that says what was wrong with it where it is none. */
export function readAsk(data: unknown): Ask {
  const read = v.parse(ask, data);
  const checked = checkProject(read.project);
  if (!checked.ok) throw new TypeError(checked.faults.map(faultLine).join('; '));
  return { ...read, project: checked.value };
}

const sheet = v.object({
  stock: v.string(),
  number: count,
  offcut: v.exactOptional(v.boolean()),
  width: finite,
  height: finite,
  placements: v.array(v.object({ part: v.string(), x: finite, y: finite, turn: finite })),
  fill: finite,
});

const nested: v.GenericSchema<unknown, Nested> = v.object({
  sheets: v.array(sheet),
  stocks: v.array(v.object({ stock: v.string(), sheets: count, least: count, offcuts: count })),
  released: v.array(
    v.object({
      index: count,
      reason: v.picklist(['no-part', 'too-many', 'no-sheet', 'grain', 'margin', 'overlap']),
      message: v.string(),
    }),
  ),
  short: v.array(fault),
});

const reply = v.variant('kind', [
  v.object({ kind: v.literal('better'), ticket, nested }),
  v.object({ kind: v.literal('progress'), ticket, share: finite }),
  v.object({ kind: v.literal('ended'), ticket, ending: v.picklist(['done', 'time']) }),
  v.object({ kind: v.literal('refused'), ticket, faults: v.array(fault) }),
  v.object({ kind: v.literal('failed'), ticket, message: v.string() }),
]);

/** A message as a reply; an error that says what was wrong with it where it is none. */
export const readReply = (data: unknown): Reply => v.parse(reply, data);
