import { sameJson } from '$lib/project/sameJson.ts';

/** What is looked at of a schema: the way it is put together. */
export interface SchemaShape {
  readonly type: string;
  /** Of an object. */
  readonly entries?: Readonly<Record<string, SchemaShape>>;
  /** Of a list. */
  readonly item?: SchemaShape;
  /** Of one of several objects told apart by the word under a key: that key, and the objects. */
  readonly key?: string;
  readonly options?: readonly unknown[];
  /** Of a word that is the only one. */
  readonly literal?: unknown;
  /** Of what may be left out or null. */
  readonly wrapped?: SchemaShape;
  readonly default?: unknown;
}

/**
 * The value without what parsing by the schema would fill in again. What the shape does not explain stays whole, so parsing
 * always gives the same value back.
 */
export function withoutDefaults(value: unknown, shape: SchemaShape): unknown {
  const { item, wrapped } = shape;
  if (wrapped) return withoutDefaults(value, wrapped);
  if (Array.isArray(value)) return item ? value.map((one) => withoutDefaults(one, item)) : value;
  if (typeof value !== 'object' || value === null) return value;
  const entries = shape.entries ?? chosen(value, shape)?.entries;
  if (!entries) return value;
  const kept = Object.entries(value).flatMap(([key, held]) => {
    const shape = entries[key];
    if (shape?.type === 'optional' && sameJson(held, shape.default)) return [];
    return [[key, shape ? withoutDefaults(held, shape) : held]];
  });
  return Object.fromEntries(kept);
}

/** Which of several objects a value is. */
function chosen(value: object, { key, options }: SchemaShape): SchemaShape | undefined {
  const word: unknown = key === undefined ? undefined : Object.entries(value).find(([name]) => name === key)?.[1];
  return key === undefined
    ? undefined
    : options?.filter(isShape).find(({ entries }) => entries?.[key]?.literal === word);
}

const isShape = (option: unknown): option is SchemaShape =>
  typeof option === 'object' && option !== null && 'type' in option;
