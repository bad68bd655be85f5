import { readSlot, type Slot, type SlotBody } from './slot.ts';
import type { TextStore } from './storage.ts';
import { done, storageError, type StorageResult } from './storageError.ts';

/**
 * The two copies that the browser keeps of one project. They are written in turn, so the copy before the newest is always
 * whole while the newest is being written.
 */
export const SLOTS = [0, 1] as const;
export type SlotIndex = (typeof SLOTS)[number];

const PREFIX = 'wedgewright/shelf/';
const KEY = new RegExp(`^${PREFIX}([a-z0-9-]{1,64})/[01]$`);

export const keyOf = (id: string, slot: SlotIndex): string => `${PREFIX}${id}/${slot}`;

/** The id of the project that a key belongs to; null for the key of something else. */
export const idOf = (key: string): string | null => KEY.exec(key)?.[1] ?? null;

export interface Newest {
  readonly body: SlotBody;
  readonly stamp: string;
  readonly slot: SlotIndex;
  /** The other copy is damaged: what is here may not be the last that was written. */
  readonly recovered: boolean;
}

/** The newest whole copy of a project. */
export function newestCopy(store: TextStore, id: string): StorageResult<Newest> {
  const slots = SLOTS.map((index) => ({ index, slot: readSlot(store.getItem(keyOf(id, index))) }));
  const has = (kind: Slot['kind']): boolean => slots.some(({ slot }) => slot.kind === kind);
  if (has('newer')) return storageError('newer');
  const whole = slots.flatMap(({ index, slot }) => (slot.kind === 'whole' ? [{ ...slot, slot: index }] : []));
  const [newest] = whole.toSorted((one, other) => other.body.revision - one.body.revision);
  if (newest === undefined) return storageError(has('damaged') ? 'damaged' : 'gone');
  const { body, stamp, slot } = newest;
  return done({ body, stamp, slot, recovered: has('damaged') });
}
