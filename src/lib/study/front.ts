/** One candidate of a search: how bad it is by each aim, the less the better, and what it is. */
export interface Member {
  readonly index: number;
  /** −Infinity where nothing can be better. */
  readonly bad: readonly number[];
}

/** More members than this are no choice; the grain is doubled until they are fewer. */
const MOST = 1000;

interface Held<Of> {
  readonly boxes: readonly number[];
  readonly member: Of;
}

/** A front as plain data, to be sent from a worker: what another front of the same grains is merged with. */
export interface Kept<Of extends Member> {
  readonly members: readonly Of[];
  /** How many grains wide its boxes are. */
  readonly coarseness: number;
}

/**
 * The best compromises among candidates: those that no other is at least as good as by every aim. Aims are compared in
 * boxes of a grain each, one candidate a box is kept, and its order does not matter: the same candidates make the same
 * front, however they come and in however many fronts that are merged. No member is dominated by any candidate that was
 * added (Laumanns, Thiele, Deb and Zitzler 2002, "Combining convergence and diversity": boxes and one point in each).
 */
export class Front<Of extends Member> {
  #held: Held<Of>[] = [];
  #coarseness = 1;
  readonly #grains: readonly number[];
  readonly #boxes: number[];

  /** @param grains Of each aim, over 0: the least difference that is one. */
  constructor(grains: readonly number[]) {
    this.#grains = grains;
    this.#boxes = grains.map(() => 0);
  }

  /** In the order of the first aim, then the next ones. */
  get members(): readonly Of[] {
    return this.#held.map(({ member }) => member).sort((a, b) => (this.#isBefore(a, b) ? -1 : 1));
  }

  get kept(): Kept<Of> {
    return { members: this.#held.map(({ member }) => member), coarseness: this.#coarseness };
  }

  /** Whether it would be a member, were it added. */
  admits(candidate: Member): boolean {
    const held = this.#held;
    const boxes = this.#boxesOf(candidate.bad);
    for (let i = 0; i < held.length; i++) {
      const one = held[i];
      if (!one || !covers(one.boxes, boxes)) continue;
      if (same(one.boxes, boxes) && this.#isBefore(candidate, one.member)) continue;
      // What covers this one covers others as well: it is asked first next time.
      held[i] = held[0] ?? one;
      held[0] = one;
      return false;
    }
    return true;
  }

  add(candidate: Of): void {
    if (!this.admits(candidate)) return;
    const boxes = [...this.#boxesOf(candidate.bad)];
    this.#held = this.#held.filter((held) => !covers(boxes, held.boxes));
    this.#held.push({ boxes, member: candidate });
    if (this.#held.length > MOST) this.#coarsen(2 * this.#coarseness);
  }

  /** Takes in the members of another front of the same grains. */
  merge({ members, coarseness }: Kept<Of>): void {
    if (coarseness > this.#coarseness) this.#coarsen(coarseness);
    for (const member of members) this.add(member);
  }

  #coarsen(to: number): void {
    const members = this.#held.map(({ member }) => member);
    this.#coarseness = to;
    this.#held = [];
    for (const member of members) this.add(member);
  }

  /** Written over by the next call. */
  #boxesOf(bad: readonly number[]): readonly number[] {
    // Coarse boxes are made of whole fine ones, so that what a fine box was left out for still covers it.
    for (let aim = 0; aim < bad.length; aim++) {
      this.#boxes[aim] = Math.floor(this.#fine(bad[aim] ?? 0, aim) / this.#coarseness);
    }
    return this.#boxes;
  }

  #fine(bad: number, aim: number): number {
    return Math.floor(bad / (this.#grains[aim] ?? 1));
  }

  /** Whether one is rather kept than another in the same box: by fine boxes, then values, then its number. */
  #isBefore(one: Member, other: Member): boolean {
    for (const grained of [true, false]) {
      for (let aim = 0; aim < one.bad.length; aim++) {
        const [a, b] = [one.bad[aim] ?? 0, other.bad[aim] ?? 0].map((bad) => (grained ? this.#fine(bad, aim) : bad));
        if (a !== undefined && b !== undefined && a !== b) return a < b;
      }
    }
    return one.index < other.index;
  }
}

/** Whether the first is at least as good by every aim. */
function covers(one: readonly number[], other: readonly number[]): boolean {
  for (let aim = 0; aim < one.length; aim++) if ((one[aim] ?? 0) > (other[aim] ?? 0)) return false;
  return true;
}

const same = (one: readonly number[], other: readonly number[]): boolean => one.every((box, aim) => box === other[aim]);
