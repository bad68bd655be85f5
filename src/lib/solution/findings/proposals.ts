import type { Sentence } from '$lib/project/sentence.ts';
import type { Solution } from '$lib/solution/solution.ts';
import type { Finding, FindingCode } from './finding.ts';
import { axisThroughHead, flatterAxis, linedUpDrivers, trebleAtHead } from './proposeAim.ts';
import { evenPair, sixtyDegrees } from './proposeSeat.ts';
import { movedMarks } from './proposeMarks.ts';
import { gripped, steadied } from './proposeStand.ts';
import type { LayoutChange } from './suggestion.ts';

/** A change that may answer a finding, not tried yet. */
export interface Proposal {
  readonly label: Sentence;
  readonly change: LayoutChange;
}

/** What a proposal is made from: a solution, and its findings of one code. */
export interface Case {
  readonly of: Solution;
  readonly findings: readonly Finding[];
  /** The solution with a change; null when it has none. */
  readonly at: (change: LayoutChange) => Solution | null;
  /** Those of its findings that hang on where things are: quickly seen, and null only where it has no answer. */
  readonly placed: (change: LayoutChange) => readonly Finding[] | null;
}

/** The proposals for a code, the one to be tried first first. */
type Propose = (of: Case) => readonly Proposal[];

const proposes: Readonly<Partial<Record<FindingCode, Propose>>> = {
  'monitor-collision': movedMarks,
  'monitor-in-sight-line': movedMarks,
  'into-wall': movedMarks,
  'close-to-wall': movedMarks,
  'close-to-screen': movedMarks,
  'screen-hidden': movedMarks,
  'stand-over-edge': movedMarks,
  'cabinet-over-edge': movedMarks,
  'falls-over': steadied,
  tips: steadied,
  'may-tip': steadied,
  slides: gripped,
  'axis-misses-head': axisThroughHead,
  'axis-misses-ears': axisThroughHead,
  inclination: flatterAxis,
  'crossover-sum': linedUpDrivers,
  'treble-off-axis': trebleAtHead,
  'time-difference': evenPair,
  'level-difference': evenPair,
  'triangle-angle': sixtyDegrees,
};

export const proposalsFor = (code: FindingCode, of: Case): readonly Proposal[] => proposes[code]?.(of) ?? [];
