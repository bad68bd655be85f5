import type { Plan } from '$lib/solution/document.ts';
import { broken, failureOf, type WorkerFailure } from './failure.ts';
import type { Input, JobAnswer, JobName } from './jobs.ts';
import type { Reply, Request } from './messages.ts';
import { SilenceWatch } from './silence.ts';

/** Starts a worker for one job; may throw. */
export type StartWorker = (name: JobName) => Worker;

interface Question<Name extends JobName, Of> {
  readonly of: Of;
  readonly input: Input<Name>;
}

export interface Answer<Name extends JobName, Of = Plan> {
  /** What was asked about: once the page shows something else, the answer is old. */
  readonly of: Of;
  readonly value: JobAnswer<Name>;
  /** Whether no better one follows. */
  readonly final: boolean;
}

/** What a page shows of a job that has failed. */
export interface Retriable {
  readonly failure: WorkerFailure | null;
  retry(): void;
}

/**
 * One job in a worker of its own, which starts with the first question or when it is warmed. The newest question takes the place of the one
 * before, and answers to older ones are dropped; an answer stays until the next is there. A worker that fails, or sends
 * nothing for too long, is ended; trying again, or the next question, starts another one.
 */
export class JobClient<Name extends JobName, Of = Plan> implements Retriable {
  readonly #job: Name;
  readonly #start: StartWorker;
  #worker: Worker | null = null;
  #ticket = 0;
  /** What was asked last, and whether its final answer is still to come. */
  #asked: Question<Name, Of> | null = null;
  #open = false;
  /** What is to be asked once that is answered. */
  #next: Question<Name, Of> | null = null;
  #answer = $state.raw<Answer<Name, Of> | null>(null);
  #share = $state<number | null>(null);
  #failure = $state.raw<WorkerFailure | null>(null);
  readonly #watch = new SilenceWatch(() => this.#fail({ kind: 'silent' }));

  constructor(job: Name, start: StartWorker) {
    this.#job = job;
    this.#start = start;
  }

  /** The last answer, also while a newer question is being worked at; null before the first. */
  get answer(): Answer<Name, Of> | null {
    return this.#answer;
  }

  /** How much of what was asked last is done, 0…1; null while nothing is under way. */
  get share(): number | null {
    return this.#share;
  }

  /** Why what was asked last is not answered; null when nothing went wrong. */
  get failure(): WorkerFailure | null {
    return this.#failure;
  }

  /** What was asked about last, unless that was cancelled. */
  get asked(): Of | null {
    return this.#asked?.of ?? null;
  }

  /** Starts the worker before there is a question, so that the first one need not wait for it. */
  warm(): void {
    try {
      this.#worker ??= this.#started();
    } catch {
      // Whoever asks will be told.
    }
  }

  /** Asks about what is shown, once: what failed is not asked again by itself. */
  ask(of: Of, input: Input<Name>): void {
    if (this.#asked?.of !== of) this.#send({ of, input });
  }

  /**
   * Asks as often as it is called, but lets what is under way be finished, or a hand that asks faster than answers come
   * would see none of them; meanwhile the newest question waits, and those before it are dropped.
   */
  askNext(of: Of, input: Input<Name>): void {
    const question = { of, input };
    if (this.#open && this.#asked?.of === of) this.#next = question;
    else this.#send(question);
  }

  /** Asks at once, whatever was asked before; the answer to that is no longer wanted. */
  askAnew(of: Of, input: Input<Name>): void {
    this.#answer = null;
    this.#send({ of, input });
  }

  /** Asks again what was not answered. */
  retry(): void {
    const question = this.#next ?? this.#asked;
    if (this.#open && question !== null) this.#send(question);
  }

  /** Ends the worker, and what is under way with it, whatever it is at. Answers stay; what was cut short may be asked again. */
  cancel(): void {
    this.#hangUp();
    if (this.#open) this.#asked = null;
    this.#open = false;
    this.#next = null;
    this.#failure = null;
  }

  #send(question: Question<Name, Of>): void {
    this.#ticket += 1;
    this.#asked = question;
    this.#open = true;
    this.#next = null;
    this.#share = 0;
    this.#failure = null;
    this.#watch.wait();
    try {
      this.#worker ??= this.#started();
      const request: Request<Name> = { job: this.#job, ticket: this.#ticket, input: question.input };
      this.#worker.postMessage(request);
    } catch (error) {
      this.#fail(this.#worker === null ? { kind: 'missing' } : broken(error));
    }
  }

  #started(): Worker {
    const worker = this.#start(this.#job);
    worker.onmessage = ({ data }: MessageEvent<Reply<Name>>) => this.#onMessage(data);
    worker.onerror = (event) => this.#fail(failureOf(event));
    worker.onmessageerror = () => this.#fail(broken('a message could not be read'));
    return worker;
  }

  #onMessage(reply: Reply<Name>): void {
    const asked = this.#asked;
    if (!this.#open || asked === null || reply.ticket !== this.#ticket) return;
    switch (reply.kind) {
      case 'failed':
        this.#fail(broken(reply.message));
        return;
      case 'progress':
        this.#share = reply.share;
        this.#watch.wait();
        return;
      case 'answer':
        this.#answer = { of: asked.of, value: reply.value, final: reply.final };
        if (reply.final) this.#finish();
        else this.#watch.wait();
    }
  }

  #finish(): void {
    this.#watch.rest();
    this.#open = false;
    this.#share = null;
    if (this.#next !== null) this.#send(this.#next);
  }

  /** What was asked stays open: see `retry`. Where nothing was, the next question starts another worker. */
  #fail(failure: WorkerFailure): void {
    this.#hangUp();
    if (this.#open) this.#failure = failure;
  }

  #hangUp(): void {
    this.#watch.rest();
    this.#share = null;
    if (this.#worker === null) return;
    this.#worker.onmessage = null;
    this.#worker.onerror = null;
    this.#worker.onmessageerror = null;
    this.#worker.terminate();
    this.#worker = null;
  }
}
