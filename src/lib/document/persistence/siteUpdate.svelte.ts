import type { RequestToWorker } from './workerRequest.ts';

/** How often the server is asked for a newer build while a page stays open, ms. */
const BETWEEN_ASKS = 3_600_000;

/**
 * Watches for a newer build of the site that the service worker has fetched. It waits until it is asked for: what is open
 * stays as it is.
 */
export class SiteUpdate {
  #waiting = $state.raw<ServiceWorker | null>(null);
  #asked = Date.now();

  /** Whether a newer build than this page's is there. */
  get ready(): boolean {
    return this.#waiting !== null;
  }

  /**
   * Begins to watch; returns what ends it.
   *
   * @param workers undefined where the browser has no service workers, or not on this address.
   * @param files paths of the scripts that this page came with: what tells its build from another.
   */
  attach(workers: ServiceWorkerContainer | undefined, page: Document, files: readonly string[]): () => void {
    if (workers === undefined) return () => undefined;
    const ending = new AbortController();
    const { signal } = ending;
    void workers.ready.then((registration) => {
      if (signal.aborted) return;
      const look = (): Promise<void> => this.#look(registration, files);
      void look();
      registration.addEventListener(
        'updatefound',
        () => registration.installing?.addEventListener('statechange', () => void look(), { signal }),
        { signal },
      );
      page.addEventListener('visibilitychange', () => this.#ask(registration, page), { signal });
    });
    return () => ending.abort();
  }

  /** Lets the newer build take over and says when it has: the page is then to be loaded anew. */
  async take(workers: ServiceWorkerContainer): Promise<void> {
    const waiting = this.#waiting;
    if (waiting === null) return;
    const taken = new Promise((resolve) => workers.addEventListener('controllerchange', resolve, { once: true }));
    waiting.postMessage({ kind: 'take-over' } satisfies RequestToWorker);
    await taken;
  }

  async #look(registration: ServiceWorkerRegistration, files: readonly string[]): Promise<void> {
    const { waiting } = registration;
    // A page that was loaded from the network may be of the build that waits.
    if (waiting !== null && !(await holds(waiting, files))) this.#waiting = waiting;
  }

  #ask(registration: ServiceWorkerRegistration, page: Document): void {
    if (page.visibilityState !== 'visible' || !navigator.onLine || Date.now() - this.#asked < BETWEEN_ASKS) return;
    this.#asked = Date.now();
    // Without an answer nothing is lost: the next visit asks again.
    registration.update().catch(() => undefined);
  }
}

/** Whether all the files belong to the worker's build. */
function holds(worker: ServiceWorker, paths: readonly string[]): Promise<boolean> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => {
      port1.close();
      resolve(data === true);
    };
    worker.postMessage({ kind: 'holds', paths } satisfies RequestToWorker, [port2]);
  });
}
