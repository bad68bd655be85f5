import type { Circle, Contour, Path } from '$lib/geometry/contour.ts';

/**
 * One thing to cut from sheet, at finished size: no kerf in it. Origin at the lower left of its bounding box, x right,
 * y up, mm.
 */
export interface Part {
  /** Unique in the project; also the stem of its file names. */
  readonly name: string;
  /** Name of the stock it is cut from, and that stock's measured thickness. */
  readonly stock: string;
  readonly thickness: number;
  /** How many of it the layout needs. */
  readonly quantity: number;
  /** Counter-clockwise; cut round the part. */
  readonly outside: Path;
  /** Clockwise paths, and circles; cut inside the part. */
  readonly inside: readonly (Path | Circle)[];
  /** Engraved or drawn, not cut: centre lines and the like. */
  readonly mark: readonly Contour[];
  /** Lettering that goes with the marks: see `labelsOf`. */
  readonly labels: readonly PartLabel[] | NameLabel;
}

/**
 * Its name, wherever there is room: found by whoever writes it, and not with every plan. `front`: seen from the side, its
 * front at the left, which is said as well.
 */
export type NameLabel = 'name' | 'front and name';

/** A line of single-stroke lettering on a part. */
export interface PartLabel {
  readonly text: string;
  /** Of a capital letter, mm. */
  readonly height: number;
  /** Middle of the line, on its baseline, in the part's frame. */
  readonly x: number;
  readonly y: number;
}

/** One copy of a part on a sheet: the part turned counter-clockwise about its origin by `turn`, then moved. */
export interface Placement {
  readonly part: string;
  /** Where the part's own origin comes to lie, mm from the sheet's lower left. */
  readonly x: number;
  readonly y: number;
  /** Radians, counter-clockwise. */
  readonly turn: number;
}

/** One sheet with its parts. */
export interface Sheet {
  readonly stock: string;
  /** 1, 2, 3… among the whole sheets of its stock, or among the stock's offcuts. */
  readonly number: number;
  /** Whether this is one of the stock's offcuts. Left out for a whole sheet. */
  readonly offcut?: boolean;
  readonly width: number;
  readonly height: number;
  readonly placements: readonly Placement[];
  /** Area of the finished parts over the area of the sheet, 0…1. */
  readonly fill: number;
}

/** What a sheet is called, also in the names of its files: `MDF 3 mm-2`, `MDF 3 mm-offcut-1`. */
export const sheetName = ({ stock, number, offcut = false }: Sheet): string =>
  `${stock}-${offcut ? 'offcut-' : ''}${number}`;
