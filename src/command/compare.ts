import { compareCsv, compareFile } from '$lib/files/compareFile.ts';
import type { Fault, Result } from '$lib/project/fault.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { compare } from '$lib/study/compare.ts';
import { comparedBy, measures, measuresNamed } from '$lib/study/measures.ts';
import { BAD_INPUT, chosenLayout, readWords, refuse, runCommand, type Asked } from './command.ts';
import { compareText } from './compareText.ts';
import { readProject } from './readProject.ts';

interface Request {
  readonly file: string;
  /** Names of layouts; all of them when not given. */
  readonly layouts: readonly string[] | null;
  /** Names of measures; all that say something of a layout by itself when not given. */
  readonly of: readonly string[] | null;
  readonly as: 'json' | 'csv' | 'text';
}

const USAGE = `usage: npm run --silent compare -- FILE [--layouts A,B,...] [--of MEASURE,...] [--csv | --text]

Prints the layouts of a project file side by side as JSON: what differs in the input, every measure and finding, the best
and the worst by each measure, and what the stands of each miss by in each other one. --csv prints the measures as a
table, one row a layout; --text prints all of it for reading. The measures:
${measures.map(({ name, says }) => `  ${name.padEnd(17)} ${says}`).join('\n')}
Exit status: 0 done, 2 bad input. A layout without an answer is in the comparison with the reason.
`;

function readArguments(words: readonly string[]): Asked<Request> {
  return readWords(words, { texts: ['layouts', 'of'], flags: ['csv', 'text'] }, ({ file, text, flag }) =>
    flag('csv') && flag('text')
      ? { wrong: 'expected one of --csv and --text, got both' }
      : {
          file,
          layouts: text('layouts')?.split(',') ?? null,
          of: text('of')?.split(',') ?? null,
          as: flag('csv') ? 'csv' : flag('text') ? 'text' : 'json',
        },
  );
}

function chosenLayouts(project: Project, names: readonly string[] | null): Result<readonly Layout[]> {
  if (names === null) return { ok: true, value: project.layouts };
  const chosen: Layout[] = [];
  const faults: Fault[] = [];
  for (const name of new Set(names)) {
    const layout = chosenLayout(project, name);
    if (layout.ok) chosen.push(layout.value);
    else faults.push(...layout.faults);
  }
  return faults.length > 0 ? { ok: false, faults } : { ok: true, value: chosen };
}

function answer({ file, layouts: names, of, as }: Request): number {
  const project = readProject(file);
  if (!project.ok) return refuse(BAD_INPUT, project.faults);
  const layouts = chosenLayouts(project.value, names);
  if (!layouts.ok) return refuse(BAD_INPUT, layouts.faults);
  const by = measuresNamed(of ?? comparedBy.map(({ name }) => name), 'of');
  if (!by.ok) return refuse(BAD_INPUT, by.faults);
  const comparison = compare(project.value, layouts.value, by.value);
  const write = { json: compareFile, csv: compareCsv, text: compareText }[as];
  process.stdout.write(write(comparison, by.value));
  return 0;
}

await runCommand(USAGE, readArguments, answer);
