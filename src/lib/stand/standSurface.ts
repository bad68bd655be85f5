import type { Point, Vec3 } from '$lib/geometry/point.ts';

/**
 * The room for wood between the desk and the cabinet's bottom, seen across its width: `across` is mm from the stand's
 * middle, positive outboard; u is mm back from the mark, z mm over the desk.
 */
export interface StandSurface {
  /** The finished side view through the middle, from the base's front corner, counter-clockwise. */
  readonly outline: readonly Point[];
  /** Heights of the finished wood at the middle's front and rear ends, from its base up to the line of its top. */
  readonly frontHeight: number;
  readonly rearHeight: number;
  /** What a layer between two places across is cut to: it never leaves a gap under the cabinet. */
  readonly layer: (from: number, to: number) => Section;
  /** The section at one place, and the lowest of all within half the width on each side. */
  readonly section: (across: number) => Section;
  /** z of the wood's base; and of its top, at the place. */
  readonly base: number;
  readonly top: (across: number, u: number) => number;
  /** Rise of the top for each mm outboard, and for each mm back. */
  readonly slope: { readonly across: number; readonly along: number };
  /** Corners of the base on the desk, desk frame, counter-clockwise from the front corner on the listener's right. */
  readonly footprint: (width: number) => readonly Point[];
  /** Where the cabinet lies on it, desk frame; null when that is its whole depth, and its width or the stand's. */
  readonly contact: (width: number) => readonly Point[] | null;
  /** A place in the desk frame. */
  readonly at: (across: number, u: number, z: number) => Vec3;
}

/** A section of the wood, counter-clockwise from the base's front corner. */
export interface Section {
  readonly slice: readonly Point[];
  /** The slice without its stop: base front, base rear, top rear, top front; its ends parallel. */
  readonly core: readonly Point[];
}
