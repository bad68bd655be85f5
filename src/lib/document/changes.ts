import { pointerTo } from '$lib/project/fault.ts';
import { sameJson } from '$lib/project/sameJson.ts';
import { placeOf } from './fields.ts';
import { parentOf } from './pointer.ts';

/**
 * Where two documents differ: pointers of the smallest parts that do, in the order of the documents. A list that grew or
 * shrank is one part.
 */
export function changedPointers(before: unknown, after: unknown): readonly string[] {
  return changed(before, after, '');
}

/** What only tells that a value was entered. */
const RECORD = /\/entered(\/\d+)?$/;

/** The same, for people: that a value was entered is told only where nothing else changed, as when it is confirmed as it stands. */
export function changedValues(before: unknown, after: unknown): readonly string[] {
  const all = changedPointers(before, after);
  const values = all.filter((pointer) => !RECORD.test(pointer));
  return values.length > 0 ? values : all;
}

function changed(before: unknown, after: unknown, at: string): readonly string[] {
  if (sameJson(before, after)) return [];
  if (!isHeld(before) || !isHeld(after) || Array.isArray(before) !== Array.isArray(after)) return [at];
  if (Array.isArray(before) && Array.isArray(after) && before.length !== after.length) return [at];
  const keys = new Set([...Object.keys(before), ...Object.keys(after)]);
  return [...keys].flatMap((key) => changed(before[key], after[key], at + pointerTo(key)));
}

type Held = Readonly<Record<string, unknown>>;

const isHeld = (value: unknown): value is Held => typeof value === 'object' && value !== null;

/** What the form has no fields for. */
const own: readonly (readonly [pattern: RegExp, label: string])[] = [
  [/^\/title$/, 'Title'],
  [/^\/layouts$/, 'Layouts'],
  [/^\/layouts\/\d+\/name$/, 'Layout name'],
  [/^\/display(\/|$)/, 'Units'],
  [RECORD, 'Value confirmed'],
];

/**
 * What a change of a document was, in the words of the form: `Listener, ear height`. Several values at once are called
 * by what holds them all (two marks: `Placement`), or by the first where nothing smaller than a layout does.
 */
export function changeLabel(before: unknown, after: unknown): string {
  const pointers = changedValues(before, after);
  const [first = ''] = pointers;
  const common = pointers.reduce(commonPointer, first);
  const pointer = /^(\/layouts\/\d+|\/layouts)?$/.test(common) && !pointers.includes(common) ? first : common;
  return own.find(([pattern]) => pattern.test(pointer))?.[1] ?? placeOf(pointer);
}

function commonPointer(one: string, other: string): string {
  for (let at: string | null = one; at !== null; at = parentOf(at)) {
    if (other === at || other.startsWith(`${at}/`)) return at;
  }
  return '';
}
