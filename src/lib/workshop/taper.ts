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

/** How far each edge stands out at the large face, and back at the small one, from its finished place, mm. */
export const edgeOffset = (taper: number, thickness: number): number => (thickness / 2) * Math.abs(Math.tan(taper));

/** What the leaning edges do to a stack of slices, mm. */
export interface StackTaper {
  /** Step from face to face at each joint. */
  readonly step: number;
  /** Height of the ridges that the edges make, crest to valley. */
  readonly ridge: number;
  /** From crest to crest, along the stack. */
  readonly pitch: number;
  /** To be sanded off for a flat face; the finished outline lies under it by half a ridge. */
  readonly allowance: number;
  /** To be left standing by the drawing for the sanded face to be the finished one; 0 leaves it half a ridge small. */
  readonly grow: number;
}

/**
 * Slices all the same way up meet with a step at every joint. With every second one turned over, large face meets large
 * face: the steps cancel, and twice as wide ridges as high as the steps remain.
 */
export function stackTaper(taper: number, thickness: number, turnedOver: boolean): StackTaper {
  const ridge = 2 * edgeOffset(taper, thickness);
  return {
    step: turnedOver ? 0 : ridge,
    ridge,
    pitch: ridge === 0 ? 0 : (turnedOver ? 2 : 1) * thickness,
    allowance: ridge,
    grow: ridge / 2,
  };
}

/**
 * How far two edges stand apart that are laid against each other, mm: at the faces where they do not touch. One turned over
 * lies along the other and leaves nothing.
 */
export const jointGap = (taper: number, thickness: number, turnedOver: boolean): number =>
  turnedOver ? 0 : 4 * edgeOffset(taper, thickness);
