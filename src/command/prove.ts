import { readFileSync } from 'node:fs';
import { basename, extname } from 'node:path';
import type { Commas } from '$lib/files/response/columns.ts';
import { readKept } from '$lib/files/response/readKept.ts';
import { proveFile } from '$lib/files/proveFile.ts';
import { failure, success, type Result } from '$lib/project/fault.ts';
import { sideNames, type Built, type HeardOne, type Layout } from '$lib/project/project.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import { hearSteps, NOTHING_HEARD } from '$lib/proof/heard/heard.ts';
import { proveSide } from '$lib/proof/prove.ts';
import { NOTHING_READ } from '$lib/proof/nothingRead.ts';
import { solve } from '$lib/solution/solve.ts';
import { isTaken } from '$lib/proof/taken.ts';
import { badInput, BAD_INPUT, chosenLayout, NO_ANSWER, readWords, refuse, runCommand, type Asked } from './command.ts';
import { readProject } from './readProject.ts';

interface Request {
  readonly file: string;
  readonly layout: string | null;
  /** A measured response that is looked at as well, and what it is of. */
  readonly heard: {
    readonly path: string;
    readonly of: HeardOne['of'];
    readonly at: HeardOne['at'];
    readonly commas: Commas | null;
  } | null;
}

const USAGE = `usage: npm run --silent prove -- FILE [--layout NAME] [--heard RESPONSE --of left|right|both [--at seat|near] [--commas decimal|thousands]]

Says how the finished stands of a layout really stand, by what was read of them (/built in the layout): toe, tilt, roll and
mark with their spread, where each axis passes the head, how each reading fits the rest and which contradict, what to read
next and what to do: a card under which edge of the cabinet, then a turn of the stand or a move. And which surface makes
which dip of the responses measured there (/built/heard, and a text file of frequency, level and, where there is one, phase
after --heard), which dips none explains, and which move of the microphone would make sure. JSON.
Exit status: 0 done, 2 bad input, 3 a layout without an answer.
`;

const wordOf = <Word extends string>(words: readonly Word[], text: string | null): Word | null =>
  words.find((word) => word === text) ?? null;

const readArguments = (words: readonly string[]): Asked<Request> =>
  readWords(words, { texts: ['layout', 'heard', 'of', 'at', 'commas'], flags: [] }, ({ file, text }) => {
    const [path, of] = [text('heard'), wordOf(['left', 'right', 'both'], text('of'))];
    const [at, commas] = [
      wordOf(['seat', 'near'], text('at') ?? 'seat'),
      wordOf(['decimal', 'thousands'], text('commas')),
    ];
    if (path !== null && of === null)
      return { wrong: `expected left, right or both after --of, got ${text('of') ?? 'nothing'}` };
    if (path === null && (['of', 'at', 'commas'] as const).some((one) => text(one) !== null))
      return { wrong: 'expected --heard with --of, --at or --commas, got nothing' };
    if (at === null) return { wrong: `expected seat or near after --at, got ${text('at')}` };
    if (text('commas') !== null && commas === null)
      return { wrong: `expected decimal or thousands after --commas, got ${text('commas')}` };
    return { file, layout: text('layout'), heard: path === null || of === null ? null : { path, of, at, commas } };
  });

/** The response in a file, as a project would keep it; or why there is none. */
function responseIn({ path, of, at, commas }: NonNullable<Request['heard']>): Result<HeardOne> {
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(path);
  } catch {
    return failure({ pointer: '', message: `expected a measured response in ${path}, got a file that cannot be read` });
  }
  const reading = toTheEnd(readKept(bytes, commas));
  switch (reading.kind) {
    case 'ask':
      return failure({
        pointer: '',
        message: `${path}: line ${reading.line}: expected --commas to tell whether ${reading.field} is ${reading.decimal} (decimal) or ${reading.thousands} (thousands), got nothing`,
      });
    case 'refused':
      return failure({ pointer: '', message: `${path}: ${reading.message}` });
    case 'kept': {
      const { from, levels, step } = reading.kept;
      return success({
        name: basename(path, extname(path)),
        of,
        at,
        smoothed: 'none',
        moved: { x: 0, y: 0, z: 0 },
        curve: { from, levels, step },
      });
    }
  }
}

function answer({ file, layout: name, heard }: Request): number {
  const project = readProject(file);
  if (!project.ok) return refuse(BAD_INPUT, project.faults);
  const found = chosenLayout(project.value, name);
  if (!found.ok) return refuse(BAD_INPUT, found.faults);
  const more = heard ? responseIn(heard) : null;
  if (more && !more.ok) return refuse(BAD_INPUT, more.faults);
  const built: Built = {
    ...(found.value.built ?? NOTHING_READ),
    heard: [...(found.value.built?.heard ?? []), ...(more ? [more.value] : [])],
  };
  const layout: Layout = { ...found.value, built };
  if (built.heard.length === 0 && !sideNames.some((side) => built.sides[side].readings.some(isTaken))) {
    return badInput(
      `expected readings of the finished stands or measured responses under built of the layout "${layout.name}", got none`,
    );
  }
  const left = proveSide(project.value, layout, 'left');
  if (!left.ok) return refuse(NO_ANSWER, left.faults);
  const right = proveSide(project.value, layout, 'right');
  if (!right.ok) return refuse(NO_ANSWER, right.faults);
  // Readings say where they lie without a stand that can be made: only what was heard needs the whole plan.
  const planned = built.heard.length > 0 ? solve(project.value, layout) : null;
  if (planned && !planned.ok) return refuse(NO_ANSWER, planned.faults);
  const answered = planned ? toTheEnd(hearSteps(planned.value)) : NOTHING_HEARD;
  process.stdout.write(proveFile(layout.name, { left: left.value, right: right.value }, answered));
  return 0;
}

await runCommand(USAGE, readArguments, answer);
