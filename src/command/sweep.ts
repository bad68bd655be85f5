import { sweepCsv, sweepFile } from '$lib/files/sweepFile.ts';
import { got } from '$lib/project/got.ts';
import { measures, measuresNamed } from '$lib/study/measures.ts';
import { sweep } from '$lib/study/sweep.ts';
import { BAD_INPUT, chosenLayout, readWords, refuse, runCommand, type Asked } from './command.ts';
import { readProject } from './readProject.ts';
import { sweepText } from './sweepText.ts';

interface Request {
  readonly file: string;
  readonly layout: string | null;
  readonly over: string;
  readonly from: number;
  readonly to: number;
  readonly steps: number;
  readonly of: readonly string[];
  readonly mirror: boolean;
  readonly as: 'json' | 'csv' | 'text';
}

const USUAL_STEPS = 41;

const USAGE = `usage: npm run --silent sweep -- FILE [--layout NAME] --over POINTER --from A --to B [--steps N] --of MEASURE,...
                             [--mirror] [--csv | --text]

Prints what measures of a layout do while one number goes from A to B, in N values (${USUAL_STEPS} unless said otherwise), both
ends among them. POINTER names the number within the layout: /listener/setback; or one that all layouts share:
/speaker/depth, /stock/0/thickness, /shop/saw/depth. With --mirror the other loudspeaker goes to the mirror image of a mark. Where there is no answer, where a measure bends or jumps, and the limits of the checks
are told beside. JSON, or --csv, a table with one row a value, or --text for reading. The measures:
${measures.map(({ name, says }) => `  ${name.padEnd(17)} ${says}`).join('\n')}
Exit status: 0 done, 2 bad input. A value without an answer is a row with the reason.
`;

function readArguments(words: readonly string[]): Asked<Request> {
  const options = { texts: ['layout', 'over', 'from', 'to', 'steps', 'of'], flags: ['mirror', 'csv', 'text'] } as const;
  return readWords(words, options, ({ file, text, flag }) => {
    const [over, of, from, to] = [text('over'), text('of'), text('from'), text('to')];
    if (over === null) return { wrong: 'expected --over and the pointer of a number, got nothing' };
    if (of === null) return { wrong: 'expected --of and measures, got nothing' };
    if (from === null || to === null) return { wrong: 'expected --from and --to, the ends of the range, got nothing' };
    if (flag('csv') && flag('text')) return { wrong: 'expected one of --csv and --text, got both' };
    const numbers = { from, to, steps: text('steps') ?? String(USUAL_STEPS) };
    for (const [option, word] of Object.entries(numbers)) {
      if (!Number.isFinite(numberOf(word))) return { wrong: `expected a number after --${option}, got ${got(word)}` };
    }
    return {
      file,
      layout: text('layout'),
      over,
      from: numberOf(from),
      to: numberOf(to),
      steps: numberOf(numbers.steps),
      of: of.split(','),
      mirror: flag('mirror'),
      as: flag('csv') ? 'csv' : flag('text') ? 'text' : 'json',
    };
  });
}

/** A word as a number, NaN for one that is none. */
const numberOf = (word: string): number => (word.trim() === '' ? NaN : Number(word));

function answer({ file, layout: name, of, as, ...request }: Request): number {
  const project = readProject(file);
  if (!project.ok) return refuse(BAD_INPUT, project.faults);
  const layout = chosenLayout(project.value, name);
  if (!layout.ok) return refuse(BAD_INPUT, layout.faults);
  const by = measuresNamed(of, 'of');
  if (!by.ok) return refuse(BAD_INPUT, by.faults);
  const swept = sweep(project.value, layout.value, { ...request, of: by.value });
  if (!swept.ok) return refuse(BAD_INPUT, swept.faults);
  const write = { json: sweepFile, csv: sweepCsv, text: sweepText }[as];
  process.stdout.write(write(swept.value, by.value));
  return 0;
}

await runCommand(USAGE, readArguments, answer);
