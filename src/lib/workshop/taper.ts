/**
 * The taper of a beam: the lean of a cut edge from plumb, radians, positive where the kerf is wider at the face that the
 * beam enters. The kerf is its mean over the thickness, so that halfway through, a part has its finished size. A part is
 * then smaller at the beam's face and larger at the far one; a hole the other way round.
 */

/** The lean of each side from the kerf's width at both faces, mm: atan((entry − exit) / 2t). */
export const taperFrom = (entry: number, exit: number, thickness: number): number =>
  Math.atan2(entry - exit, 2 * thickness);

/** Which face of a part is its large one: for a hole it is the other. */
export const largeFace = (taper: number): 'entry' | 'exit' | null => (taper > 0 ? 'exit' : taper < 0 ? 'entry' : null);
