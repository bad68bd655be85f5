import { sameJson } from '$lib/project/sameJson.ts';

/** What is looked at of a schema: the way it is put together. */
export interface SchemaShape {
  readonly type: string;
  /** Of an object. */
  readonly entries?: Readonly<Record<string, SchemaShape>>;
  /** Of a list. */
  readonly item?: SchemaShape;
  /** Of what may be left out or null. */
  readonly wrapped?: SchemaShape;
  readonly default?: unknown;
}

/**
 * The value without what parsing by the schema would fill in again. What the shape does not explain (an object that is
 * told apart by its rule) stays whole, so parsing always gives the same value back.
 */
export function withoutDefaults(value: unknown, { entries, item, wrapped }: SchemaShape): unknown {
  if (wrapped) return withoutDefaults(value, wrapped);
  if (Array.isArray(value)) return item ? value.map((one) => withoutDefaults(one, item)) : value;
  if (typeof value !== 'object' || value === null) return value;
  if (!entries) return value;
  const kept = Object.entries(value).flatMap(([key, held]) => {
    const shape = entries[key];
    if (shape?.type === 'optional' && sameJson(held, shape.default)) return [];
    return [[key, shape ? withoutDefaults(held, shape) : held]];
  });
  return Object.fromEntries(kept);
}
