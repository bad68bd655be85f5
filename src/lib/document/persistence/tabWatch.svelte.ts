import type { Channel } from './channel.ts';
import type { TabNews } from './tabNews.ts';
import { heard, newTabs, newsOf, type TabMessage, type TabsKnown } from './tabs.ts';

/** Watches for other tabs that have the same project open. */
export class TabWatch {
  #known: TabsKnown;
  readonly #channel: Channel | null;
  readonly #stop: () => void;

  /** @param channel null where tabs cannot speak to each other; the check before each save remains. */
  constructor(channel: Channel | null, tab: string, project: string) {
    this.#channel = channel;
    this.#known = $state.raw(newTabs(tab, project));
    this.#stop = channel?.listen((message) => this.#hear(message)) ?? (() => undefined);
    this.ask();
  }

  get news(): TabNews {
    return newsOf(this.#known);
  }

  /** Another project is open now. */
  turnTo(project: string): void {
    if (project === this.#known.project) return;
    this.#post('left');
    this.#known = newTabs(this.#known.tab, project);
    this.ask();
  }

  /** Asks again who else is there: a tab that has crashed has not said that it left. */
  ask(): void {
    this.#known = { ...this.#known, others: [] };
    this.#post('open');
  }

  /** This tab has saved a change. */
  saved(): void {
    this.#post('saved');
  }

  /** A save has found that another tab was first, whether or not it said so. */
  overtake(): void {
    this.#known = { ...this.#known, conflict: true };
  }

  /** Mine was kept or theirs taken. */
  settle(): void {
    this.#known = { ...this.#known, conflict: false };
  }

  /** The page goes away. */
  leave(): void {
    this.#post('left');
  }

  close(): void {
    this.leave();
    this.#stop();
    this.#channel?.close();
  }

  #hear(message: unknown): void {
    const { known, reply } = heard(this.#known, message);
    this.#known = known;
    if (reply !== null) this.#post(reply);
  }

  #post(kind: TabMessage['kind']): void {
    const { project, tab } = this.#known;
    this.#channel?.post({ kind, project, tab } satisfies TabMessage);
  }
}
