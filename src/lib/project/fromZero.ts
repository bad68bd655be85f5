import type { NumberField } from './fields/field.ts';

/**
 * A length of which people give what it is over another one: of a wall's distance from the origin the gap to the desk. `zero`
 * is what the project holds where they give 0, mm.
 */
export const fieldFrom = (field: NumberField, zero: number): NumberField =>
  zero === 0 ? field : { ...field, min: Math.max(0, field.min - zero), max: field.max - zero };

/** As people give it; what is no number stays. */
export const shownFrom = (value: unknown, zero: number): unknown =>
  typeof value === 'number' && zero !== 0 ? withoutDust(value - zero) : value;

/** As the project holds it; what is no number stays. */
export const heldFrom = (value: unknown, zero: number): unknown =>
  typeof value === 'number' && zero !== 0 ? value + zero : value;

/** What a difference of two lengths gathers behind the ninth decimal nobody typed, mm. */
export const withoutDust = (value: number): number => Math.round(value * 1e9) / 1e9;
