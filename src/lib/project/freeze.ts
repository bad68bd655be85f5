/** Freezes a value and all it holds. Walks with a list of its own, so depth cannot exhaust the stack. */
export function deepFreeze<Value>(value: Value): Value {
  const waiting: unknown[] = [value];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (typeof next !== 'object' || next === null || Object.isFrozen(next)) continue;
    Object.freeze(next);
    waiting.push(...Object.values(next).filter((held) => typeof held === 'object' && held !== null));
  }
  return value;
}
