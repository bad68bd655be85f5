import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { layoutFaults } from '$lib/workshop/validity.ts';
import { nested } from '$lib/workshop/nest.ts';
import { Nesting, type Line } from '$lib/state/nesting.svelte.ts';
import { nestingDesk } from '$lib/state/nesting/desk.ts';
import { readAsk, readReply, type Ask, type Reply } from '$lib/state/nesting/messages.ts';
import type { Solution } from '$lib/plan/solution.ts';
import { settleProject } from '$lib/state/settle.ts';
import { PATIENCE, workerTroubleWords } from '$lib/state/workerTrouble.ts';
import { demoWith, project } from '../projects.ts';

function shownOf(changes: Readonly<Record<string, unknown>> = {}): Solution {
  const { shown } = settleProject(project(changes), 0);
  if (!shown) throw new Error('the demo has an answer');
  return shown;
}

/** A clock that shows how long has been worked only when it is asked: each look is a millisecond. */
function desk(budget?: number) {
  const replies: Reply[] = [];
  const waiting: (() => void)[] = [];
  let time = 0;
  const tell = nestingDesk({
    post: (reply) => replies.push(readReply(structuredClone(reply))),
    pause: () => new Promise((resolve) => waiting.push(resolve)),
    now: () => time++,
    ...(budget === undefined ? {} : { budget }),
  });
  /** Lets the desk go on until its next pause. */
  const goOn = async (): Promise<void> => {
    waiting.shift()?.();
    await new Promise((resolve) => setTimeout(resolve));
  };
  const finish = async (): Promise<void> => {
    while (waiting.length > 0) await goOn();
  };
  return { tell, goOn, finish, replies, waiting };
}

const demo = shownOf();
const nestAsk = (ticket: number, of = demo): Ask => ({ kind: 'nest', ticket, project: of.project, layoutIndex: 0 });

describe('the desk', () => {
  test('answers first, then better and better, and ends where nesting to the end does', async () => {
    const [small, seed, budget] = [{ width: 400, height: 200 }, 3, 300_000];
    const { tell, finish, replies } = desk(budget);
    const few = shownOf({ '/stock/0/sheet': small, '/layouts/0/arrangement': { seed }, '/layouts/0/stand/width': 30 });
    void tell(nestAsk(4, few));
    await finish();
    // Until the first answer there is nothing but how far it has come.
    expect(replies.find(({ kind }) => kind !== 'progress')?.kind).toBe('better');
    expect(replies.at(-1)).toEqual({ kind: 'ended', ticket: 4, ending: 'done' });
    const answers = replies.flatMap((reply) => (reply.kind === 'better' ? [reply.nested] : []));
    expect(answers.length).toBeGreaterThan(2);
    const { stock, cutter } = few.project;
    for (const { sheets } of answers) {
      expect(layoutFaults(sheets, few.parts, cutter.spacing, cutter.margin)).toEqual([]);
    }
    expect({ ok: true, value: answers.at(-1) }).toEqual(nested(few.parts, stock, cutter, { seed, budget }));
    const shares = replies.flatMap((reply) => (reply.kind === 'progress' ? [reply.share] : []));
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
  });

  test('leaves a question for a newer one', async () => {
    const { tell, goOn, replies } = desk();
    void tell(nestAsk(1));
    void tell(nestAsk(2));
    await goOn();
    await goOn();
    expect(replies.slice(2).every(({ ticket }) => ticket === 2)).toBe(true);
    expect(replies.some(({ kind }) => kind === 'ended')).toBe(false);
  });

  test('tells why there are no sheets, and what is wrong with a message', async () => {
    const { tell, replies } = desk();
    await tell(nestAsk(1, shownOf({ '/stock/0/sheet': { width: 60, height: 60 } })));
    expect(replies[0]).toMatchObject({ kind: 'refused', ticket: 1, faults: [{ pointer: '/stock/0/sheet' }] });
    await tell({ kind: 'nest', ticket: 2, layoutIndex: 0, project: demoWith({ '/cutter/kerf': -1 }) });
    expect(replies[1]).toEqual({
      kind: 'failed',
      ticket: 2,
      message: '/cutter/kerf: expected a width from 0 to 13 mm, got -1',
    });
    await tell({ kind: 'nest', ticket: 3, layoutIndex: 9, project: demoWith() });
    expect(replies[2]).toMatchObject({ kind: 'failed', ticket: 3 });
    await tell('go');
    expect(replies[3]).toMatchObject({ kind: 'failed', ticket: 0 });
  });
});

test.each([null, 'x', {}, { kind: 'nest', ticket: 1.5 }, { kind: 'better', ticket: 1, nested: { sheets: 7 } }])(
  'neither end takes %j for a message',
  (data) => {
    expect(() => readAsk(data)).toThrow();
    expect(() => readReply(data)).toThrow();
  },
);

describe('the page’s end', () => {
  /** A worker that only remembers. */
  function line() {
    const asked: Ask[] = [];
    const terminate = vi.fn();
    const own: Line = {
      postMessage: (ask) => void asked.push(ask),
      terminate,
      onmessage: null,
      onerror: null,
      read: readReply,
    };
    const say = (data: unknown): void => own.onmessage?.({ data } as MessageEvent<unknown>);
    return { own, asked, terminate, say };
  }
  const value = { sheets: [], stocks: [], released: [], short: [] };

  test('asks once for what stays the same, and shows what belongs to it', () => {
    const { own, asked, say } = line();
    const nesting = new Nesting(() => own);
    nesting.ask(demo);
    nesting.ask(shownOf({ '/title': 'Another title' }));
    expect(asked).toHaveLength(1);
    expect(nesting.share).toBe(0);
    say({ kind: 'better', ticket: 1, nested: value });
    say({ kind: 'progress', ticket: 1, share: 0.5 });
    expect(nesting.sheetsOf(demo)).toEqual([]);
    expect(nesting.share).toBe(0.5);
    say({ kind: 'ended', ticket: 1, ending: 'done' });
    expect([nesting.share, nesting.ending]).toEqual([null, 'done']);

    const held = shownOf({ '/layouts/0/arrangement': { seed: 2 } });
    expect([nesting.isOf(held), nesting.isLike(held)]).toEqual([false, true]);
    const wider = shownOf({ '/layouts/0/stand/width': 120 });
    expect([nesting.isOf(wider), nesting.isLike(wider)]).toEqual([false, false]);
    expect(nesting.sheetsOf(wider)).toBeNull();
    nesting.ask(wider);
    say({ kind: 'better', ticket: 1, nested: value });
    expect(nesting.sheetsOf(wider)).toBeNull();
    say({
      kind: 'better',
      ticket: 2,
      nested: { ...value, short: [{ pointer: '/stock/0/sheets', message: 'too few' }] },
    });
    // Nothing is cut from sheets that are not there.
    expect(nesting.sheetsOf(wider)).toBeNull();
    expect(nesting.told?.value.short).toHaveLength(1);
  });

  test('stops, refuses, fails and closes', () => {
    const { own, asked, say, terminate } = line();
    const nesting = new Nesting(() => own);
    nesting.ask(demo);
    nesting.stop();
    // Whatever the worker is at: it ends.
    expect(terminate).toHaveBeenCalledTimes(1);
    expect([nesting.share, nesting.ending]).toEqual([null, 'stopped']);
    say({ kind: 'better', ticket: 1, nested: value });
    expect(nesting.told).toBeNull();

    const faults = [{ pointer: '/stock/0/sheet', message: 'too small' }];
    nesting.ask(shownOf({ '/layouts/0/stand/width': 120 }));
    say({ kind: 'refused', ticket: 2, faults });
    expect(nesting.faults).toEqual(faults);

    nesting.ask(demo);
    say({ kind: 'better', ticket: 3 });
    expect(nesting.trouble).toMatchObject({ kind: 'broken' });
    expect(terminate).toHaveBeenCalledTimes(2);
    nesting.ask(demo);
    expect(nesting.trouble).toBeNull();
    nesting.close();
    expect(terminate).toHaveBeenCalledTimes(3);
    expect(nesting.share).toBeNull();
    // What was cut short is taken up again.
    nesting.ask(demo);
    expect(asked).toHaveLength(5);
  });

  describe('whose worker fails', () => {
    beforeEach(() => {
      vi.useFakeTimers();
    });
    afterEach(() => {
      vi.useRealTimers();
    });

    test.each<[string, (of: ReturnType<typeof line>) => void, string]>([
      ['is blocked', ({ own }) => own.onerror?.(new Event('error')), 'could not be fetched or started'],
      [
        'throws',
        ({ own }) => own.onerror?.(Object.assign(new Event('error'), { message: 'Uncaught Error: late' })),
        'made a mistake (late)',
      ],
      [
        'tells of a failure',
        ({ say }) => say({ kind: 'failed', ticket: 1, message: 'no wood' }),
        'made a mistake (no wood)',
      ],
      ['says nothing', () => vi.advanceTimersByTime(PATIENCE), 'has stopped answering'],
    ])('that %s: tells it in words, and the same can be asked again', (_, fail, words) => {
      const made = line();
      const nesting = new Nesting(() => made.own);
      nesting.ask(demo);
      fail(made);
      if (nesting.trouble === null) throw new Error('expected trouble');
      expect(workerTroubleWords(nesting.trouble)).toContain(words);
      expect([nesting.share, made.terminate.mock.calls.length]).toEqual([null, 1]);
      nesting.ask(demo);
      expect([nesting.trouble, nesting.share, made.asked.length]).toEqual([null, 0, 2]);
    });

    test('that cannot even be started: tells it', () => {
      const nesting = new Nesting(() => {
        throw new DOMException('refused', 'SecurityError');
      });
      nesting.ask(demo);
      expect([nesting.trouble, nesting.share]).toEqual([{ kind: 'missing' }, null]);
    });

    test('counts no silence while it speaks, and none when it has ended', () => {
      const { own, say } = line();
      const nesting = new Nesting(() => own);
      nesting.ask(demo);
      for (let i = 1; i < 5; i++) {
        vi.advanceTimersByTime(PATIENCE - 1);
        say({ kind: 'progress', ticket: 1, share: i / 5 });
      }
      expect(nesting.trouble).toBeNull();
      say({ kind: 'ended', ticket: 1, ending: 'done' });
      vi.advanceTimersByTime(2 * PATIENCE);
      expect([nesting.trouble, nesting.ending]).toEqual([null, 'done']);
    });
  });
});
