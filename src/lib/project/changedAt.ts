type Held = Readonly<Record<string, unknown>>;

export const isHeld = (value: unknown): value is Held => typeof value === 'object' && value !== null;

/** Which steps into a list may be gone. */
type Admits = (list: readonly unknown[], step: string) => boolean;

export const isIndex: Admits = (list, step) => /^(0|[1-9]\d*)$/.test(step) && Number(step) < list.length;
export const isIndexOrEnd: Admits = (list, step) => isIndex(list, step) || step === String(list.length);

/**
 * A plain JSON value with something changed at the end of some steps into it; a missing last key is added. Nothing is
 * changed in place: what lies off the way is shared with the old value. Where the way does not exist it comes back as it was.
 *
 * @param change Puts in what has the old one's type, or the whole no longer has its own.
 */
export function changedAt<Of>(
  value: Of,
  steps: readonly string[],
  change: (old: unknown) => unknown,
  admits: Admits = isIndex,
): Of {
  return changed(value, steps, change, admits) as Of;
}

function changed(value: unknown, steps: readonly string[], change: (old: unknown) => unknown, admits: Admits): unknown {
  const [step, ...rest] = steps;
  if (step === undefined) return change(value);
  if (!isHeld(value)) return value;
  if (Array.isArray(value)) {
    if (!admits(value, step)) return value;
    const list: unknown[] = [...value];
    list[Number(step)] = changed(list[Number(step)], rest, change, admits);
    return list;
  }
  const old = Object.hasOwn(value, step) ? value[step] : undefined;
  if (old === undefined && rest.length > 0) return value;
  return { ...value, [step]: changed(old, rest, change, admits) };
}
