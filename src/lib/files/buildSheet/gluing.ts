import { lengthsIn } from '$lib/project/lengthsIn.ts';
import { ownNames } from '$lib/project/ownNames.ts';
import { sentenceText } from '$lib/project/sentence.ts';
import { list, steps, type Section } from './block.ts';
import { toldStands, type Subject } from './subject.ts';

/** How it goes together, step by step, and what the build does otherwise than was asked. */
export const gluing = ({ plan, project }: Subject): Section => ({
  id: 'gluing',
  title: 'Order of work',
  blocks: toldStands(plan).flatMap(({ who, stand }) => [
    steps(
      stand.steps.map((step) => sentenceText(step, project.display)),
      who,
    ),
    ...(stand.notes.length > 0
      ? [
          list(
            stand.notes.map((note) => lengthsIn(note, project.display, ownNames(project))),
            `${who}: to know`,
          ),
        ]
      : []),
  ]),
});
