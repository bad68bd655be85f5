import type { Recorded } from '$lib/project/project.ts';
import { doneText } from '$lib/proof/doneText.ts';
import { list, text, type Section } from './block.ts';
import { lengthsOf, type Subject } from './subject.ts';

/** What was read of the finished stands and done to them, oldest first; nothing before there is a record. */
export function asBuilt({ plan }: Subject): readonly Section[] {
  const { project, layout } = plan;
  const record = layout.built?.record ?? [];
  if (record.length === 0) return [];
  const { full } = lengthsOf(project);
  const whole = (mm: number): string => full(Math.round(mm));
  const passed = (pass: Recorded['pass']): string =>
    pass === null
      ? 'where the axis passes was not known'
      : `the axis passed the head by ${whole(Math.hypot(pass.right, pass.over))} ± ${whole(pass.sure)}`;
  return [
    {
      id: 'as-built',
      title: 'As built',
      blocks: [
        text('What was read of the finished stands, and what was done then; 95 of 100 lie within ±.'),
        list(
          record.map(({ side, date, note, pass, done }) => {
            const head = [`${side === 'left' ? 'Left' : 'Right'} stand`, date, note].filter((one) => one !== null).join(', ');
            return `${head}: ${passed(pass)}; ${doneText(done, project.display)}.`;
          }),
        ),
      ],
    },
  ];
} // prettier-ignore
