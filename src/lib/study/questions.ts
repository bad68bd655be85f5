import { TEST_PLANE } from '$lib/solution/findings/testPlane.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { freeInputs, spansOf, type RuleChoice, type Span } from './freeInputs.ts';
import type { Measure } from './measure.ts';
import { measures } from './measures.ts';

/** An ask as its file has it. */
export interface AskDocument {
  readonly free: readonly (Span | RuleChoice)[];
  readonly rules: readonly RuleDocument[];
  readonly aims: readonly string[];
}

export interface RuleDocument {
  readonly measure: string;
  readonly most?: number;
  readonly least?: number;
}

/** What is asked often, with nothing to set up. */
export interface Question {
  /** As the command names it. */
  readonly name: string;
  readonly label: string;
  readonly aims: readonly [string, string];
  /** How near the best of the first aim an answer is as good as it, in that aim's unit; of such answers the best in the second is meant. Rules of thumb: nobody hears or measures less. */
  readonly near: number;
  /** What may move, by pointer. */
  readonly free: readonly string[];
  readonly rules: readonly RuleDocument[];
}

const MARKS_AND_HEAD = ['/placement/right/x', '/placement/right/y', '/listener/setback'];

export const questions: readonly Question[] = [
  {
    name: 'sixty-degrees',
    label: '60° with what moves least',
    aims: ['triangle-error', 'move'],
    near: 0.5,
    free: MARKS_AND_HEAD,
    rules: [],
  },
  {
    name: 'lowest-stands',
    label: 'Lowest stands that still hit',
    aims: ['stand-height', 'move'],
    near: 1,
    free: [...MARKS_AND_HEAD, '/stand/lift'],
    rules: [{ measure: 'miss', most: 10 }],
  },
  {
    name: 'widest-safe-zone',
    label: 'Widest safe zone',
    aims: ['safe-zone', 'move'],
    near: 1,
    free: MARKS_AND_HEAD,
    rules: [],
  },
  {
    name: 'least-desk-reflection',
    label: 'Least desk reflection',
    aims: ['desk-level', 'move'],
    near: 0.1,
    free: MARKS_AND_HEAD,
    rules: [],
  },
];

/** How many candidates an answer of some seconds has room for, by the dearest thing that is worked out. */
const ROOM: Record<Measure['needs'], number> = {
  aim: 30_000,
  bodies: 30_000,
  stands: 30_000,
  heard: 6000,
  sound: 1500,
  sheets: 20,
};

const byDearness: readonly Measure['needs'][] = ['aim', 'bodies', 'stands', 'heard', 'sound', 'sheets'];

/** The ask of a question for a layout. */
export function askOf({ aims, free, rules }: Question, project: Project, layout: Layout): AskDocument {
  const inputs = freeInputs(project, layout).filter(({ pointer }) => free.includes(pointer));
  const must = [...usualRules(layout), ...rules];
  const names = [...aims, ...must.map(({ measure }) => measure)];
  const needs = measures.flatMap((measure) =>
    names.includes(measure.name) ? [byDearness.indexOf(measure.needs)] : [],
  );
  const dearest = byDearness[Math.max(...needs)] ?? 'aim';
  return { free: spansOf(inputs, ROOM[dearest]), rules: must, aims };
}

/** What holds for every plain question: nothing touches, nothing hides, nothing tips. Rules of thumb, but for the tip angle. */
const usualRules = ({ monitors, room }: Layout): readonly RuleDocument[] => [
  ...(monitors.length > 0 ? [{ measure: 'screen-gap', least: 20 }, { measure: 'screen-hidden', most: 3 }] : []), // prettier-ignore
  ...(room.walls.length === 0 ? [] : [{ measure: 'wall-gap', least: 20 }]),
  { measure: 'edge-gap', least: 0 },
  { measure: 'tilt', most: 16 },
  { measure: 'tip-angle', least: TEST_PLANE },
];
