import { describe, expect, test } from 'vitest';
import { headMap } from '$lib/acoustics/headMap.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import { listeningAreaSteps } from '$lib/solution/listeningArea.ts';
import { hearingOf } from '$lib/solution/headVoices.ts';
import { soundOf } from '$lib/solution/sound.ts';
import { plainText } from '$lib/project/sentence.ts';
import { handler } from '$lib/workers/handler.ts';
import { jobs, sheetSteps, type JobName } from '$lib/workers/jobs.ts';
import type { Reply, Request } from '$lib/workers/messages.ts';
import { nested } from '$lib/workshop/nesting/nest.ts';
import { measures } from '$lib/study/measures.ts';
import { sweep } from '$lib/study/sweep.ts';
import { layoutFaults } from '$lib/workshop/nesting/validity.ts';
import { project } from '../projects.ts';
import { shownOf, subjectOf } from './subjects.ts';

/** A handler that pauses until it is let go on, what it has sent, and a clock that moves on by so many milliseconds a look. */
function paused(table = jobs, tick = 1) {
  const replies: Reply[] = [];
  let waiting: (() => void)[] = [];
  let time = 0;
  const ask = handler(
    {
      post: (reply) => replies.push(structuredClone(reply)),
      pause: () => new Promise((resolve) => waiting.push(resolve)),
      now: () => (time += tick),
    },
    table,
  );
  /** Lets everything that pauses go on by one step. */
  const goOn = async (): Promise<void> => {
    const now = waiting;
    waiting = [];
    for (const resolve of now) resolve();
    await new Promise((resolve) => setTimeout(resolve));
  };
  const finish = async (): Promise<void> => {
    while (waiting.length > 0) await goOn();
  };
  /** All that is sent in answer to one request. */
  const repliesTo = async (request: Request): Promise<readonly Reply[]> => {
    const before = replies.length;
    void ask(request);
    await finish();
    return replies.slice(before);
  };
  return { ask, goOn, finish, replies, repliesTo };
}

const demo = shownOf();
const input = subjectOf(demo);
const finalOf = (replies: readonly Reply[]) => replies.find((reply) => reply.kind === 'answer' && reply.final);

describe('a job', () => {
  test('answers what the pure rooms find', async () => {
    const { repliesTo } = paused();
    const where = { plane: 'plan', at: 445, across: [-100, 100], up: [-300, -100] } as const;
    expect(finalOf(await repliesTo({ job: 'sound', ticket: 1, input }))).toEqual({
      kind: 'answer',
      ticket: 1,
      final: true,
      value: soundOf(demo.project, demo.layout, demo),
    });
    expect(finalOf(await repliesTo({ job: 'listening-area', ticket: 2, input }))).toEqual({
      kind: 'answer',
      ticket: 2,
      final: true,
      value: toTheEnd(listeningAreaSteps(demo.project, demo.layout, demo)),
    });
    expect(finalOf(await repliesTo({ job: 'slice', ticket: 3, input: { ...input, where } }))).toEqual({
      kind: 'answer',
      ticket: 3,
      final: true,
      value: headMap(hearingOf(demo.project, demo), where),
    });
    const range = { over: '/stand/lift', from: 0, to: 40, steps: 5, mirror: false };
    const of = ['tilt', 'crossover-loss'];
    const swept = await repliesTo({ job: 'sweep', ticket: 4, input: { ...input, ...range, of } });
    const by = measures.filter(({ name }) => of.includes(name));
    expect(finalOf(swept)).toEqual({
      kind: 'answer',
      ticket: 4,
      final: true,
      value: sweep(demo.project, demo.layout, { ...range, of: by }),
    });
    // What is quick to work out has come first.
    expect(swept.filter(({ kind }) => kind === 'answer')).toHaveLength(2);
  });

  test('sends findings first, suggestions when they have been tried', async () => {
    const { repliesTo } = paused();
    const replies = await repliesTo({ job: 'findings', ticket: 7, input });
    const answers = replies.filter((reply) => reply.kind === 'answer');
    expect(answers.map(({ final }) => final)).toEqual([false, true]);
    expect(answers[0]?.value).toMatchObject({ suggestions: null });
    const { value } = answers[1] as Extract<Reply<'findings'>, { kind: 'answer' }>;
    expect(value.findings.map(({ code }) => code)).toContain('early-reflection');
    const suggestion = value.suggestions?.get('triangle-angle');
    expect(suggestion && plainText(suggestion.label)).toMatch(/^Move both marks/);
  });

  test('lays out sheets: an answer first, then better and better, and the last is where nesting to the end comes', async () => {
    const [small, seed, budget] = [{ width: 400, height: 200 }, 3, 300_000];
    const few = shownOf({ '/stock/0/sheet': small, '/layouts/0/arrangement': { seed }, '/layouts/0/stand/width': 30 });
    const { repliesTo } = paused({ ...jobs, sheets: (subject) => sheetSteps(subject, { budget }) });
    const replies = await repliesTo({ job: 'sheets', ticket: 4, input: subjectOf(few) });
    // Until the first answer there is nothing but how far it has come.
    expect(replies.find(({ kind }) => kind !== 'progress')?.kind).toBe('answer');
    const answers = replies.filter(
      (reply): reply is Extract<Reply<'sheets'>, { kind: 'answer' }> => reply.kind === 'answer',
    );
    expect(answers.length).toBeGreaterThan(2);
    expect(answers.map(({ final }) => final)).toEqual(answers.map((_, i) => i === answers.length - 1));
    const { stock, cutter } = few.project;
    for (const { value } of answers) {
      if (!value.ok) throw new Error('expected sheets');
      expect(layoutFaults(value.value.sheets, few.parts, cutter.spacing, cutter.margin)).toEqual([]);
    }
    expect(answers.at(-1)?.value).toEqual(nested(few.parts, stock, cutter, { seed, budget }));
    const shares = replies.flatMap((reply) => (reply.kind === 'progress' ? [reply.share] : []));
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.length).toBeGreaterThan(2);
  });

  test('answers with the reason where there are no sheets', async () => {
    const { repliesTo } = paused();
    const tiny = shownOf({ '/stock/0/sheet': { width: 60, height: 60 } });
    expect(await repliesTo({ job: 'sheets', ticket: 1, input: subjectOf(tiny) })).toMatchObject([
      { kind: 'answer', final: true, value: { ok: false, faults: [{ pointer: '/stock/0/sheet' }] } },
    ]);
  });
});

describe('the handler', () => {
  test('leaves a request for a newer one, between two steps of it', async () => {
    const { ask, goOn, finish, replies } = paused(jobs, 30);
    void ask({ job: 'listening-area', ticket: 1, input });
    await goOn();
    expect(replies).toEqual([{ kind: 'progress', ticket: 1, share: expect.any(Number) }]);
    void ask({ job: 'sound', ticket: 2, input });
    await finish();
    // The sound first without its bands, then whole; of the first request nothing more.
    expect(replies.slice(1).map(({ kind, ticket }) => [kind, ticket])).toEqual([
      ['answer', 2],
      ['answer', 2],
    ]);
  });

  test('begins only the newest of several that come together', async () => {
    const begun: number[] = [];
    const { ask, finish, replies } = paused({
      ...jobs,
      *sound(subject) {
        begun.push(subject.layoutIndex);
        return yield* jobs.sound({ ...subject, layoutIndex: 0 });
      },
    });
    for (const ticket of [1, 2, 3]) void ask({ job: 'sound', ticket, input: { ...input, layoutIndex: ticket } });
    await finish();
    expect([begun, replies.map(({ ticket }) => ticket)]).toEqual([[3], [3, 3]]);
  });

  test.each<JobName>(['findings', 'sound', 'listening-area', 'slice', 'sheets'])(
    'sends a failure where %s throws: at once, late, or because there is nothing to answer from',
    async (job) => {
      const where = { plane: 'plan', at: 445, across: [-100, 100], up: [-300, -100] } as const;
      const { repliesTo } = paused();
      const request = (ticket: number, of: typeof input) => ({ job, ticket, input: { ...of, where } }) as Request;
      expect(await repliesTo(request(1, { ...input, layoutIndex: 4 }))).toEqual([
        { kind: 'failed', ticket: 1, message: 'expected the place of a layout, got 4' },
      ]);
      const noAnswer = project({ '/layouts/0/aim/tilt': { rule: 'lift-to-ear', degrees: 60 } });
      const [reply] = await repliesTo(request(2, { ...input, project: noAnswer }));
      if (job === 'sheets') expect(reply).toMatchObject({ kind: 'answer', ticket: 2, value: { ok: false } });
      else expect(reply).toMatchObject({ kind: 'failed', ticket: 2 });

      const late = paused({
        ...jobs,
        *[job]() {
          yield { share: 0.5 };
          throw new Error('late');
        },
      });
      expect((await late.repliesTo(request(3, input))).at(-1)).toEqual({ kind: 'failed', ticket: 3, message: 'late' });
      const atOnce = paused({
        ...jobs,
        [job]: () => {
          throw 'at once';
        },
      });
      expect(await atOnce.repliesTo(request(4, input))).toEqual([{ kind: 'failed', ticket: 4, message: 'at once' }]);
    },
  );
});
