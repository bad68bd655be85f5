/** Why a typed text is no value, and which stretch of it is meant. Thrown and caught inside the reading of an entry. */
export class EntryRefusal extends Error {
  /** From this character, counted from 0, up to but not including that one. */
  readonly from: number;
  readonly to: number;

  constructor(message: string, from: number, to: number) {
    super(message);
    this.from = from;
    this.to = to;
  }
}
