import type { FindingCode } from './finding.ts';
import type { Case, Proposal } from './proposal.ts';
import { axisThroughHead, flatterAxis, linedUpDrivers, trebleAtHead } from './proposeAim.ts';
import { evenPair, sixtyDegrees } from './proposeSeat.ts';
import { movedMarks } from './proposeMarks.ts';
import { gripped, steadied } from './proposeStand.ts';

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
  'into-surface': movedMarks,
  'falls-over': steadied,
  tips: steadied,
  'may-tip': steadied,
  slides: gripped,
  'no-stop': gripped,
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
