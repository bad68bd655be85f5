import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { headMap } from '$lib/acoustics/headMap.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import { listeningAreaSteps } from '$lib/solution/listeningArea.ts';
import { hearingOf } from '$lib/solution/headVoices.ts';
import { soundOf } from '$lib/solution/sound.ts';
import { measures } from '$lib/study/measures.ts';
import { sweep } from '$lib/study/sweep.ts';
import { JobClient } from '$lib/workers/client.svelte.ts';
import { failureText } from '$lib/workers/failure.ts';
import { PATIENCE } from '$lib/workers/silence.ts';
import { fakeWorkers } from './fakeWorker.ts';
import { shownOf, subjectOf } from './subjects.ts';

const demo = shownOf();
const next = shownOf({ '/layouts/0/listener/earHeight': 1200 });
const sound = soundOf(demo.project, demo.layout, demo);
const final = { kind: 'answer', final: true } as const;

test('asks once about each thing that is shown, and keeps an answer until the next', () => {
  const { asked, start, reply } = fakeWorkers();
  const client = new JobClient('sound', start);
  expect([client.answer, client.share, client.asked]).toEqual([null, null, null]);
  client.ask(demo, subjectOf(demo));
  client.ask(demo, subjectOf(demo));
  expect(asked).toEqual([{ job: 'sound', ticket: 1, input: subjectOf(demo) }]);
  expect(start.mock.calls).toEqual([['sound']]);
  reply({ ...final, ticket: 1, value: sound });
  expect(client.answer).toEqual({ of: demo, value: sound, final: true });
  client.ask(next, subjectOf(next));
  expect(client.answer?.of).toBe(demo);
  // An answer to a question that is no longer the newest.
  reply({ ...final, ticket: 1, value: sound });
  expect([client.answer?.of, client.share]).toEqual([demo, 0]);
  reply({ ...final, ticket: 2, value: sound });
  expect([client.answer?.of, client.share]).toEqual([next, null]);
});

test('asks anew about the same, in place of what is under way', () => {
  const { asked, start, reply } = fakeWorkers();
  const client = new JobClient('sweep', start);
  const range = { over: '/stand/lift', from: 10, to: 40, steps: 5, of: ['tilt'], mirror: false };
  const value = sweep(demo.project, demo.layout, { ...range, of: measures.filter(({ name }) => name === 'tilt') });
  client.askAnew(demo, { ...subjectOf(demo), ...range, to: 20 });
  client.askAnew(demo, { ...subjectOf(demo), ...range });
  expect(asked.map(({ ticket }) => ticket)).toEqual([1, 2]);
  reply({ ...final, ticket: 1, value: { ok: false, faults: [] } });
  expect(client.answer).toBeNull();
  reply({ ...final, ticket: 2, value });
  expect(client.answer).toEqual({ of: demo, value, final: true });
});

test('shows how much is done, and a first answer that a better one follows', () => {
  const { start, reply } = fakeWorkers();
  const client = new JobClient('findings', start);
  client.ask(demo, subjectOf(demo));
  expect(client.share).toBe(0);
  const first = { findings: [], suggestions: null };
  reply({ kind: 'answer', ticket: 1, value: first, final: false });
  reply({ kind: 'progress', ticket: 1, share: 0.5 });
  expect([client.share, client.answer]).toEqual([0.5, { of: demo, value: first, final: false }]);
  const last = { findings: [], suggestions: new Map() };
  reply({ ...final, ticket: 1, value: last });
  expect([client.share, client.answer]).toEqual([null, { of: demo, value: last, final: true }]);
});

test('is cancelled whatever the worker is at; what was found stays, what was cut short can be asked again', () => {
  const { asked, start, reply, terminate } = fakeWorkers();
  const client = new JobClient('listening-area', start);
  const value = toTheEnd(listeningAreaSteps(demo.project, demo.layout, demo));
  client.ask(demo, subjectOf(demo));
  client.cancel();
  expect([client.share, client.asked, terminate.mock.calls.length]).toEqual([null, null, 1]);
  expect(client.answer).toBeNull();
  client.ask(demo, subjectOf(demo));
  reply({ ...final, ticket: 2, value });
  client.cancel();
  expect([client.answer?.of, terminate.mock.calls.length]).toEqual([demo, 2]);
  // It has been answered.
  client.ask(demo, subjectOf(demo));
  expect([asked.length, start.mock.calls.length]).toEqual([2, 2]);
});

describe('whose worker fails', () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });
  const thrown = (message: string): Event => Object.assign(new Event('error'), { message });

  test.each<[string, (of: ReturnType<typeof fakeWorkers>) => void, unknown, string]>([
    ['is blocked', ({ fail }) => fail(new Event('error')), { kind: 'missing' }, 'could not be fetched or started'],
    [
      'throws',
      ({ fail }) => fail(thrown('Uncaught Error: late')),
      { kind: 'broken', message: 'late' },
      'made a mistake (late)',
    ],
    [
      'sends a failure',
      ({ reply }) => reply({ kind: 'failed', ticket: 1, message: 'no sound' }),
      { kind: 'broken', message: 'no sound' },
      'made a mistake (no sound)',
    ],
    [
      'sends what cannot be read',
      ({ garble }) => garble(),
      { kind: 'broken', message: 'a message could not be read' },
      'could not be read',
    ],
    ['sends nothing', () => vi.advanceTimersByTime(PATIENCE), { kind: 'silent' }, 'has stopped answering'],
  ])('that %s: says so, waits for nothing, and asks another one when tried again', (_, fail, failure, words) => {
    const made = fakeWorkers();
    const { asked, start, reply, terminate } = made;
    const client = new JobClient('sound', start);
    client.ask(demo, subjectOf(demo));
    fail(made);
    expect([client.failure, client.share]).toEqual([failure, null]);
    if (client.failure === null) throw new Error('expected a failure');
    expect(failureText(client.failure)).toContain(words);
    expect([start.mock.calls.length, terminate.mock.calls.length]).toEqual([1, 1]);
    // The same is not asked over and over by itself.
    client.ask(demo, subjectOf(demo));
    expect(asked).toHaveLength(1);
    client.retry();
    expect([client.failure, client.share, start.mock.calls.length]).toEqual([null, 0, 2]);
    reply({ ...final, ticket: 2, value: sound });
    expect(client.answer?.of).toBe(demo);
    client.retry();
    expect(asked).toHaveLength(2);
  });

  test('after a first answer, keeps that and says so', () => {
    const { start, reply } = fakeWorkers();
    const client = new JobClient('findings', start);
    client.ask(demo, subjectOf(demo));
    reply({ kind: 'answer', ticket: 1, value: { findings: [], suggestions: null }, final: false });
    vi.advanceTimersByTime(PATIENCE);
    expect([client.failure, client.answer?.final]).toEqual([{ kind: 'silent' }, false]);
  });

  test('that cannot even be started: says so, and the next question tries again', () => {
    const { asked, start } = fakeWorkers();
    start.mockImplementationOnce(() => {
      throw new DOMException('refused', 'SecurityError');
    });
    const client = new JobClient('sound', start);
    client.ask(demo, subjectOf(demo));
    expect([client.failure, client.share]).toEqual([{ kind: 'missing' }, null]);
    client.ask(next, subjectOf(next));
    expect(client.failure).toBeNull();
    expect(asked.map(({ input }) => input)).toEqual([subjectOf(next)]);
  });

  test('counts no silence while it sends something, and none once everything is answered or cancelled', () => {
    const { start, reply } = fakeWorkers();
    const client = new JobClient('listening-area', start);
    client.ask(demo, subjectOf(demo));
    for (let i = 1; i < 5; i++) {
      vi.advanceTimersByTime(PATIENCE - 1);
      reply({ kind: 'progress', ticket: 1, share: i / 5 });
    }
    reply({ ...final, ticket: 1, value: toTheEnd(listeningAreaSteps(demo.project, demo.layout, demo)) });
    vi.advanceTimersByTime(2 * PATIENCE);
    expect(client.failure).toBeNull();
    client.ask(next, subjectOf(next));
    client.cancel();
    vi.advanceTimersByTime(2 * PATIENCE);
    expect(client.failure).toBeNull();
  });
});

describe('asked for maps faster than they come', () => {
  const across = [-100, 100] as const;
  const up = [-300, -100] as const;
  const at = (of: typeof demo, x: number) => ({
    ...subjectOf(of),
    where: { plane: 'side', at: x, across, up } as const,
  });
  const mapAt = (x: number) => headMap(hearingOf(demo.project, demo), at(demo, x).where, 4, 4);

  test('shows each that comes, and asks next for the newest', () => {
    const { asked, start, reply } = fakeWorkers();
    const client = new JobClient('slice', start);
    for (const x of [10, 20, 30]) client.askNext(demo, at(demo, x));
    expect(asked.map(({ input }) => input)).toEqual([at(demo, 10)]);
    reply({ ...final, ticket: 1, value: mapAt(10) });
    expect(client.answer?.value.at).toBe(10);
    reply({ ...final, ticket: 2, value: mapAt(30) });
    expect(client.answer?.value.at).toBe(30);
    client.askNext(demo, at(demo, 40));
    expect(asked.map(({ input }) => input)).toEqual([at(demo, 10), at(demo, 30), at(demo, 40)]);
  });

  test('forgets what waited when the project changes', () => {
    const { asked, start, reply } = fakeWorkers();
    const client = new JobClient('slice', start);
    client.askNext(demo, at(demo, 10));
    client.askNext(demo, at(demo, 20));
    client.askNext(next, at(next, 30));
    expect(asked.map(({ input }) => input)).toEqual([at(demo, 10), at(next, 30)]);
    reply({ ...final, ticket: 1, value: mapAt(10) });
    expect(client.answer).toBeNull();
    reply({ ...final, ticket: 2, value: mapAt(30) });
    expect(client.answer?.of).toBe(next);
    expect(asked).toHaveLength(2);
  });

  test('starts no worker a move once one has failed; trying again asks for the newest', () => {
    const { asked, start, fail } = fakeWorkers();
    const client = new JobClient('slice', start);
    client.askNext(demo, at(demo, 10));
    fail(new Event('error'));
    for (const x of [20, 30]) client.askNext(demo, at(demo, x));
    expect(start).toHaveBeenCalledTimes(1);
    client.retry();
    expect(asked.map(({ input }) => input)).toEqual([at(demo, 10), at(demo, 30)]);
  });
});

test('is warmed before there is a question, which need not wait for a worker then; one that fails unasked is told by nobody', () => {
  const { asked, start, fail, terminate } = fakeWorkers();
  const client = new JobClient('sound', start);
  client.warm();
  client.warm();
  expect([start.mock.calls.length, asked.length, client.share]).toEqual([1, 0, null]);
  fail(new Event('error'));
  expect([client.failure, terminate.mock.calls.length]).toEqual([null, 1]);
  client.ask(demo, subjectOf(demo));
  expect([start.mock.calls.length, asked.length]).toEqual([2, 1]);
  fail(new Event('error'));
  expect(client.failure).toEqual({ kind: 'missing' });
  const refused = new JobClient('sound', () => {
    throw new DOMException('refused', 'SecurityError');
  });
  refused.warm();
  expect(refused.failure).toBeNull();
  refused.ask(demo, subjectOf(demo));
  expect(refused.failure).toEqual({ kind: 'missing' });
});
