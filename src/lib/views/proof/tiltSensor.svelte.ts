import { phoneLevel, type PhoneLevel } from '$lib/proof/phoneLevel.ts';

/** Where the reading of a phone's tilt stands. */
export type TiltState =
  | { readonly kind: 'idle' }
  | { readonly kind: 'asking' }
  | { readonly kind: 'first' | 'second' }
  | { readonly kind: 'turn' }
  | { readonly kind: 'read'; readonly level: PhoneLevel }
  /** Somebody, or the system, has said no; or nothing comes. */
  | { readonly kind: 'refused' | 'missing' };

/** So many readings are one: half a second or so. */
const ENOUGH = 30;
/** How long to wait for the first of them, ms: a sensor that is there answers at once. */
const PATIENCE = 3000;

/** Safari asks before it tells; others have no such question. */
interface Asks {
  readonly requestPermission: () => Promise<unknown>;
}
const asks = (events: object): events is Asks =>
  'requestPermission' in events && typeof events.requestPermission === 'function';

/** Reads how a phone lies, one way round and then the other. */
export class TiltSensor {
  readonly #where: Window;
  #state = $state.raw<TiltState>({ kind: 'idle' });
  #shown: number[] = [];
  #first: readonly number[] = [];
  #waiting: ReturnType<typeof setTimeout> | undefined;

  constructor(where: Window) {
    this.#where = where;
  }

  get state(): TiltState {
    return this.#state;
  }

  /** By a press: browsers let nobody ask otherwise. */
  async begin(): Promise<void> {
    this.stop();
    const events: unknown = Reflect.get(this.#where, 'DeviceOrientationEvent');
    if (typeof events === 'function' && asks(events)) {
      this.#state = { kind: 'asking' };
      const answer = await events.requestPermission().catch(() => 'denied');
      if (answer !== 'granted') {
        this.#state = { kind: 'refused' };
        return;
      }
    }
    this.#first = [];
    this.#listen('first');
  }

  /** It has been turned round. */
  again(): void {
    this.#listen('second');
  }

  /** Stops listening, wherever it stands. */
  stop(): void {
    clearTimeout(this.#waiting);
    this.#where.removeEventListener('deviceorientation', this.#take);
    this.#state = { kind: 'idle' };
  }

  #listen(kind: 'first' | 'second'): void {
    this.#shown = [];
    this.#state = { kind };
    this.#where.addEventListener('deviceorientation', this.#take);
    this.#waiting = setTimeout(() => {
      this.stop();
      this.#state = { kind: 'missing' };
    }, PATIENCE);
  }

  /** `beta` is how steep the phone's long side is, its upper end high positive, however it is turned about that side. */
  readonly #take = ({ beta }: DeviceOrientationEvent): void => {
    if (beta === null) return;
    clearTimeout(this.#waiting);
    this.#shown.push(beta);
    if (this.#shown.length < ENOUGH) return;
    this.#where.removeEventListener('deviceorientation', this.#take);
    if (this.#state.kind === 'first') {
      this.#first = this.#shown;
      this.#state = { kind: 'turn' };
    } else this.#state = { kind: 'read', level: phoneLevel(this.#first, this.#shown) };
  };
}
