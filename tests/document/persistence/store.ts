import type { TextStore } from '$lib/document/persistence/storage.ts';

/** A store as a browser has it, with the ways in which browsers fail. */
export class FakeStore implements TextStore {
  readonly #held = new Map<string, string>();
  /** Characters that fit, keys included. */
  room = Infinity;
  /** Every use throws, as with cookies blocked. */
  forbidden = false;
  /** Writes are taken and dropped. */
  forgetful = false;

  get length(): number {
    this.#check();
    return this.#held.size;
  }

  key(index: number): string | null {
    this.#check();
    return [...this.#held.keys()][index] ?? null;
  }

  clear(): void {
    this.#held.clear();
  }

  getItem(key: string): string | null {
    this.#check();
    return this.#held.get(key) ?? null;
  }

  setItem(key: string, value: string): void {
    this.#check();
    if (this.forgetful) return;
    const before = this.#held.get(key);
    const after = this.used - (before === undefined ? 0 : key.length + before.length) + key.length + value.length;
    if (after > this.room) throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
    this.#held.set(key, value);
  }

  removeItem(key: string): void {
    this.#check();
    this.#held.delete(key);
  }

  get used(): number {
    return [...this.#held].reduce((sum, [key, value]) => sum + key.length + value.length, 0);
  }

  get everything(): Readonly<Record<string, string>> {
    return Object.fromEntries(this.#held);
  }

  #check(): void {
    if (this.forbidden) throw new DOMException('The operation is insecure.', 'SecurityError');
  }
}
