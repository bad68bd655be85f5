import { parseArgs, type ParseArgsConfig } from 'node:util';
import { failure, faultLine, success, type Fault, type Result } from '$lib/project/fault.ts';
import type { Layout, Project } from '$lib/project/project.ts';

/** What all commands have in common: words to a request, faults to standard error, an answer to an exit status. */

export const BAD_INPUT = 2;
export const NO_ANSWER = 3;

/** What was asked for, or why that is not known. */
export type Asked<Request> = Request | 'help' | { readonly wrong: string };

/** The words of a command, taken apart. */
export interface Words<Text extends string, Flag extends string> {
  readonly file: string;
  /** What was given after an option; null for one that was not. */
  readonly text: (option: Text) => string | null;
  readonly flag: (option: Flag) => boolean;
}

/**
 * The request in a command's words: one project file and options.
 *
 * @param options Those that take a word, and those that do not.
 * @param make The request of them, or what is wrong with them.
 */
export function readWords<const Text extends string, const Flag extends string, Request extends object>(
  words: readonly string[],
  options: { readonly texts: readonly Text[]; readonly flags: readonly Flag[] },
  make: (words: Words<Text, Flag>) => Asked<Request>,
): Asked<Request> {
  try {
    const config: ParseArgsConfig['options'] = { help: { type: 'boolean', short: 'h' } };
    for (const name of options.texts) config[name] = { type: 'string' };
    for (const name of options.flags) config[name] = { type: 'boolean' };
    const { values, positionals } = parseArgs({ args: withNegatives(words), allowPositionals: true, options: config });
    if (values.help) return 'help';
    const [file, ...more] = positionals;
    if (file === undefined) return { wrong: 'expected the path of a project file, got nothing' };
    if (more.length > 0) return { wrong: `expected one project file, got ${positionals.length}` };
    return make({
      file,
      text: (option) => {
        const value = values[option];
        return typeof value === 'string' ? value : null;
      },
      flag: (option) => values[option] === true,
    });
  } catch (error) {
    return { wrong: error instanceof Error ? error.message : String(error) };
  }
}

/** Negative numbers joined to the option before them, which would else be taken for options themselves. */
const withNegatives = (words: readonly string[]): string[] =>
  words.reduce<string[]>((done, word) => {
    const before = done.at(-1);
    if (/^-\d/.test(word) && before?.startsWith('--')) return [...done.slice(0, -1), `${before}=${word}`];
    return [...done, word];
  }, []);

/** One line a fault on standard error; the exit status. */
export function refuse(status: number, faults: readonly Fault[]): number {
  for (const fault of faults) process.stderr.write(`${faultLine(fault)}\n`);
  return status;
}

export const badInput = (message: string): number => refuse(BAD_INPUT, [{ pointer: '', message }]);

/** The layout of a name, the first one where none is named; or the fault that lists those there are. */
export function chosenLayout({ layouts }: Project, name: string | null): Result<Layout> {
  const found = name === null ? layouts[0] : layouts.find((layout) => layout.name === name);
  if (found) return success(found);
  const known = layouts.map((one) => JSON.stringify(one.name)).join(', ');
  return failure({
    pointer: '',
    message: `expected the name of a layout (${known}), got ${JSON.stringify(name)}`,
  });
}

/** Runs a command on the words that it was started with, and sets the exit status. */
export async function runCommand<Request extends object>(
  usage: string,
  read: (words: readonly string[]) => Asked<Request>,
  answer: (request: Request) => number | Promise<number>,
): Promise<void> {
  const request = read(process.argv.slice(2));
  // The status is set, not forced: a forced exit would cut off what is still on its way to a pipe.
  if (request === 'help') {
    process.stdout.write(usage);
  } else if ('wrong' in request) {
    process.exitCode = badInput(request.wrong);
    process.stderr.write(usage);
  } else {
    process.exitCode = await answer(request);
  }
}
