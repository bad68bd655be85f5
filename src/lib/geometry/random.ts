/** A seeded source of numbers: the same seed gives the same numbers on every machine, as it uses whole numbers only. */
export interface Random {
  /** From 0 up to, but not with, 1. */
  readonly share: () => number;
  /** A whole number from 0 up to, but not with, `count`. */
  readonly below: (count: number) => number;
}

/** `seed`: 32 bits. A linear counter, well stirred (mulberry32, public domain). */
export function random(seed: number): Random {
  let state = seed >>> 0;
  const share = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return { share, below: (count) => Math.floor(share() * count) };
}

/** A member of a list that is not empty; undefined for one that is. */
export const pick = <Member>(list: readonly Member[], { below }: Random): Member | undefined =>
  list[below(list.length)];
