/** Whether a cabinet stays where it is put on its slope, with nothing but friction to hold it. Radians. */
export interface Slide {
  /** Of the stand's top, 0 or more. */
  readonly slope: number;
  /** The slope on which it would just start: atan μ. */
  readonly frictionAngle: number;
  /** Friction angle less slope: also the tilt of the desk, down the slope, that starts it. Negative: it slides. */
  readonly margin: number;
  /** The coefficient of friction it takes: tan of the slope. */
  readonly frictionNeeded: number;
}

export function slideOf(tilt: number, friction: number): Slide {
  const slope = Math.abs(tilt);
  const frictionAngle = Math.atan(friction);
  return { slope, frictionAngle, margin: frictionAngle - slope, frictionNeeded: Math.tan(slope) };
}

/** What a stop has to hold back of a weight (N) that friction does not, along the slope; N, 0 when friction holds it. */
export const stopLoad = ({ slope, frictionAngle, margin }: Slide, weight: number): number =>
  margin >= 0 ? 0 : (weight * Math.sin(slope - frictionAngle)) / Math.cos(frictionAngle);

/**
 * The horizontal force, N, that starts a weight (N) sliding: down the slope W·tan(φ − θ), up it W·tan(φ + θ), across it
 * W·√((tan φ·cos θ)² − sin² θ); 0 when it slides by itself, null when no push up the slope ever moves it.
 */
export function slidingForce({ slope, frictionAngle, margin }: Slide, weight: number, way: 'down' | 'up' | 'across') {
  if (margin <= 0 && way !== 'up') return 0;
  switch (way) {
    case 'down':
      return weight * Math.tan(margin);
    case 'up':
      return slope + frictionAngle < Math.PI / 2 ? weight * Math.tan(slope + frictionAngle) : null;
    case 'across':
      return weight * Math.sqrt((Math.tan(frictionAngle) * Math.cos(slope)) ** 2 - Math.sin(slope) ** 2);
  }
}
