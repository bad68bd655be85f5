import type { Measure } from '$lib/study/measure.ts';

/** How finely each unit is told in tables: finer than anybody can set or hear it. */
const decimals: Record<Measure['unit'], number> = { '°': 3, mm: 2, µs: 1, dB: 2, kg: 3, '%': 2, '': 0 };

export const decimalsOf = ({ unit }: Pick<Measure, 'unit'>): number => decimals[unit];

/** `miss (mm)`: the head of a column. */
export const measureTitle = ({ name, unit }: Measure): string => (unit === '' ? name : `${name} (${unit})`);

/** Values with what they are, as documents have them. */
export const valuesDocument = (values: Readonly<Record<string, number | null>>, by: readonly Measure[]) =>
  Object.fromEntries(
    by.map(({ name, unit, better }) => [name, { value: values[name] ?? null, unit, better }] as const),
  );
