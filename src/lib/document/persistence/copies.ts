import { readSnapshot, type Snapshot, type SnapshotBody } from './snapshot.ts';
import type { TextStore } from './storage.ts';
import { done, storageError, type StorageResult } from './storageError.ts';

/**
 * The two copies that the browser keeps of one project. They are written in turn, so the copy before the newest is always
 * whole while the newest is being written.
 */
export const COPIES = [0, 1] as const;
export type CopyIndex = (typeof COPIES)[number];

const PREFIX = 'wedgewright/shelf/';
const KEY = new RegExp(`^${PREFIX}([a-z0-9-]{1,64})/[01]$`);

export const keyOf = (id: string, copy: CopyIndex): string => `${PREFIX}${id}/${copy}`;

/** The id of the project that a key belongs to; null for the key of something else. */
export const idOf = (key: string): string | null => KEY.exec(key)?.[1] ?? null;

export interface Newest {
  readonly body: SnapshotBody;
  readonly stamp: string;
  readonly copy: CopyIndex;
  /** The other copy is damaged: what is here may not be the last that was written. */
  readonly recovered: boolean;
}

/** The newest whole copy of a project. */
export function newestCopy(store: TextStore, id: string): StorageResult<Newest> {
  const snapshots = COPIES.map((index) => ({ index, snapshot: readSnapshot(store.getItem(keyOf(id, index))) }));
  const has = (kind: Snapshot['kind']): boolean => snapshots.some(({ snapshot }) => snapshot.kind === kind);
  if (has('newer')) return storageError('newer');
  const whole = snapshots.flatMap(({ index, snapshot }) =>
    snapshot.kind === 'whole' ? [{ ...snapshot, copy: index }] : [],
  );
  const [newest] = whole.toSorted((one, other) => other.body.revision - one.body.revision);
  if (newest === undefined) return storageError(has('damaged') ? 'damaged' : 'gone');
  const { body, stamp, copy } = newest;
  return done({ body, stamp, copy, recovered: has('damaged') });
}
