import { degrees } from '$lib/geometry/angle.ts';
import type { Built, Recorded, SideName } from '$lib/project/project.ts';
import type { Act } from './mend.ts';
import type { SideProof } from './prove.ts';
import { unread } from './taken.ts';

type Done = Recorded['done'][number];

/** An act as the record keeps it: mm and degrees. */
export const doneOf = (act: Act): Done => {
  switch (act.act) {
    case 'shim':
      return { act: 'shim', where: act.where, by: act.by };
    case 'turn':
      return { act: 'turn', by: degrees(act.by) };
    case 'move':
      return { act: 'move', ...act.by };
  }
};

/** The slope, turn and height that a stand was made for: degrees and mm. */
export type MadeFor = Recorded['stand'];

/**
 * The readings of one stand put into the record with what was done after them, and their lines empty for the next ones. The
 * other stand's stay. Date and note were of these readings: they go into the record with them.
 *
 * @param acts Null: it was left as it is.
 * @param date Where nobody has written one.
 */
export function withRecord(
  built: Built,
  { side, known, pass, spread }: SideProof,
  stand: MadeFor,
  acts: readonly Act[] | null,
  date: string,
): Built {
  const { readings } = built.sides[side];
  const entry: Recorded = {
    side,
    date: built.date ?? date,
    note: built.note,
    readings,
    stand,
    pass: known ? { right: pass.right, over: pass.over, sure: spread.pass.major } : null,
    done: acts?.map(doneOf) ?? [{ act: 'leave' }],
  };
  return {
    date: null,
    note: null,
    sides: { ...built.sides, [side]: { readings: readings.map(unread) } },
    record: [...built.record, entry],
    heard: built.heard,
  };
}

/** The record of one stand, oldest first, each with its place in the file's list. */
export const recordOf = ({ record }: Built, side: SideName): readonly (Recorded & { readonly place: number })[] =>
  record.flatMap((entry, place) => (entry.side === side ? [{ ...entry, place }] : []));
