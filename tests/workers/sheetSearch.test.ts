import { expect, test } from 'vitest';
import type { Plan } from '$lib/solution/document.ts';
import type { Nested } from '$lib/workshop/nesting/nest.ts';
import { SheetSearch } from '$lib/workers/sheetSearch.svelte.ts';
import { fakeWorkers } from './fakeWorker.ts';
import { shownOf } from './subjects.ts';

const demo = shownOf();
const wider = shownOf({ '/layouts/0/stand/width': 120 });
const nested: Nested = { sheets: [], stocks: [], released: [], short: [] };

/** A search, and its worker's answers. */
function searching() {
  const workers = fakeWorkers();
  const search = new SheetSearch(workers.start);
  const ticket = () => workers.asked.at(-1)?.ticket ?? 0;
  const better = (value: Nested = nested): void =>
    workers.reply({ kind: 'answer', ticket: ticket(), value: { ok: true, value }, final: false });
  const end = (value: Nested = nested): void =>
    workers.reply({ kind: 'answer', ticket: ticket(), value: { ok: true, value }, final: true });
  return { ...workers, search, better, end, ticket };
}

test('asks once for what stays the same, and knows what its answer belongs to', () => {
  const { search, asked, better, end } = searching();
  search.ask(demo);
  search.ask(shownOf({ '/title': 'Another title' }));
  expect([asked.length, search.share, search.found]).toEqual([1, 0, null]);
  better();
  expect(search.found).toEqual({ of: demo, nested });
  end();
  expect([search.share, search.isFinished(demo)]).toEqual([null, true]);

  const locked = shownOf({ '/layouts/0/arrangement': { seed: 2 } });
  expect([search.isOf(locked), search.isLike(locked)]).toEqual([false, true]);
  expect([search.isOf(wider), search.isLike(wider)]).toEqual([false, false]);
});

test('gives sheets to make files from only of what is shown, and only when the search has come to its end', () => {
  const { search, better, end } = searching();
  const given = (of: Plan | null) => search.sheetsOf(of);
  search.ask(demo);
  expect(given(demo)).toBeNull();
  better();
  expect([given(demo), search.isFinished(demo)]).toEqual([null, false]);
  end();
  expect([given(demo), given(wider), given(null)]).toEqual([nested.sheets, null, null]);
  search.ask(wider);
  expect(given(wider)).toBeNull();
  end();
  expect([given(wider), given(demo)]).toEqual([nested.sheets, null]);
});

test('gives none where there are fewer sheets than it takes, or a locked part lies elsewhere, and says why', () => {
  const { search, better, end } = searching();
  search.ask(demo);
  const short = [{ pointer: '/stock/0/sheets', message: 'too few' }];
  better({ ...nested, short });
  expect(search.faultsOf(demo)).toEqual([]);
  end({ ...nested, short, released: [{ index: 2, reason: 'overlap', message: 'no room' }] });
  expect([search.sheetsOf(demo), search.found?.nested.short]).toEqual([null, short]);
  expect(search.faultsOf(demo)).toEqual([...short, { pointer: '/layouts/0/arrangement/locked/2', message: 'no room' }]);
  expect(search.faultsOf(wider)).toEqual([]);
});

test('says why nothing can be laid out', () => {
  const { search, reply, ticket } = searching();
  const faults = [{ pointer: '/stock/0/sheet', message: 'too small' }];
  search.ask(demo);
  reply({ kind: 'answer', ticket: ticket(), value: { ok: false, faults }, final: true });
  expect([search.found, search.share, search.faultsOf(demo), search.isOf(demo)]).toEqual([null, null, faults, true]);
});

test('is cancelled whatever it is at, and goes on with what is asked next', () => {
  const { search, asked, terminate } = searching();
  search.ask(demo);
  search.cancel();
  expect([search.share, search.cancelled, terminate.mock.calls.length]).toEqual([null, true, 1]);
  search.ask(demo);
  expect([search.share, search.cancelled, asked.length]).toEqual([0, false, 2]);
});

test('fails, and is tried again', () => {
  const { search, asked, fail } = searching();
  search.ask(demo);
  fail(new Event('error'));
  expect([search.failure, search.share]).toEqual([{ kind: 'missing' }, null]);
  search.retry();
  expect([search.failure, search.share, asked.length]).toEqual([null, 0, 2]);
});

test('ends once nobody looks, unless the next page does', async () => {
  const { search, terminate, asked } = searching();
  const leave = search.use();
  search.ask(demo);
  leave();
  const leaveNext = search.use();
  await new Promise((resolve) => setTimeout(resolve));
  expect(terminate).not.toHaveBeenCalled();
  leaveNext();
  await new Promise((resolve) => setTimeout(resolve));
  expect([terminate.mock.calls.length, search.share]).toEqual([1, null]);
  // What was cut short is taken up again.
  search.ask(demo);
  expect(asked).toHaveLength(2);
});
