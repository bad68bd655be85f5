import { parseArgs } from 'node:util';

/** What the command was asked to do. */
export interface Request {
  readonly file: string;
  /** Name of the layout; the first one when not given. */
  readonly layout: string | null;
  /** Folder for the cut files; none are written when not given. */
  readonly out: string | null;
}

export const USAGE = `usage: npm run --silent plan -- FILE [--layout NAME] [--out DIR]

Prints the plan of a project file as JSON. With --out, writes the plan and the cut files below DIR.
Exit status: 0 done, 2 bad input, 3 sound input whose geometry has no answer.
`;

/** The request, `help`, or what is wrong with the words. */
export function readArguments(words: readonly string[]): Request | 'help' | { readonly wrong: string } {
  try {
    const { values, positionals } = parseArgs({
      args: [...words],
      allowPositionals: true,
      options: { layout: { type: 'string' }, out: { type: 'string' }, help: { type: 'boolean', short: 'h' } },
    });
    if (values.help) return 'help';
    const [file, ...more] = positionals;
    if (file === undefined) return { wrong: 'expected the path of a project file, got nothing' };
    if (more.length > 0) return { wrong: `expected one project file, got ${positionals.length}` };
    if (values.out === '') return { wrong: 'expected a folder after --out, got nothing' };
    return { file, layout: values.layout ?? null, out: values.out ?? null };
  } catch (error) {
    return { wrong: error instanceof Error ? error.message : String(error) };
  }
}
