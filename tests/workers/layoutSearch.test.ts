import { describe, expect, test } from 'vitest';
import { merged, type Part } from '$lib/study/found.ts';
import { readAsk, type Ask } from '$lib/study/ask.ts';
import { askOf, questions } from '$lib/study/questions.ts';
import { search } from '$lib/study/search.ts';
import { jobs } from '$lib/workers/jobs.ts';
import { LayoutSearch, type Searched } from '$lib/workers/layoutSearch.svelte.ts';
import type { Request } from '$lib/workers/messages.ts';
import { fakeWorkers } from './fakeWorker.ts';
import { shownOf } from './subjects.ts';

const demo = shownOf();

function searched(): Searched & { readonly ask: Ask } {
  const [question] = questions;
  if (!question) throw new Error('there are questions');
  const document = { ...askOf(question, demo.project, demo.layout), rules: [{ measure: 'tilt', most: 14 }] };
  const coarse = { ...document, free: document.free.map((span) => ({ ...span, step: 50 })) };
  const ask = readAsk(coarse, demo.layout);
  if (!ask.ok) throw new Error('it is an ask');
  return { of: demo, ask: ask.value, document: coarse, question: question.name };
}

/** What the worker of a request finds. */
function partOf({ job, input }: Request): Part {
  if (job !== 'search' || !('worker' in input)) throw new Error('it is a search');
  const steps = jobs.search(input);
  for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value;
}

/** Workers that answer to themselves, the one that was started last by `reply`. */
function searching(workers: number) {
  const made = fakeWorkers();
  const started: Worker[] = [];
  const start = (name: string): Worker => {
    const worker = made.start(name);
    started.push(worker);
    return worker;
  };
  const all = new LayoutSearch(start, workers);
  const answer = (place: number, data: object): void =>
    started[place]?.onmessage?.(new MessageEvent('message', { data: { kind: 'answer', ticket: 1, ...data } }));
  return { ...made, all, answer };
}

describe('a search', () => {
  test.each([1, 2, 3, 4])('shared by %i workers finds what the command finds', (workers) => {
    const { all, asked, answer } = searching(workers);
    const wanted = searched();
    all.start(wanted);
    expect(asked).toHaveLength(workers);
    expect([all.share, all.parts]).toEqual([0, []]);
    asked.forEach((request, place) => answer(place, { value: structuredClone(partOf(request)), final: true }));
    expect(all.share).toBeNull();
    expect(merged(wanted.ask, all.parts)).toEqual(search(demo.project, demo.layout, wanted.ask, 1));
  });

  test('starts the workers ahead when it is warmed, each once', () => {
    const { all, asked, start } = searching(3);
    all.warm();
    expect([start.mock.calls.length, asked.length]).toEqual([3, 0]);
    all.start(searched());
    expect([start.mock.calls.length, asked.length]).toEqual([3, 3]);
  });

  test('shows what it has so far, and is cancelled at once: that stays', () => {
    const { all, asked, answer, terminate } = searching(2);
    const wanted = searched();
    all.start(wanted);
    const [first] = asked;
    if (!first) throw new Error('both were asked');
    const part = partOf(first);
    answer(0, { value: part, final: false });
    expect(all.parts).toEqual([part]);
    answer(0, { value: part, final: true });
    expect(all.share).toBe(0.5);
    all.cancel();
    expect([all.share, all.cancelled, terminate.mock.calls.length]).toEqual([null, true, 2]);
    expect(all.parts).toEqual([part]);
    all.start(wanted);
    expect([all.share, all.cancelled, all.parts]).toEqual([0, false, []]);
  });

  test('of which one worker fails says so, and asks that one again', () => {
    const { all, asked, fail } = searching(2);
    all.start(searched());
    fail(new Event('error'));
    expect(all.failure).toEqual({ kind: 'missing' });
    all.retry();
    expect(all.failure).toBeNull();
    expect(asked.map(({ input }) => ('worker' in input ? input.worker : null))).toEqual([0, 1, 1]);
  });
});
