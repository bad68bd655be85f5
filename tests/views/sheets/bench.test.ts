import { expect, test } from 'vitest';
import { OpenProject } from '$lib/document/openProject.svelte.ts';
import { SheetBench } from '$lib/views/sheets/bench.svelte.ts';
import { cutterOf } from '$lib/workshop/beam.ts';
import { nested } from '$lib/workshop/nesting/nest.ts';
import { SheetSearch } from '$lib/workers/sheetSearch.svelte.ts';
import { project } from '../../projects.ts';
import { fakeWorkers } from '../../workers/fakeWorker.ts';
import { plainText } from '$lib/project/sentence.ts';

const of = project({ '/layouts/0/stand/width': 30, '/stock/0/sheet': { width: 600, height: 600 } });
/** Above all the rows of that. */
const free = { x: 300, y: 450 };

/** A page that has its sheets: the nester has answered, and says no more until it is told to. */
function withSheets() {
  const open = new OpenProject(of);
  const { start, reply, terminate } = fakeWorkers();
  const search = new SheetSearch(start);
  const { shown } = open;
  if (!shown) throw new Error('the demo has an answer');
  search.ask(shown);
  const answer = nested(shown.parts, of.stock, of.cutter, { budget: 0 });
  if (!answer.ok) throw new Error('the demo has sheets');
  reply({ kind: 'answer', ticket: 1, value: answer, final: false });
  const bench = new SheetBench(open, search);
  const last = { sheet: bench.sheets.length - 1, placement: 0 };
  return { open, search, bench, terminate, last, at: () => bench.sheets[last.sheet]?.placements[last.placement] };
}

test('locks a part where it lies, and unlocks it', () => {
  const { open, bench, last, at } = withSheets();
  expect([bench.ready, bench.settled, bench.locked]).toEqual([true, true, []]);
  bench.toggle(last);
  const { part, x, y, turn } = at() ?? {};
  expect(bench.locked).toEqual([expect.objectContaining({ part, x, y, turn })]);
  expect([bench.message, bench.settled]).toEqual([`${part} is locked where it lies.`, false]);
  expect(open.faults).toEqual([]);
  bench.toggle(last);
  expect([bench.locked, bench.message]).toEqual([[], `${part} is unlocked.`]);
});

test('a part put down on another goes back; in free room it stays and is locked there', () => {
  const { bench, last, at } = withSheets();
  const before = at();
  const neighbour = bench.sheets[last.sheet]?.placements[1];
  if (!before || !neighbour) throw new Error('expected two parts on the last sheet');
  bench.take(last);
  bench.carry(last.sheet, neighbour.x, neighbour.y);
  expect(bench.carried?.refusal).not.toBeNull();
  expect(bench.drop()).toBe(false);
  expect([at(), bench.locked]).toEqual([before, []]);
  expect(plainText(bench.message)).toMatch(/goes back: /);

  bench.take(last);
  bench.carry(last.sheet, free.x, free.y);
  expect(bench.carried?.refusal).toBeNull();
  expect(bench.drop()).toBe(true);
  expect(bench.locked).toEqual([expect.objectContaining({ part: before.part, ...free })]);
  const { chosen } = bench;
  expect(chosen && bench.sheets[chosen.sheet]?.placements[chosen.placement]).toMatchObject(free);
});

test('a part that is put back was never moved', () => {
  const { bench, last, at } = withSheets();
  const before = at();
  bench.take(last);
  bench.carry(last.sheet, free.x, free.y);
  bench.putBack();
  expect([bench.drop(), at(), bench.locked, bench.carried]).toEqual([false, before, [], null]);
});

test('another start and locked parts are kept in the project, and forgotten one by one or all', () => {
  const { open, bench } = withSheets();
  const [sheet] = bench.sheets;
  if (!sheet) throw new Error('expected a sheet');
  bench.lockSheet(sheet);
  expect(bench.locked).toHaveLength(sheet.placements.length);
  const [, second] = bench.locked;
  bench.forget([0]);
  expect(bench.locked[0]).toEqual(second);
  bench.reseed();
  expect(open.shown?.layout.arrangement).toEqual({ seed: 2, locked: bench.locked });
  bench.unlockAll();
  expect([bench.locked, bench.seed]).toEqual([[], 2]);
});

test('stopping keeps what is on show: each part is locked where it lies, and the project gives exactly these sheets', () => {
  const { open, search, bench, terminate } = withSheets();
  const { sheets } = bench;
  bench.keepAll();
  expect(terminate).toHaveBeenCalledTimes(1);
  expect([search.share, search.cancelled, bench.ready, bench.settled]).toEqual([null, false, true, false]);
  expect([open.faults, bench.sheets]).toEqual([[], sheets]);
  const { shown } = open;
  if (!shown) throw new Error('expected an answer');
  const { parts } = shown;
  expect(bench.locked).toHaveLength(parts.reduce((sum, { quantity }) => sum + quantity, 0));
  const again = nested(parts, shown.project.stock, cutterOf(shown.project), shown.layout.arrangement ?? {});
  expect(again.ok && again.value.sheets).toEqual(sheets);
});
