type Held = Readonly<Record<string, unknown>>;

const isHeld = (value: unknown): value is Held => typeof value === 'object' && value !== null;

/**
 * Whether two JSON values say the same, whatever the order of their keys. A key whose value is undefined counts as
 * absent, as it is in the text.
 */
export function sameJson(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (one === 0 && other === 0) return true;
  if (!isHeld(one) || !isHeld(other) || Array.isArray(one) !== Array.isArray(other)) return false;
  const keys = keysOf(one);
  return (
    keys.length === keysOf(other).length &&
    keys.every((key) => Object.hasOwn(other, key) && sameJson(one[key], other[key]))
  );
}

const keysOf = (held: Held): string[] => Object.keys(held).filter((key) => held[key] !== undefined);
