import type { Channel } from '$lib/document/persistence/channel.ts';

/** A line between the tabs of a test: each hears what the others post, as data that went through a copy. */
export class TabLine {
  readonly #hearers = new Set<readonly [owner: Channel, hear: (message: unknown) => void]>();

  join(): Channel {
    const hearers = this.#hearers;
    const stops = new Set<() => void>();
    const channel: Channel = {
      post(message) {
        for (const [owner, hear] of [...hearers]) if (owner !== channel) hear(structuredClone(message));
      },
      listen(hear) {
        const entry = [channel, hear] as const;
        const stop = (): void => void hearers.delete(entry);
        hearers.add(entry);
        stops.add(stop);
        return stop;
      },
      close() {
        for (const stop of stops) stop();
      },
    };
    return channel;
  }
}
