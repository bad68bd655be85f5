import { readWords, type Asked } from './command.ts';

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
export function readArguments(words: readonly string[]): Asked<Request> {
  return readWords(words, { texts: ['layout', 'out'], flags: [] }, ({ file, text }) =>
    text('out') === ''
      ? { wrong: 'expected a folder after --out, got nothing' }
      : { file, layout: text('layout'), out: text('out') },
  );
}
