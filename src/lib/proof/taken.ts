import type { Reading } from '$lib/project/project.ts';

type Whole<One> = One extends unknown ? { readonly [Key in keyof One]: NonNullable<One[Key]> } : never;

/** A reading with all its numbers: somebody has taken it. */
export type Taken = Whole<Reading>;

export const isTaken = (reading: Reading): reading is Taken => Object.values(reading).every((value) => value !== null);

/** The same line with nothing read yet; how sure one is of it, and over what length, stays. */
export function unread(reading: Reading): Reading {
  switch (reading.what) {
    case 'mark':
    case 'corner':
      return { ...reading, x: null, y: null };
    case 'spot':
      return { ...reading, x: null, z: null };
    default:
      return { ...reading, value: null };
  }
}
