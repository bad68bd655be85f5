import { proveFile } from '$lib/files/proveFile.ts';
import { sideNames } from '$lib/project/project.ts';
import { proveSide } from '$lib/proof/prove.ts';
import { isTaken } from '$lib/proof/taken.ts';
import { badInput, BAD_INPUT, chosenLayout, NO_ANSWER, readWords, refuse, runCommand, type Asked } from './command.ts';
import { readProject } from './readProject.ts';

interface Request {
  readonly file: string;
  readonly layout: string | null;
}

const USAGE = `usage: npm run --silent prove -- FILE [--layout NAME]

Says how the finished stands of a layout really stand, by what was read of them (/built in the layout): toe, tilt, roll and
mark with their spread, where each axis passes the head, how each reading fits the rest and which contradict, what to read
next and what to do: a card under which edge of the cabinet, then a turn of the stand or a move. JSON.
Exit status: 0 done, 2 bad input, 3 a layout without an answer.
`;

const readArguments = (words: readonly string[]): Asked<Request> =>
  readWords(words, { texts: ['layout'], flags: [] }, ({ file, text }) => ({ file, layout: text('layout') }));

function answer({ file, layout: name }: Request): number {
  const project = readProject(file);
  if (!project.ok) return refuse(BAD_INPUT, project.faults);
  const layout = chosenLayout(project.value, name);
  if (!layout.ok) return refuse(BAD_INPUT, layout.faults);
  const { built } = layout.value;
  if (built === null || !sideNames.some((side) => built.sides[side].readings.some(isTaken))) {
    return badInput(
      `expected readings of the finished stands under built of the layout "${layout.value.name}", got none`,
    );
  }
  const left = proveSide(project.value, layout.value, 'left');
  if (!left.ok) return refuse(NO_ANSWER, left.faults);
  const right = proveSide(project.value, layout.value, 'right');
  if (!right.ok) return refuse(NO_ANSWER, right.faults);
  process.stdout.write(proveFile(layout.value.name, { left: left.value, right: right.value }));
  return 0;
}

await runCommand(USAGE, readArguments, answer);
