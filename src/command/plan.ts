import { allFiles } from '$lib/files/allFiles.ts';
import { cutFiles } from '$lib/files/bundle.ts';
import { faultLine, type Fault } from '$lib/project/fault.ts';
import type { Layout, Project } from '$lib/project/project.ts';
import { planFile } from '$lib/files/planFile.ts';
import { solve } from '$lib/solution/solve.ts';
import { readArguments, USAGE, type Request } from './arguments.ts';
import { readProject } from './readProject.ts';
import { strangers, tryFolder, writeWhole } from './writeWhole.ts';

const BAD_INPUT = 2;
const NO_ANSWER = 3;

/** One line a fault on standard error; the exit status. */
function refuse(status: number, faults: readonly Fault[]): number {
  for (const fault of faults) process.stderr.write(`${faultLine(fault)}\n`);
  return status;
}

const badInput = (message: string): number => refuse(BAD_INPUT, [{ pointer: '', message }]);

function chosenLayout(project: Project, name: string | null): Layout | undefined {
  return name === null ? project.layouts[0] : project.layouts.find((layout) => layout.name === name);
}

async function answer({ file, layout: name, out }: Request): Promise<number> {
  const project = readProject(file);
  if (!project.ok) return refuse(BAD_INPUT, project.faults);
  const layout = chosenLayout(project.value, name);
  if (!layout) {
    const known = project.value.layouts.map((one) => JSON.stringify(one.name)).join(', ');
    return badInput(`expected the name of a layout (${known}), got ${JSON.stringify(name)}`);
  }
  const unwritable = out === null ? null : troubleWith(out, () => tryFolder(out));
  if (unwritable !== null) return unwritable;
  const solved = solve(project.value, layout);
  if (!solved.ok) return refuse(solved.kind === 'unsound' ? BAD_INPUT : NO_ANSWER, solved.faults);
  if (out === null) {
    const files = await cutFiles(solved.value);
    if (!files.ok) return refuse(NO_ANSWER, files.faults);
    process.stdout.write(planFile(solved.value, files.value.sheets));
    return 0;
  }
  const made = await allFiles(solved.value);
  if (!made.ok) return refuse(NO_ANSWER, made.faults);
  const { document, files } = made.value;
  const unwritten = troubleWith(out, () => writeWhole(out, files));
  if (unwritten !== null) return unwritten;
  for (const path of strangers(out, files)) {
    process.stderr.write(`note: ${path} is from an earlier run and does not belong to this plan\n`);
  }
  process.stdout.write(document);
  return 0;
}

/** The exit status when a folder cannot be written to; null when it can. */
function troubleWith(folder: string, write: () => void): number | null {
  try {
    write();
    return null;
  } catch (error) {
    return badInput(`expected a folder that can be written to, got ${JSON.stringify(folder)}: ${reason(error)}`);
  }
}

const reason = (error: unknown): string => (error instanceof Error ? error.message : String(error));

async function main(words: readonly string[]): Promise<number> {
  const request = readArguments(words);
  if (request === 'help') {
    process.stdout.write(USAGE);
    return 0;
  }
  if ('wrong' in request) {
    const status = badInput(request.wrong);
    process.stderr.write(USAGE);
    return status;
  }
  return answer(request);
}

// The status is set, not forced: a forced exit would cut off what is still on its way to a pipe.
process.exitCode = await main(process.argv.slice(2));
