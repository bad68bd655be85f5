import type { Reading } from '$lib/project/project.ts';

type Whole<One> = One extends unknown ? { readonly [Key in keyof One]: NonNullable<One[Key]> } : never;

/** A reading with all its numbers: somebody has taken it. */
export type Taken = Whole<Reading>;

export const isTaken = (reading: Reading): reading is Taken => Object.values(reading).every((value) => value !== null);
