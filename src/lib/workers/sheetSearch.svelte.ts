import { pointerTo, type Fault } from '$lib/project/fault.ts';
import type { Plan } from '$lib/solution/document.ts';
import { cutterOf } from '$lib/workshop/beam.ts';
import { unmetBy } from '$lib/workshop/nesting/unmet.ts';
import type { Nested } from '$lib/workshop/nesting/nest.ts';
import type { Sheet } from '$lib/workshop/part.ts';
import { JobClient, type Retriable, type StartWorker } from './client.svelte.ts';
import type { WorkerFailure } from './failure.ts';

/** An arrangement, and what it is of. */
export interface Found {
  readonly of: Plan;
  readonly nested: Nested;
}

/** All that sheets depend on: what is cut from what, and how it is to lie. */
interface Key {
  readonly what: string;
  readonly how: string;
}

const isSame = (a: Key, b: Key): boolean => a.what === b.what && a.how === b.how;

/** How the parts lie on their sheets: worked out in a worker, asked anew only where something changes that they depend on. */
export class SheetSearch implements Retriable {
  readonly #client: JobClient<'sheets'>;
  readonly #keys = new WeakMap<Plan, Key>();
  #users = 0;
  #cancelled = $state(false);

  constructor(start: StartWorker) {
    this.#client = new JobClient('sheets', start);
  }

  /** The best so far, also while a new question is being worked at; null where there is none. */
  get found(): Found | null {
    const { answer } = this.#client;
    return answer?.value.ok ? { of: answer.of, nested: answer.value.value } : null;
  }

  /** How much of the search is done, 0…1; null while none is under way. */
  get share(): number | null {
    return this.#client.share;
  }

  get failure(): WorkerFailure | null {
    return this.#client.failure;
  }

  /** Whether the last search was cancelled before its end. */
  get cancelled(): boolean {
    return this.#cancelled;
  }

  /** Whether the last answer is of this, be it final or not. */
  isOf(shown: Plan | null): boolean {
    const { answer } = this.#client;
    return shown !== null && answer !== null && isSame(this.#keyOf(answer.of), this.#keyOf(shown));
  }

  /** Whether the last answer has the parts, stocks and spaces of this, whatever is locked in place. */
  isLike(shown: Plan | null): boolean {
    const { found } = this;
    return shown !== null && found !== null && this.#keyOf(found.of).what === this.#keyOf(shown).what;
  }

  /** Whether the search for this has come to its end. */
  isFinished(shown: Plan | null): boolean {
    return this.isOf(shown) && this.#client.answer?.final === true;
  }

  /**
   * The sheets of what is shown, to make files from; null until the search for them has come to its end, and where they are
   * not as the project wants them (`faultsOf`).
   */
  sheetsOf(shown: Plan | null): readonly Sheet[] | null {
    const { found } = this;
    return found !== null && this.isFinished(shown) && this.faultsOf(shown).length === 0 ? found.nested.sheets : null;
  }

  /** Why nothing can be cut, once the search for what is shown has come to its end. */
  faultsOf(shown: Plan | null): readonly Fault[] {
    const { answer } = this.#client;
    if (shown === null || answer === null || !this.isFinished(shown)) return [];
    if (!answer.value.ok) return answer.value.faults;
    return unmetBy(answer.value.value, pointerTo('layouts', shown.layoutIndex, 'arrangement'));
  }

  /** Begins to search for what is shown, unless nothing has changed that sheets depend on. */
  ask(shown: Plan): void {
    const { asked } = this.#client;
    if (asked !== null && isSame(this.#keyOf(asked), this.#keyOf(shown))) return;
    this.#cancelled = false;
    this.#client.ask(shown, { project: shown.project, layoutIndex: shown.layoutIndex });
  }

  retry(): void {
    this.#client.retry();
  }

  /** Ends the search, whatever it is at, until something changes. What was found stays. */
  cancel(): void {
    this.#cancelled = true;
    this.#client.cancel();
  }

  /** The same, where somebody asks again at once, or looks elsewhere. */
  stop(): void {
    this.#client.cancel();
  }

  /**
   * Says that somebody looks at the sheets. Returns what says that they no longer do: once nobody does, the search is ended,
   * unless the next page looks at them.
   */
  use(): () => void {
    this.#users += 1;
    return () => {
      this.#users -= 1;
      setTimeout(() => {
        if (this.#users === 0) this.stop();
      });
    };
  }

  #keyOf(shown: Plan): Key {
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
