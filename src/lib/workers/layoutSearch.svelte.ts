import type { Plan } from '$lib/solution/document.ts';
import type { Ask } from '$lib/study/ask.ts';
import type { AskDocument } from '$lib/study/questions.ts';
import type { Part } from '$lib/study/found.ts';
import { JobClient, type Retriable, type StartWorker } from './client.svelte.ts';
import type { WorkerFailure } from './failure.ts';

/** A search as it was asked for. */
export interface Searched {
  /** The layout that is changed is the one it shows. */
  readonly of: Plan;
  readonly ask: Ask;
  readonly document: AskDocument;
  /** Which question it is; or another word, for an ask of one's own. */
  readonly question: string;
}

/** What is found is the same for any seed but where candidates are alike. */
const SEED = 1;

/** More would want more memory than they save time. */
const MOST_WORKERS = 4;

/** A search for layouts, shared by as many workers as there are processors; what it has found so far grows while it runs. */
export class LayoutSearch implements Retriable {
  readonly #clients: readonly JobClient<'search'>[];
  #searched = $state.raw<Searched | null>(null);
  #cancelled = $state(false);

  constructor(start: StartWorker, workers = processors()) {
    this.#clients = Array.from({ length: workers }, () => new JobClient('search', start));
  }

  /** What was asked for last; null before the first search. */
  get searched(): Searched | null {
    return this.#searched;
  }

  /** What each worker has found so far: to be merged. */
  get parts(): readonly Part[] {
    return this.#clients.flatMap(({ answer }) => answer?.value ?? []);
  }

  /** How much of it is done, 0…1; null while none is under way. */
  get share(): number | null {
    if (this.#clients.every(({ share }) => share === null)) return null;
    const done = this.#clients.map(({ share, answer }) => share ?? (answer?.final === true ? 1 : 0));
    return done.reduce((sum, one) => sum + one, 0) / this.#clients.length;
  }

  get failure(): WorkerFailure | null {
    return this.#clients.find(({ failure }) => failure !== null)?.failure ?? null;
  }

  /** Whether it was cancelled before its end. */
  get cancelled(): boolean {
    return this.#cancelled;
  }

  /** Starts the workers before there is anything to search. */
  warm(): void {
    for (const client of this.#clients) client.warm();
  }

  /** Begins a search; one that is under way is given up. */
  start(searched: Searched): void {
    this.#searched = searched;
    this.#cancelled = false;
    const { project, layoutIndex } = searched.of;
    const of = this.#clients.length;
    this.#clients.forEach((client, worker) => {
      client.askAnew(searched.of, { project, layoutIndex, ask: searched.document, seed: SEED, worker, of });
    });
  }

  retry(): void {
    for (const client of this.#clients) if (client.failure !== null) client.retry();
  }

  /** Ends the search at once, whatever it is at. What was found stays. */
  cancel(): void {
    this.#cancelled = this.share !== null || this.failure !== null;
    for (const client of this.#clients) client.cancel();
  }
}

const processors = (): number =>
  Math.max(1, Math.min(MOST_WORKERS, typeof navigator === 'undefined' ? 1 : navigator.hardwareConcurrency || 1));
