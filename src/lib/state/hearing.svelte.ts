import type { HeadMap, HeadPlane } from '$lib/acoustics/headMap.ts';
import type { HeadRoomPlan } from '$lib/plan/headRoom.ts';
import type { SoundPlan } from '$lib/plan/soundDocument.ts';
import type { Answer, Ask, Heard, Job, Reply } from './hearing/messages.ts';
import type { Solution } from '$lib/plan/solution.ts';
import { broken, SilenceWatch, troubleOf, type WorkerTrouble } from './workerTrouble.ts';

/** The part of a worker that is used. */
export interface Line {
  postMessage(ask: Ask): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<Reply>) => void) | null;
  onerror: ((event: Event) => void) | null;
}

/** An answer, and what it was asked of: once that has moved on, the answer is old. */
export interface Told<Value> {
  readonly shown: Solution;
  readonly value: Value;
}

/** A question, and whether all of its answer is there. */
interface Asked {
  readonly ticket: number;
  readonly shown: Solution;
  readonly ask: (ticket: number) => Ask;
  answered: boolean;
}

/**
 * What reaches the ears, found off the page's own thread. The worker begins with the first question. An answer stays
 * until the next one is there; answers to questions that are no longer the newest are dropped. A worker that fails, or says
 * nothing, is ended; the next question, or asking again, starts another one.
 */
export class Hearing {
  #line: Line | null = null;
  readonly #connect: () => Line;
  #ticket = 0;
  #asked: Partial<Record<Job, Asked>> = {};
  /** Maps wanted while another is being worked out: the newest place of each plane. */
  #wanted: Partial<Record<HeadPlane['plane'], HeadPlane>> = {};
  #findings = $state.raw<Told<Heard> | null>(null);
  #sound = $state.raw<Told<SoundPlan> | null>(null);
  #room = $state.raw<Told<HeadRoomPlan> | null>(null);
  #planes = $state.raw<Readonly<Record<HeadPlane['plane'], Told<HeadMap> | null>>>({ plan: null, side: null });
  #share = $state<number | null>(null);
  #trouble = $state.raw<WorkerTrouble | null>(null);
  readonly #watch = new SilenceWatch(() => this.#fail({ kind: 'silent' }));

  /** @param connect Starts the worker. */
  constructor(connect: () => Line) {
    this.#connect = connect;
  }

  get findings(): Told<Heard> | null {
    return this.#findings;
  }

  get sound(): Told<SoundPlan> | null {
    return this.#sound;
  }

  /** How far the head may move from every seat. */
  get room(): Told<HeadRoomPlan> | null {
    return this.#room;
  }

  /** The last map of each plane that was asked for by itself. */
  get planes(): Readonly<Record<HeadPlane['plane'], Told<HeadMap> | null>> {
    return this.#planes;
  }

  /** How much of the head room is done, 0…1; null while nobody works at it. */
  get share(): number | null {
    return this.#share;
  }

  /** What went wrong with the worker, so that what was asked last is not answered; null when nothing did. */
  get trouble(): WorkerTrouble | null {
    return this.#trouble;
  }

  /** Asks again for whatever was not answered. */
  askAgain(): void {
    const [first] = this.#open;
    if (first) this.#post(first[1].shown, first[0], first[1].ask);
  }

  /** Asks for something of what is shown, once. */
  ask(job: Exclude<Job, 'plane'>, shown: Solution): void {
    if (this.#asked[job]?.shown === shown) return;
    this.#post(shown, job, (ticket) => ({ kind: job, ticket, ...question(shown) }));
  }

  /**
   * Asks for a map of head positions. One question is on its way at a time, or a hand that asks faster than maps can be
   * worked out would see none of them; meanwhile the newest of each plane waits, and the ones before it are dropped.
   */
  askPlane(shown: Solution, where: HeadPlane): void {
    if (this.#asked.plane?.shown === shown) {
      this.#wanted = { ...this.#wanted, [where.plane]: where };
      return;
    }
    this.#wanted = {};
    this.#postPlane(shown, where);
  }

  #postPlane(shown: Solution, where: HeadPlane): void {
    this.#post(shown, 'plane', (ticket) => ({ kind: 'plane', ticket, ...question(shown), where }));
  }

  #askNextPlane(shown: Solution): void {
    const { plan, side } = this.#wanted;
    const next = plan ?? side;
    this.#asked = { ...this.#asked, plane: undefined };
    if (!next) return;
    this.#wanted = plan ? { side } : {};
    this.#postPlane(shown, next);
  }

  /** Gives up waiting for the head room. What was there before stays. */
  stop(): void {
    this.#asked = { ...this.#asked, room: undefined };
    this.#share = null;
    this.#line?.postMessage({ kind: 'stop', job: 'room' });
    this.#watchOn();
  }

  #post(shown: Solution, job: Job, ask: (ticket: number) => Ask): void {
    // A worker that starts anew is asked everything that the one before it left.
    const left = this.#line === null ? this.#open.filter(([other]) => other !== job) : [];
    if (job === 'room') this.#share = 0;
    this.#ticket += 1;
    this.#asked = { ...this.#asked, [job]: { ticket: this.#ticket, shown, ask, answered: false } };
    this.#trouble = null;
    this.#watch.wait();
    try {
      this.#line ??= this.#connected();
      this.#line.postMessage(ask(this.#ticket));
    } catch {
      this.#fail({ kind: 'missing' });
      return;
    }
    for (const [other, asked] of left) this.#post(asked.shown, other, asked.ask);
  }

  get #open(): [Job, Asked][] {
    const jobs = ['findings', 'sound', 'room', 'plane'] as const;
    return jobs.flatMap((job): [Job, Asked][] => {
      const asked = this.#asked[job];
      return asked && !asked.answered ? [[job, asked]] : [];
    });
  }

  /** Silence counts while something is not answered. */
  #watchOn(): void {
    if (this.#open.length > 0) this.#watch.wait();
    else this.#watch.rest();
  }

  /** What was asked last and not answered is open still: see `askAgain`. */
  #fail(trouble: WorkerTrouble): void {
    this.#watch.rest();
    if (this.#line !== null) {
      this.#line.onmessage = null;
      this.#line.onerror = null;
      this.#line.terminate();
      this.#line = null;
    }
    this.#share = null;
    this.#trouble = trouble;
  }

  #connected(): Line {
    const line = this.#connect();
    line.onmessage = ({ data }) => {
      if (data.kind === 'failed') {
        if (this.#open.some(([, { ticket }]) => ticket === data.ticket)) this.#fail(broken(data.message));
        return;
      }
      if (data.kind !== 'progress') this.#take(data);
      else if (data.job === 'room' && this.#asked.room?.ticket === data.ticket) this.#share = data.share;
      this.#watchOn();
    };
    line.onerror = (event) => this.#fail(troubleOf(event));
    return line;
  }

  #take(answer: Answer): void {
    const asked = this.#asked[answer.kind];
    if (asked?.ticket !== answer.ticket) return;
    const { shown } = asked;
    // Findings come with their suggestions at last.
    asked.answered = answer.kind !== 'findings' || answer.value.suggestions !== null;
    switch (answer.kind) {
      case 'findings':
        this.#findings = { shown, value: answer.value };
        return;
      case 'sound':
        this.#sound = { shown, value: answer.value };
        return;
      case 'plane':
        this.#planes = { ...this.#planes, [answer.value.plane]: { shown, value: answer.value } };
        this.#askNextPlane(shown);
        return;
      case 'room':
        this.#room = { shown, value: answer.value };
        this.#share = null;
    }
  }
}

const question = ({ project, layoutIndex }: Solution) => ({ project, layoutIndex });
