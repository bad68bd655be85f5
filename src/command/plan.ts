import { allFiles } from '$lib/files/allFiles.ts';
import { cutFiles } from '$lib/files/bundle.ts';
import { planFile } from '$lib/files/planFile.ts';
import { solve } from '$lib/solution/solve.ts';
import { readArguments, USAGE, type Request } from './arguments.ts';
import { BAD_INPUT, badInput, chosenLayout, NO_ANSWER, refuse, runCommand } from './command.ts';
import { readProject } from './readProject.ts';
import { strangers, tryFolder, writeWhole } from './writeWhole.ts';

async function answer({ file, layout: name, out }: Request): Promise<number> {
  const project = readProject(file);
  if (!project.ok) return refuse(BAD_INPUT, project.faults);
  const chosen = chosenLayout(project.value, name);
  if (!chosen.ok) return refuse(BAD_INPUT, chosen.faults);
  const layout = chosen.value;
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

await runCommand(USAGE, readArguments, answer);
