import { placeFile } from '$lib/files/placeFile.ts';
import { failure, success, type Fault, type Result } from '$lib/project/fault.ts';
import { got } from '$lib/project/got.ts';
import { parseJson } from '$lib/project/parse.ts';
import type { Project } from '$lib/project/project.ts';
import { builtStands } from '$lib/proof/builtStands.ts';
import { placeExisting } from '$lib/study/placeExisting.ts';
import { readPlaceAsk } from '$lib/study/placing/readAsk.ts';
import { layoutNamed } from '$lib/study/placing/stands.ts';
import { BAD_INPUT, chosenLayout, readWords, refuse, runCommand, type Asked } from './command.ts';
import { readJsonFile, readProject } from './readProject.ts';

interface Request {
  readonly file: string;
  readonly layout: string | null;
  readonly ask: string;
}

const USAGE = `usage: npm run --silent place -- FILE [--layout NAME] --ask ASK.json

Says where stands that exist can be put in a layout so that both axes hit. ASK.json:
  { "stands": { "tilt": 13, "lift": 20 },
    "miss": 15,
    "clear": { "screen": 10, "wall": 40 },
    "marks": { "x": { "from": 250, "to": 600 }, "y": { "from": 100, "to": 450 } },
    "setback": { "from": 100, "to": 400 },
    "earHeight": { "from": 1100, "to": 1250 } }
stands: tilt in degrees, and lift in mm or front, the height of the slope under the cabinet's front edge; or the name of
another layout whose stands they are, as "layout"; or the name of one whose finished stands were read, as "built"; or such a pair of each as "left" and "right". Left out: miss, what the
safe zone allows; clear, nothing; marks (as seen of the right loudspeaker, the left one mirrored), anywhere on the desk, and
false lets them stay; setback and earHeight, they stay. One of them is moved at a time. The answer holds the ways, what moves
least first; the regions of marks for each side as outlines with holes; setbacks and ear heights from ... to; and for each side
the riser or shim that would do where it stands. Toe follows the layout's rule.
Exit status: 0 done (also where nothing will do: no ways), 2 bad input.
`;

const readArguments = (words: readonly string[]): Asked<Request> =>
  readWords(words, { texts: ['layout', 'ask'], flags: [] }, ({ file, text }) => {
    const ask = text('ask');
    return ask === null
      ? { wrong: 'expected --ask and the path of a file, got nothing' }
      : { file, layout: text('layout'), ask };
  });

const inAsk = (faults: readonly Fault[]): Fault[] =>
  faults.map(({ pointer, message }) => ({ pointer: `ask${pointer}`, message }));

/** The ask with stands as built by how they stand, and any other ask as it is. */
function withBuilt(ask: unknown, project: Project): Result<unknown> {
  if (!isObject(ask) || !isObject(ask.stands) || ask.stands.built === undefined) return success(ask);
  const at = '/stands/built';
  const other = Object.keys(ask.stands).find((key) => key !== 'built');
  if (other !== undefined) return failure({ pointer: at, message: `expected built alone, got ${other} beside it` });
  const { built: name } = ask.stands;
  if (typeof name !== 'string')
    return failure({ pointer: at, message: `expected the name of a layout, got ${got(name)}` });
  const layout = layoutNamed(project, name, at);
  if (!layout.ok) return layout;
  const built = builtStands(project, layout.value);
  const message = 'expected a layout whose readings say how its stands stand, got one without';
  return built ? success({ ...ask, stands: built }) : failure({ pointer: at, message });
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function answer({ file, layout: name, ask: path }: Request): number {
  const project = readProject(file);
  if (!project.ok) return refuse(BAD_INPUT, project.faults);
  const layout = chosenLayout(project.value, name);
  if (!layout.ok) return refuse(BAD_INPUT, layout.faults);
  const text = readJsonFile(path, 'an ask');
  if (!text.ok) return refuse(BAD_INPUT, inAsk(text.faults));
  const json = parseJson(text.value);
  if (!json.ok) return refuse(BAD_INPUT, inAsk(json.faults));
  const stood = withBuilt(json.value, project.value);
  if (!stood.ok) return refuse(BAD_INPUT, inAsk(stood.faults));
  const ask = readPlaceAsk(stood.value, project.value, layout.value);
  if (!ask.ok) return refuse(BAD_INPUT, inAsk(ask.faults));
  process.stdout.write(placeFile(layout.value.name, ask.value, placeExisting(project.value, layout.value, ask.value)));
  return 0;
}

await runCommand(USAGE, readArguments, answer);
