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
  if (Array.isArray(one) && Array.isArray(other)) return sameList(one, other);
  let more = 0;
  for (const key of Object.keys(one)) {
    if (one[key] === undefined) continue;
    if (!Object.hasOwn(other, key) || !sameJson(one[key], other[key])) return false;
    more += 1;
  }
  for (const key of Object.keys(other)) if (other[key] !== undefined) more -= 1;
  return more === 0;
}

const sameList = (one: readonly unknown[], other: readonly unknown[]): boolean =>
  one.length === other.length && one.every((value, index) => sameJson(value, other[index]));
