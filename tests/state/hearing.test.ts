import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { plainText } from '$lib/project/sentence.ts';
import { headMap } from '$lib/acoustics/headMap.ts';
import { headRoomOf } from '$lib/plan/headRoom.ts';
import { hearingOf } from '$lib/plan/headVoices.ts';
import { soundOf } from '$lib/plan/sound.ts';
import { hearingDesk } from '$lib/state/hearing/desk.ts';
import type { Ask, Reply } from '$lib/state/hearing/messages.ts';
import { Hearing, type Line } from '$lib/state/hearing.svelte.ts';
import type { Solution } from '$lib/plan/solution.ts';
import { settleProject } from '$lib/state/settle.ts';
import { PATIENCE } from '$lib/state/workerTrouble.ts';
import { project } from '../projects.ts';

function shownOf(changes: Readonly<Record<string, unknown>> = {}): Solution {
  const { shown } = settleProject(project(changes), 0);
  if (!shown) throw new Error('the demo has an answer');
  return shown;
}

/** A desk that pauses until it is let go on, and what it has said. */
function paused() {
  const replies: Reply[] = [];
  let waiting: (() => void)[] = [];
  const ask = hearingDesk(
    (reply) => replies.push(reply),
    () => new Promise((resolve) => waiting.push(resolve)),
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
  return { ask, goOn, finish, replies };
}

const demo = shownOf();
const of = { project: demo.project, layoutIndex: 0 };

describe('the desk', () => {
  test('answers what the pure rooms find', async () => {
    const { ask, finish, replies } = paused();
    const where = { plane: 'plan', at: 445, across: [-100, 100], up: [-300, -100] } as const;
    void ask({ kind: 'sound', ticket: 1, ...of });
    void ask({ kind: 'room', ticket: 2, ...of });
    void ask({ kind: 'plane', ticket: 3, ...of, where });
    await finish();
    const answer = (ticket: number) => replies.find((one) => one.kind !== 'progress' && one.ticket === ticket);
    expect(answer(1)).toEqual({ kind: 'sound', ticket: 1, value: soundOf(demo.project, demo.layout, demo) });
    expect(answer(2)).toEqual({ kind: 'room', ticket: 2, value: headRoomOf(demo.project, demo.layout, demo) });
    expect(answer(3)).toEqual({ kind: 'plane', ticket: 3, value: headMap(hearingOf(demo.project, demo), where) });
  });

  test('tells findings first, suggestions when they have been tried', async () => {
    const { ask, finish, replies } = paused();
    void ask({ kind: 'findings', ticket: 7, ...of });
    await finish();
    const told = replies.filter((one) => one.kind === 'findings');
    expect(told.map(({ value }) => value.suggestions === null)).toEqual([true, false]);
    expect(told[1]?.value.findings.map(({ code }) => code)).toContain('early-reflection');
    const suggestion = told[1]?.value.suggestions?.get('triangle-angle');
    expect(suggestion && plainText(suggestion.label)).toMatch(/^Move both marks/);
  });

  test('stops between two steps when told to, and says no more', async () => {
    const { ask, goOn, finish, replies } = paused();
    void ask({ kind: 'room', ticket: 1, ...of });
    await goOn();
    expect(replies).toHaveLength(1);
    void ask({ kind: 'stop', job: 'room' });
    await finish();
    expect(replies).toHaveLength(1);
  });

  test('drops an old question for a newer one of the same kind', async () => {
    const { ask, finish, replies } = paused();
    void ask({ kind: 'sound', ticket: 1, ...of });
    void ask({ kind: 'sound', ticket: 2, ...of });
    await finish();
    expect(replies.map((one) => one.ticket)).toEqual([2]);
  });

  test('says so where there is nothing to answer from: no layout, no plan, or something was thrown', async () => {
    const { ask, finish, replies } = paused();
    void ask({ kind: 'sound', ticket: 1, project: demo.project, layoutIndex: 4 });
    await finish();
    const noAnswer = project({ '/layouts/0/aim/tilt': { rule: 'lift-to-ear', degrees: 60 } });
    void ask({ kind: 'sound', ticket: 2, project: noAnswer, layoutIndex: 0 });
    await finish();
    const broken = { ...demo.project, speaker: { ...demo.project.speaker, drivers: [] } };
    void ask({ kind: 'sound', ticket: 3, project: broken, layoutIndex: 0 });
    await finish();
    expect(replies.map(({ kind, ticket }) => [kind, ticket])).toEqual([
      ['failed', 1],
      ['failed', 2],
      ['failed', 3],
    ]);
    expect(replies[0]).toMatchObject({ message: 'expected the place of a layout, got 4' });
  });
});

describe('the client', () => {
  function client() {
    const asked: Ask[] = [];
    const lines: Line[] = [];
    const terminate = vi.fn();
    const connect = vi.fn(() => {
      const line: Line = { postMessage: (ask) => asked.push(ask), terminate, onmessage: null, onerror: null };
      lines.push(line);
      return line;
    });
    const hearing = new Hearing(connect);
    const reply = (data: Reply): void => lines.at(-1)?.onmessage?.(new MessageEvent('message', { data }));
    const fail = (event: Event): void => lines.at(-1)?.onerror?.(event);
    return { asked, hearing, reply, fail, connect, terminate };
  }
  const sound = soundOf(demo.project, demo.layout, demo);

  test('asks once for each thing that is shown, and keeps an answer until the next', () => {
    const { asked, hearing, reply } = client();
    hearing.ask('sound', demo);
    hearing.ask('sound', demo);
    expect(asked).toHaveLength(1);
    reply({ kind: 'sound', ticket: 1, value: sound });
    expect(hearing.sound).toEqual({ shown: demo, value: sound });
    const next = shownOf({ '/layouts/0/listener/earHeight': 1200 });
    hearing.ask('sound', next);
    expect(hearing.sound?.shown).toBe(demo);
    reply({ kind: 'sound', ticket: 1, value: sound });
    expect(hearing.sound?.shown).toBe(demo);
    reply({ kind: 'sound', ticket: 2, value: sound });
    expect(hearing.sound?.shown).toBe(next);
  });

  test('tells how far the head room is, and gives it up', () => {
    const { asked, hearing, reply } = client();
    hearing.ask('room', demo);
    expect(hearing.share).toBe(0);
    reply({ kind: 'progress', job: 'room', ticket: 1, share: 0.5 });
    expect(hearing.share).toBe(0.5);
    hearing.stop();
    expect(hearing.share).toBeNull();
    expect(asked.at(-1)).toEqual({ kind: 'stop', job: 'room' });
    reply({ kind: 'room', ticket: 1, value: headRoomOf(demo.project, demo.layout, demo) });
    expect(hearing.room).toBeNull();
    hearing.ask('room', demo);
    expect(asked.at(-1)).toMatchObject({ kind: 'room', ticket: 2 });
  });

  describe('whose worker fails', () => {
    beforeEach(() => {
      vi.useFakeTimers();
    });
    afterEach(() => {
      vi.useRealTimers();
    });
    const thrown = (message: string): Event => Object.assign(new Event('error'), { message });

    test.each<[string, (of: ReturnType<typeof client>) => void, unknown]>([
      ['is blocked', ({ fail }) => fail(new Event('error')), { kind: 'missing' }],
      ['throws', ({ fail }) => fail(thrown('Uncaught Error: at once')), { kind: 'broken', message: 'at once' }],
      [
        'tells of a failure',
        ({ reply }) => reply({ kind: 'failed', ticket: 2, message: 'no sound' }),
        { kind: 'broken', message: 'no sound' },
      ],
      ['says nothing', () => vi.advanceTimersByTime(PATIENCE), { kind: 'silent' }],
    ])(
      'that %s: tells it, waits for nothing, and asks another one for all that was not answered',
      (_, fail, trouble) => {
        const made = client();
        const { asked, hearing, reply, connect, terminate } = made;
        hearing.ask('findings', demo);
        hearing.ask('sound', demo);
        hearing.ask('room', demo);
        reply({ kind: 'findings', ticket: 1, value: { findings: [], suggestions: new Map() } });
        fail(made);
        expect([hearing.trouble, hearing.share]).toEqual([trouble, null]);
        expect([connect.mock.calls.length, terminate.mock.calls.length]).toEqual([1, 1]);
        // The same is not asked over and over by itself.
        hearing.ask('sound', demo);
        expect(asked).toHaveLength(3);

        hearing.askAgain();
        expect(asked.slice(3).map(({ kind }) => kind)).toEqual(['sound', 'room']);
        expect([hearing.trouble, hearing.share, connect.mock.calls.length]).toEqual([null, 0, 2]);
        reply({ kind: 'sound', ticket: 4, value: sound });
        expect(hearing.sound?.shown).toBe(demo);
      },
    );

    test('that cannot even be started: tells it, and the next question tries again', () => {
      const { asked, hearing, connect } = client();
      connect.mockImplementationOnce(() => {
        throw new DOMException('refused', 'SecurityError');
      });
      hearing.ask('sound', demo);
      expect(hearing.trouble).toEqual({ kind: 'missing' });
      const next = shownOf({ '/layouts/0/listener/earHeight': 1200 });
      hearing.ask('findings', next);
      expect(hearing.trouble).toBeNull();
      expect(asked.map(({ kind }) => kind)).toEqual(['findings', 'sound']);
    });

    test('counts no silence once everything is answered or given up', () => {
      const { hearing, reply } = client();
      hearing.ask('sound', demo);
      hearing.ask('room', demo);
      vi.advanceTimersByTime(PATIENCE - 1);
      reply({ kind: 'sound', ticket: 1, value: sound });
      vi.advanceTimersByTime(PATIENCE - 1);
      expect(hearing.trouble).toBeNull();
      hearing.stop();
      vi.advanceTimersByTime(2 * PATIENCE);
      expect(hearing.trouble).toBeNull();
    });
  });

  describe('asked for maps faster than they come', () => {
    const across = [-100, 100] as const;
    const up = [-300, -100] as const;
    const ofPlan = (at: number) => ({ plane: 'plan', at, across, up }) as const;
    const ofSide = (at: number) => ({ plane: 'side', at, across, up }) as const;
    const hear = hearingOf(demo.project, demo);
    const places = (asked: readonly Ask[]) => asked.flatMap((one) => (one.kind === 'plane' ? [one.where] : []));

    test('shows each that comes, and asks next for the newest of each plane', () => {
      const { asked, hearing, reply } = client();
      for (const at of [10, 20, 30]) hearing.askPlane(demo, ofSide(at));
      hearing.askPlane(demo, ofPlan(445));
      expect(places(asked)).toEqual([ofSide(10)]);
      reply({ kind: 'plane', ticket: 1, value: headMap(hear, ofSide(10), 4, 4) });
      expect(hearing.planes.side?.value.at).toBe(10);
      reply({ kind: 'plane', ticket: 2, value: headMap(hear, ofPlan(445), 4, 4) });
      reply({ kind: 'plane', ticket: 3, value: headMap(hear, ofSide(30), 4, 4) });
      expect(places(asked)).toEqual([ofSide(10), ofPlan(445), ofSide(30)]);
      expect(hearing.planes.side?.value.at).toBe(30);
      expect(hearing.planes.plan?.value.at).toBe(445);
      hearing.askPlane(demo, ofSide(40));
      expect(places(asked).at(-1)).toEqual(ofSide(40));
    });

    test('forgets what waited when the project changes', () => {
      const { asked, hearing, reply } = client();
      hearing.askPlane(demo, ofSide(10));
      hearing.askPlane(demo, ofSide(20));
      const next = shownOf({ '/layouts/0/listener/earHeight': 1200 });
      hearing.askPlane(next, ofSide(30));
      expect(places(asked)).toEqual([ofSide(10), ofSide(30)]);
      reply({ kind: 'plane', ticket: 1, value: headMap(hear, ofSide(10), 4, 4) });
      expect(hearing.planes.side).toBeNull();
      reply({ kind: 'plane', ticket: 2, value: headMap(hear, ofSide(30), 4, 4) });
      expect(hearing.planes.side?.shown).toBe(next);
      expect(asked).toHaveLength(2);
    });
  });
});
