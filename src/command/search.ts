import { searchCsv, searchFile } from '$lib/files/searchFile.ts';
import { failure, type Fault, type Result } from '$lib/project/fault.ts';
import { got } from '$lib/project/got.ts';
import { parseJson } from '$lib/project/parse.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { readAsk, type Ask } from '$lib/study/ask.ts';
import { measures } from '$lib/study/measures.ts';
import { askOf, questions } from '$lib/study/questions.ts';
import { search } from '$lib/study/search.ts';
import { BAD_INPUT, chosenLayout, readWords, refuse, runCommand, type Asked } from './command.ts';
import { readJsonFile, readProject } from './readProject.ts';

interface Request {
  readonly file: string;
  readonly layout: string | null;
  /** The path of an ask, or the name of a question. */
  readonly ask: { readonly path: string } | { readonly question: string };
  readonly seed: number;
  readonly csv: boolean;
}

const USAGE = `usage: npm run --silent search -- FILE [--layout NAME] (--ask ASK.json | --question NAME) [--seed N] [--csv]

Tries every combination of some numbers of a layout and prints the best compromises between several aims. ASK.json:
  { "free":  [ { "pointer": "/placement/right/x", "from": 300, "to": 600, "step": 5, "mirror": true } ],
    "rules": [ { "measure": "clearance", "least": 20 }, { "measure": "tilt", "most": 12 } ],
    "aims":  [ "triangle-error", "move" ] }
free: numbers by their pointers within the layout; mirror sets the other loudspeaker to the mirror image. Rules of toe and tilt by
{ "pointer": "/aim/toe", "values": [ { "rule": "to-head" }, { "rule": "behind-head", "distance": 300 } ] }. rules: what has to
hold. aims: what is wanted, all at once. Where nothing satisfies the rules, relax says which one alone, and by how much,
would let something pass. --question asks what needs no ask: ${questions.map(({ name }) => name).join(', ')}. JSON, or --csv, a table with one row a compromise. The measures:
${measures.map(({ name, says }) => `  ${name.padEnd(17)} ${says}`).join('\n')}
Exit status: 0 done, 2 bad input.
`;

function readArguments(words: readonly string[]): Asked<Request> {
  return readWords(words, { texts: ['layout', 'ask', 'question', 'seed'], flags: ['csv'] }, ({ file, text, flag }) => {
    const [path, question] = [text('ask'), text('question')];
    if (path !== null && question !== null) return { wrong: 'expected --ask or --question, got both' };
    if (path === null && question === null) return { wrong: 'expected --ask and the path of a file, or --question and a name, got neither' }; // prettier-ignore
    const ask = path === null ? { question: question ?? '' } : { path };
    const seed = text('seed') ?? '1';
    if (!/^\d{1,9}$/.test(seed)) return { wrong: `expected a whole number of at most nine digits after --seed, got ${got(seed)}` }; // prettier-ignore
    return { file, layout: text('layout'), ask, seed: Number(seed), csv: flag('csv') };
  });
}

const inAsk = (faults: readonly Fault[]): Fault[] =>
  faults.map(({ pointer, message }) => ({ pointer: `ask${pointer}`, message }));

function askFrom(path: string, layout: Layout): Result<Ask> {
  const text = readJsonFile(path, 'an ask');
  const json = text.ok ? parseJson(text.value) : text;
  const ask = json.ok ? readAsk(json.value, layout) : json;
  return ask.ok ? ask : { ok: false, faults: inAsk(ask.faults) };
}

function questionNamed(name: string, project: Project, layout: Layout): Result<Ask> {
  const question = questions.find((one) => one.name === name);
  if (question) return readAsk(askOf(question, project, layout), layout);
  const known = questions.map((one) => one.name).join(', ');
  return failure({
    pointer: '',
    message: `expected the name of a question (${known}) after --question, got ${got(name)}`,
  });
}

function answer({ file, layout: name, ask, seed, csv }: Request): number {
  const project = readProject(file);
  if (!project.ok) return refuse(BAD_INPUT, project.faults);
  const layout = chosenLayout(project.value, name);
  if (!layout.ok) return refuse(BAD_INPUT, layout.faults);
  const asked =
    'path' in ask ? askFrom(ask.path, layout.value) : questionNamed(ask.question, project.value, layout.value);
  if (!asked.ok) return refuse(BAD_INPUT, asked.faults);
  const found = search(project.value, layout.value, asked.value, seed);
  process.stdout.write(csv ? searchCsv(found, asked.value) : searchFile(found, asked.value));
  return 0;
}

await runCommand(USAGE, readArguments, answer);
