import { list, steps, type Section } from './block.ts';
import { toldStands, type Subject } from './subject.ts';

/** How it goes together, step by step, and what the build does otherwise than was asked. */
export const gluing = ({ plan }: Subject): Section => ({
  id: 'gluing',
  title: 'Order of work',
  blocks: toldStands(plan).flatMap(({ who, stand }) => [
    steps(stand.steps, who),
    ...(stand.notes.length > 0 ? [list(stand.notes, `${who}: to know`)] : []),
  ]),
});
