import { searchCsv, searchFile } from '$lib/files/searchFile.ts';
import type { Fault } from '$lib/project/fault.ts';
import { got } from '$lib/project/got.ts';
import { parseJson } from '$lib/project/parse.ts';
import { readAsk } from '$lib/study/ask.ts';
import { measures } from '$lib/study/measures.ts';
import { search } from '$lib/study/search.ts';
import { BAD_INPUT, chosenLayout, readWords, refuse, runCommand, type Asked } from './command.ts';
import { readJsonFile, readProject } from './readProject.ts';

interface Request {
  readonly file: string;
  readonly layout: string | null;
  readonly ask: string;
  readonly seed: number;
  readonly csv: boolean;
}

const USAGE = `usage: npm run --silent search -- FILE [--layout NAME] --ask ASK.json [--seed N] [--csv]

Tries every combination of some numbers of a layout and prints the best compromises between several aims. ASK.json:
  { "free":  [ { "pointer": "/placement/right/x", "from": 300, "to": 600, "step": 5, "mirror": true } ],
    "rules": [ { "measure": "clearance", "least": 20 }, { "measure": "tilt", "most": 12 } ],
    "aims":  [ "triangle-error", "move" ] }
free: numbers by their pointers within the layout; mirror sets the other loudspeaker to the mirror image. rules: what has to
hold. aims: what is wanted, all at once. Where nothing satisfies the rules, relax says which one alone, and by how much,
would let something pass. JSON, or --csv, a table with one row a compromise. The measures:
${measures.map(({ name, says }) => `  ${name.padEnd(17)} ${says}`).join('\n')}
Exit status: 0 done, 2 bad input.
`;

function readArguments(words: readonly string[]): Asked<Request> {
  return readWords(words, { texts: ['layout', 'ask', 'seed'], flags: ['csv'] }, ({ file, text, flag }) => {
    const ask = text('ask');
    if (ask === null) return { wrong: 'expected --ask and the path of a file, got nothing' };
    const seed = text('seed') ?? '1';
    if (!/^\d{1,9}$/.test(seed)) return { wrong: `expected a whole number of at most nine digits after --seed, got ${got(seed)}` }; // prettier-ignore
    return { file, layout: text('layout'), ask, seed: Number(seed), csv: flag('csv') };
  });
}

const inAsk = (faults: readonly Fault[]): Fault[] =>
  faults.map(({ pointer, message }) => ({ pointer: `ask${pointer}`, message }));

function answer({ file, layout: name, ask: path, seed, csv }: Request): number {
  const project = readProject(file);
  if (!project.ok) return refuse(BAD_INPUT, project.faults);
  const layout = chosenLayout(project.value, name);
  if (!layout.ok) return refuse(BAD_INPUT, layout.faults);
  const text = readJsonFile(path, 'an ask');
  if (!text.ok) return refuse(BAD_INPUT, inAsk(text.faults));
  const json = parseJson(text.value);
  if (!json.ok) return refuse(BAD_INPUT, inAsk(json.faults));
  const ask = readAsk(json.value, layout.value);
  if (!ask.ok) return refuse(BAD_INPUT, inAsk(ask.faults));
  const found = search(project.value, layout.value, ask.value, seed);
  process.stdout.write(csv ? searchCsv(found, ask.value) : searchFile(found, ask.value));
  return 0;
}

await runCommand(USAGE, readArguments, answer);
