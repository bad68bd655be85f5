import type { Commas } from '$lib/files/response/columns.ts';
import type { KeptFile, KeptReading } from '$lib/files/response/readKept.ts';
import type { JobClient } from '$lib/workers/client.svelte.ts';

/** One file on its way into the project. */
export interface Waiting {
  /** Tells it from every other one, and a file that is read again from itself. */
  readonly id: number;
  readonly name: string;
  readonly file: File;
  readonly state:
    | { readonly kind: 'waiting' | 'reading'; readonly commas: Commas | null }
    | Exclude<KeptReading, { readonly kind: 'kept' }>
    | ({ readonly kind: 'kept' } & KeptFile);
}

/** More than this is not even fetched from the disk, bytes. */
const MOST_BYTES = 20e6;

/** Files that are read one after the other in the worker, in the order in which they were given. */
export class ResponseQueue {
  #files = $state.raw<readonly Waiting[]>([]);
  #next = 0;
  readonly #client: Pick<JobClient<'response', object>, 'askAnew' | 'cancel'>;

  constructor(client: Pick<JobClient<'response', object>, 'askAnew' | 'cancel'>) {
    this.#client = client;
  }

  get files(): readonly Waiting[] {
    return this.#files;
  }

  add(files: readonly File[]): void {
    const added = files.map((file): Waiting => ({ id: this.#next++, name: file.name, file, state: { kind: 'waiting', commas: null } }));
    this.#files = [...this.#files, ...added];
    this.#begin();
  } // prettier-ignore

  /** Takes a file off the list, also while it is read. */
  drop(id: number): void {
    if (this.#files.some((one) => one.id === id && one.state.kind === 'reading')) this.#client.cancel();
    this.#files = this.#files.filter((one) => one.id !== id);
    this.#begin();
  }

  /** Reads a file again, now that somebody has said what its commas are. */
  answer(id: number, commas: Commas): void {
    this.#put(id, { kind: 'waiting', commas });
    this.#begin();
  }

  /** Takes the worker's answer in, where it is of the file that is read now. */
  take(of: object, reading: KeptReading): void {
    const file = this.#files.find((one) => one === of);
    if (!file) return;
    this.#put(file.id, reading);
    this.#begin();
  }

  #put(id: number, state: Waiting['state']): void {
    this.#files = this.#files.map((one) => (one.id === id ? { ...one, state } : one));
  }

  #begin(): void {
    if (this.#files.some(({ state }) => state.kind === 'reading')) return;
    const next = this.#files.find(({ state }) => state.kind === 'waiting');
    if (next?.state.kind !== 'waiting') return;
    const { commas } = next.state;
    if (next.file.size > MOST_BYTES) {
      this.#refuse(next.id, `expected at most ${MOST_BYTES / 1e6} MB, got ${(next.file.size / 1e6).toFixed(1)} MB`);
      return;
    }
    this.#put(next.id, { kind: 'reading', commas });
    const reading = this.#files.find(({ id }) => id === next.id);
    if (reading) void this.#read(reading, commas);
  }

  async #read(of: Waiting, commas: Commas | null): Promise<void> {
    try {
      const bytes = new Uint8Array(await of.file.arrayBuffer());
      // It may have been taken off the list meanwhile.
      if (this.#files.includes(of)) this.#client.askAnew(of, { bytes, commas });
    } catch {
      if (this.#files.includes(of)) this.#refuse(of.id, 'the file could not be read from the disk: it may have been moved or changed');
    }
  } // prettier-ignore

  #refuse(id: number, message: string): void {
    this.#put(id, { kind: 'refused', message });
    this.#begin();
  }
}
