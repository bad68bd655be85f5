/** Least time between two messages, ms: a screen reader that is interrupted says nothing at all. */
const PAUSE = 500;

/** Messages for a polite live region: of those that come too fast only the last is said. */
export class Announcer {
  #said = $state('');
  #waiting: string | null = null;
  #timer: ReturnType<typeof setTimeout> | null = null;

  get said(): string {
    return this.#said;
  }

  say(message: string): void {
    this.#waiting = message;
    this.#timer ??= setTimeout(() => {
      this.#timer = null;
      this.#said = this.#waiting ?? '';
    }, PAUSE);
  }

  /** Says nothing more. */
  stop(): void {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
  }
}
