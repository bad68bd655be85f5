import { sentenceText } from '$lib/project/sentence.ts';

import { list, steps, type Block, type Section } from './block.ts';
import { toldStands, type Subject } from './subject.ts';

/**
 * How it goes together, step by step, and what the build does otherwise than was asked. What both stands have in common is
 * told once, even where the stands differ.
 */
export function gluing({ plan }: Subject): Section {
  const { project } = plan;
  const told = toldStands(plan).map(({ who, stand }) => ({
    who,
    acts: stand.steps.map(({ act }) => act).join(),
    steps: stand.steps.map((step) => sentenceText(step, project.display)),
    notes: stand.notes.map((note) => sentenceText(note, project.display)),
  }));
  return { id: 'gluing', title: 'Order of work', blocks: together(told).flatMap(toldOf) };
}

interface Told {
  readonly who: string;
  /** What the steps do, one after the other. */
  readonly acts: string;
  readonly steps: readonly string[];
  readonly notes: readonly string[];
}

/** Two stands that are made in the same order as one: where they differ, each step tells of both. */
function together(told: readonly Told[]): readonly Told[] {
  const [left, right] = told;
  if (!left || !right || left.acts !== right.acts) return told;
  const both = (a: string, b: string): string => (a === b ? a : `${left.who}: ${a} ${right.who}: ${b}`);
  const notes = [...left.notes, ...right.notes].map((note) => {
    const [inLeft, inRight] = [left.notes.includes(note), right.notes.includes(note)];
    return inLeft && inRight ? note : `${inLeft ? left.who : right.who}: ${note}`;
  });
  return [
    {
      who: 'Each stand',
      acts: left.acts,
      steps: left.steps.map((step, i) => both(step, right.steps[i] ?? step)),
      notes: [...new Set(notes)],
    },
  ];
}

const toldOf = ({ who, steps: work, notes }: Told): readonly Block[] => [
  steps(work, who),
  ...(notes.length > 0 ? [list(notes, `${who}: to know`)] : []),
];
