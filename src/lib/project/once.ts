/** A value that is worked out when it is first asked for, and kept: for what few of many things are ever asked. */
export function once<Value>(work: () => Value): () => Value {
  let known: { readonly value: Value } | null = null;
  return () => (known ??= { value: work() }).value;
}
