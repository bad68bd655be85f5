import { expect, test } from 'vitest';
import { Nesting, type Line } from '$lib/state/nesting.svelte.ts';
import { readReply } from '$lib/state/nesting/messages.ts';
import { OpenProject } from '$lib/state/openProject.svelte.ts';
import { SheetBench } from '$lib/views/sheets/bench.svelte.ts';
import { nested } from '$lib/workshop/nest.ts';
import { project } from '../../projects.ts';

const of = project({ '/layouts/0/stand/width': 30, '/stock/0/sheet': { width: 600, height: 600 } });
/** Above all the rows of that. */
const free = { x: 300, y: 450 };

/** A page that has its sheets: the nester has answered, and says no more until it is told to. */
function withSheets() {
  const open = new OpenProject(of);
  const line: Line = {
    postMessage: () => undefined,
    terminate: () => undefined,
    onmessage: null,
    onerror: null,
    read: readReply,
  };
  const nesting = new Nesting(() => line);
  const { shown } = open;
  if (!shown) throw new Error('the demo has an answer');
  nesting.ask(shown);
  const answer = nested(shown.parts, of.stock, of.cutter, { budget: 0 });
  if (!answer.ok) throw new Error('the demo has sheets');
  line.onmessage?.({ data: { kind: 'better', ticket: 1, nested: answer.value } } as MessageEvent<unknown>);
  const bench = new SheetBench(open, nesting);
  const last = { sheet: bench.sheets.length - 1, placement: 0 };
  return { open, bench, last, at: () => bench.sheets[last.sheet]?.placements[last.placement] };
}

test('holds a part where it lies, and lets it go', () => {
  const { open, bench, last, at } = withSheets();
  expect([bench.ready, bench.settled, bench.locked]).toEqual([true, true, []]);
  bench.toggle(last);
  const { part, x, y, turn } = at() ?? {};
  expect(bench.locked).toEqual([expect.objectContaining({ part, x, y, turn })]);
  expect([bench.message, bench.settled]).toEqual([`${part} is held where it lies.`, false]);
  expect(open.faults).toEqual([]);
  bench.toggle(last);
  expect([bench.locked, bench.message]).toEqual([[], `${part} is let go.`]);
});

test('a part put down on another goes back; in free room it stays and is held there', () => {
  const { bench, last, at } = withSheets();
  const before = at();
  const neighbour = bench.sheets[last.sheet]?.placements[1];
  if (!before || !neighbour) throw new Error('expected two parts on the last sheet');
  bench.take(last);
  bench.carry(last.sheet, neighbour.x, neighbour.y);
  expect(bench.carried?.refusal).not.toBeNull();
  expect(bench.drop()).toBe(false);
  expect([at(), bench.locked]).toEqual([before, []]);
  expect(bench.message).toMatch(/goes back: /);

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

test('another start and held parts are kept in the project, and forgotten one by one or all', () => {
  const { open, bench } = withSheets();
  const [sheet] = bench.sheets;
  if (!sheet) throw new Error('expected a sheet');
  bench.holdAll(sheet);
  expect(bench.locked).toHaveLength(sheet.placements.length);
  const [, second] = bench.locked;
  bench.forget([0]);
  expect(bench.locked[0]).toEqual(second);
  bench.reseed();
  expect(open.shown?.layout.arrangement).toEqual({ seed: 2, locked: bench.locked });
  bench.letAllGo();
  expect([bench.locked, bench.seed]).toEqual([[], 2]);
});
