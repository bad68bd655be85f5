import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { checkProject } from '$lib/project/parse.ts';
import type { Project } from '$lib/project/project.ts';
import { root } from '../../tools/root.mjs';
import { seeded } from '../../bench/measure.ts';
import { randomProject } from '../randomProject.ts';
import { NOTCH, planFigures, soundFigures, type PlanFigures } from './planFigures.ts';
import { faultLine } from '$lib/project/fault.ts';

/**
 * Projects as files of version 1, each with the figures that its plan had when it was recorded. `WEDGEWRIGHT_RECORD=1` records
 * them anew: only where a plan was wrong before, or the files get other members. `WEDGEWRIGHT_RECORD=sound` keeps files and
 * plans and records the figures of their sound alone: only where a model of it was wrong.
 */
interface Recorded {
  readonly document: unknown;
  readonly figures: PlanFigures;
}
const FILE = `${root}tests/fixtures/plans/version1.json`;
const [PLANNED, REFUSED] = [200, 20];
/** The seed of the first project; each further one has the next. */
const SEED = 1;

/** More than the test looks at, and a shorter file. */
const twelveDigits = (_: string, value: unknown): unknown =>
  typeof value === 'number' ? Number(value.toPrecision(12)) : value;

/** The sound of every tenth only: it takes far longer than all the rest. */
function buildTotalsOf(of: Project, at: number): PlanFigures {
  return { ...planFigures(of), ...(at % 10 === 0 ? soundFigures(of) : {}) };
}

function record(): void {
  const kept: Recorded[] = [];
  const refused = (one: Recorded): boolean => 'refused' in one.figures;
  for (let seed = SEED; kept.length < PLANNED + REFUSED; seed++) {
    // To a thousandth, as people enter lengths, and a file half as long.
    const document: unknown = JSON.parse(JSON.stringify(randomProject(seeded(seed))), (_, value: unknown) =>
      typeof value === 'number' ? Math.round(value * 1000) / 1000 : value,
    );
    const checked = checkProject(document);
    if (!checked.ok) continue;
    const one = { document, figures: buildTotalsOf(checked.value, kept.length) };
    const room = refused(one) ? REFUSED : PLANNED;
    if (kept.filter((other) => refused(other) === refused(one)).length < room) kept.push(one);
  }
  write(kept);
}

/** The same files and plans, with the sound that they have now. */
function recordSound(): void {
  write(
    read().map(({ document, figures }, at) => {
      const checked = checkProject(document);
      if (!checked.ok || at % 10 !== 0) return { document, figures };
      const plan = Object.entries(figures).filter(([name]) => !name.startsWith(NOTCH));
      return { document, figures: { ...Object.fromEntries(plan), ...soundFigures(checked.value) } };
    }),
  );
}

const read = (): readonly Recorded[] => JSON.parse(readFileSync(FILE, 'utf8')) as readonly Recorded[];
const write = (all: readonly Recorded[]): void =>
  writeFileSync(FILE, `[\n${all.map((one) => JSON.stringify(one, twelveDigits)).join(',\n')}\n]\n`);

const recording = process.env['WEDGEWRIGHT_RECORD'];
if (recording === 'sound') recordSound();
else if (recording) record();
const recorded = read();

test('files of version 1 open, and have the plan that they had, number for number', () => {
  expect(recorded.filter(({ figures }) => !('refused' in figures))).toHaveLength(PLANNED);
  for (const [at, { document, figures }] of recorded.entries()) {
    const checked = checkProject(document);
    if (!checked.ok) throw new Error(`project ${at}: ${checked.faults.map(faultLine).join('; ')}`);
    const now = buildTotalsOf(checked.value, at);
    expect(Object.keys(now).sort(), `project ${at}`).toEqual(Object.keys(figures).sort());
    for (const [name, before] of Object.entries(figures)) {
      const told = `project ${at}: ${name}`;
      if (typeof before === 'string') expect(now[name], told).toBe(before);
      // What rounding in another order of sums may do.
      else expect(Math.abs(Number(now[name]) - before), told).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(before)));
    }
  }
});
