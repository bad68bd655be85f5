import { GLUE_LINE_MOST } from '$lib/project/glueLine.ts';
import type { Project } from '$lib/project/project.ts';
import type { StandBody } from '$lib/stand/body.ts';

/** How far the finished width may be off, mm: half spans, save for the glue. */
export interface WidthSpread {
  /** Boards across the width, and what each was read with. */
  readonly boards: number;
  readonly read: number;
  /** Where every board is off by the same: n · u. One sheet read for all is such a case. */
  readonly alike: number;
  /** Where each board is off for itself: √n · u. */
  readonly each: number;
  /** Where a pack of ten was read once, and the reading divided by ten: n · u / 10. */
  readonly packed: number;
  /** Glued joints, and what they add beyond the plan's width, at the least and at the most; both 0 once measured. */
  readonly joints: number;
  readonly glue: { readonly least: number; readonly most: number };
}

/** Boards in the pack that is read once. */
const PACK = 10;

/** The spread of a width that is added up of boards and glue; null where it is of one piece. */
export function widthSpread(
  { widths, joints }: Pick<StandBody, 'widths' | 'joints'>,
  { sure, shop }: Pick<Project, 'sure' | 'shop'>,
  glueLine: number,
): WidthSpread | null {
  const boards = widths
    .filter(({ what }) => what === 'layer' || what === 'cheek')
    .reduce((sum, { count }) => sum + count, 0);
  if (boards === 0) return null;
  const glued = joints[0]?.count ?? 0;
  const read = sure.thickness;
  return {
    boards,
    read,
    alike: boards * read,
    each: Math.sqrt(boards) * read,
    packed: (boards * read) / PACK,
    joints: glued,
    glue:
      shop.glue.line === null
        ? { least: -glued * glueLine, most: glued * Math.max(0, GLUE_LINE_MOST - glueLine) }
        : { least: 0, most: 0 },
  };
}

/** From how much narrower to how much wider than planned it may come out at the worst: all boards off alike, and the glue. */
export const widthRange = ({ alike, glue }: WidthSpread): readonly [number, number] => [
  glue.least - alike,
  glue.most + alike,
];
