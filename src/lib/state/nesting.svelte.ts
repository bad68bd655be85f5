import { cutterOf } from '$lib/workshop/beam.ts';
import type { Fault } from '$lib/project/fault.ts';
import type { Nested } from '$lib/workshop/nest.ts';
import type { Sheet } from '$lib/workshop/part.ts';
import type { Ask, Ending, Reply } from './nesting/messages.ts';
import type { Solution } from '$lib/plan/solution.ts';
import { broken, SilenceWatch, troubleOf, type WorkerTrouble } from './workerTrouble.ts';

/** The part of a worker that is used. */
export interface Line {
  postMessage(ask: Ask): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<unknown>) => void) | null;
  onerror: ((event: Event) => void) | null;
  /** A message as a reply; throws where it is none. */
  read(data: unknown): Reply;
}

/** An answer, and what it was asked of. */
export interface Told {
  readonly shown: Solution;
  readonly value: Nested;
}

/** All that sheets depend on: what is cut from what, and how it is to lie. */
interface Key {
  readonly what: string;
  readonly how: string;
}

const isSame = (a: Key, b: Key): boolean => a.what === b.what && a.how === b.how;

/** How the parts lie on their sheets, found off the page's own thread; better answers come while one looks at the last. */
export class Nesting {
  readonly #connect: () => Line;
  readonly #keys = new WeakMap<Solution, Key>();
  #line: Line | null = null;
  #ticket = 0;
  #asked: { readonly shown: Solution; readonly key: Key } | null = null;
  #told = $state.raw<(Told & { readonly key: Key }) | null>(null);
  #share = $state<number | null>(null);
  #faults = $state.raw<readonly Fault[]>([]);
  #trouble = $state.raw<WorkerTrouble | null>(null);
  #ending = $state<Ending | null>(null);
  readonly #watch = new SilenceWatch(() => this.#fail({ kind: 'silent' }));

  /** @param connect Starts the worker. */
  constructor(connect: () => Line) {
    this.#connect = connect;
  }

  /** The last answer, also while a new question is being worked at; null before the first. */
  get told(): Told | null {
    return this.#told;
  }

  /** How much of the work is done, 0…1; null while nobody works. */
  get share(): number | null {
    return this.#share;
  }

  /** Why there are no sheets: pointers from the project. */
  get faults(): readonly Fault[] {
    return this.#faults;
  }

  /** What went wrong with the worker itself; null when nothing did. Asking again starts another one. */
  get trouble(): WorkerTrouble | null {
    return this.#trouble;
  }

  /** How the last work ended; null while it goes on. */
  get ending(): Ending | null {
    return this.#ending;
  }

  /** Whether the last answer is of this. */
  isOf(shown: Solution | null): boolean {
    return shown !== null && this.#told !== null && isSame(this.#told.key, this.#keyOf(shown));
  }

  /** Whether the last answer has the parts, stocks and spaces of this, whatever is held in place. */
  isLike(shown: Solution | null): boolean {
    return shown !== null && this.#told?.key.what === this.#keyOf(shown).what;
  }

  /** The sheets of what is shown, to cut from; null where the last answer is of something else, or takes more than there are. */
  sheetsOf(shown: Solution | null): readonly Sheet[] | null {
    const { told } = this;
    return told === null || !this.isOf(shown) || told.value.short.length > 0 ? null : told.value.sheets;
  }

  /** Begins to nest what is shown, unless nothing that matters to it has changed. */
  ask(shown: Solution): void {
    const key = this.#keyOf(shown);
    if (this.#asked !== null && isSame(this.#asked.key, key)) return;
    this.#asked = { shown, key };
    this.#ticket += 1;
    this.#share = 0;
    this.#ending = null;
    this.#trouble = null;
    this.#faults = [];
    this.#watch.wait();
    const { project, layoutIndex } = shown;
    try {
      this.#line ??= this.#connected();
      this.#line.postMessage({ kind: 'nest', ticket: this.#ticket, project, layoutIndex });
    } catch {
      this.#fail({ kind: 'missing' });
    }
  }

  /** Leaves it at the best answer so far: ends the worker, whatever it is at. */
  stop(): void {
    if (this.#share === null) return;
    this.#hangUp();
    this.#end('stopped');
  }

  /** Ends the worker; the next question starts another one. What was found stays. */
  close(): void {
    this.#hangUp();
    if (this.#share !== null) this.#asked = null;
    this.#share = null;
  }

  #hangUp(): void {
    this.#watch.rest();
    if (this.#line === null) return;
    this.#line.onmessage = null;
    this.#line.onerror = null;
    this.#line.terminate();
    this.#line = null;
  }

  #connected(): Line {
    const line = this.#connect();
    line.onmessage = ({ data }) => this.#hear(() => line.read(data));
    line.onerror = (event) => this.#fail(troubleOf(event));
    return line;
  }

  #hear(read: () => Reply): void {
    try {
      const reply = read();
      if (reply.ticket !== this.#ticket || this.#share === null) return;
      this.#watch.wait();
      this.#take(reply);
    } catch (error) {
      this.#fail(broken(error));
    }
  }

  #take(reply: Reply): void {
    switch (reply.kind) {
      case 'better':
        this.#told = this.#asked === null ? null : { ...this.#asked, value: reply.nested };
        return;
      case 'progress':
        this.#share = reply.share;
        return;
      case 'ended':
        this.#end(reply.ending);
        return;
      case 'refused':
        this.#told = null;
        this.#faults = reply.faults;
        this.#end('done');
        return;
      case 'failed':
        this.#fail({ kind: 'broken', message: reply.message });
    }
  }

  #end(ending: Ending): void {
    this.#watch.rest();
    this.#share = null;
    this.#ending = ending;
  }

  #fail(trouble: WorkerTrouble): void {
    this.close();
    this.#asked = null;
    this.#trouble = trouble;
  }

  #keyOf(shown: Solution): Key {
    const known = this.#keys.get(shown);
    if (known !== undefined) return known;
    const { parts, project, layout } = shown;
    const key = {
      what: JSON.stringify([parts, project.stock, cutterOf(project)]),
      how: JSON.stringify(layout.arrangement),
    };
    this.#keys.set(shown, key);
    return key;
  }
}
