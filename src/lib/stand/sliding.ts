import type { Span } from './span.ts';

/** Whether a cabinet stays where it is put on its slope, with nothing but friction, and a stop if there is one, to hold it. Radians. */
export interface Slide {
  /** Of the stand's top, 0 or more. */
  readonly slope: number;
  readonly friction: Span;
  /** The slope on which it would just start, with the least friction: atan μ. */
  readonly frictionAngle: number;
  /** Friction angle less slope: also the tilt of the desk, down the slope, that starts it. Negative: it slides. */
  readonly margin: number;
  /** The coefficient of friction it takes: tan of the slope. */
  readonly frictionNeeded: number;
  /** Whether a stop keeps it from sliding down the slope. */
  readonly stop: boolean;
  /**
   * The steepest plane on which it stays, whichever way that is turned, with the least and with the most friction: the
   * margin, or with a stop the tilt that starts it sideways along the stop. A level push of so much of its weight as the
   * tangent of this starts it too, for push and weight together lean as the weight alone does on the plane.
   */
  readonly survives: Span;
}

export function slideOf(tilt: number, friction: Span, stop: boolean): Slide {
  const slope = Math.abs(tilt);
  const stays = (one: number): number => (stop ? alongStop(slope, one) : Math.atan(one) - slope);
  const frictionAngle = Math.atan(friction.least);
  return {
    slope,
    friction,
    frictionAngle,
    margin: frictionAngle - slope,
    frictionNeeded: Math.tan(slope),
    stop,
    survives: { least: stays(friction.least), most: stays(friction.most) },
  };
}

/**
 * A stop takes what pulls down the slope, so friction holds only what pulls along the stop. On a plane of β falling at ψ
 * from the slope's own fall it slides when sin β·sin ψ = μ·(cos β·cos θ − sin β·cos ψ·sin θ); the least β is at
 * tan ψ = 1/(μ·sin θ): a plane that falls a little with the slope, which takes load off the slope.
 */
const alongStop = (slope: number, friction: number): number =>
  Math.atan((friction * Math.cos(slope)) / Math.hypot(1, friction * Math.sin(slope)));

/** What a stop has to hold back of a weight (N) that friction does not, along the slope; N, 0 when friction holds it. */
export const stopLoad = (
  { slope, frictionAngle, margin }: Pick<Slide, 'slope' | 'frictionAngle' | 'margin'>,
  weight: number,
): number => (margin >= 0 ? 0 : (weight * Math.sin(slope - frictionAngle)) / Math.cos(frictionAngle));

/** The least level push, N, that starts a weight (N) sliding, whatever its direction; 0 when it slides by itself. */
export const leastPush = ({ survives }: Pick<Slide, 'survives'>, weight: number): number =>
  weight * Math.tan(Math.max(0, survives.least));

/**
 * The level push, N, that starts a weight (N) sliding, with the least friction: down the slope W·tan(φ − θ), up it
 * W·tan(φ + θ), across it W·√((tan φ·cos θ)² − sin² θ), or W·tan φ·cos θ along a stop; 0 when it slides by itself, null
 * when a stop keeps it or no push up the slope ever moves it.
 */
export function slidingForce(
  { slope, frictionAngle, margin, stop }: Slide,
  weight: number,
  way: 'down' | 'up' | 'across',
) {
  if (stop && way === 'down') return null;
  if (stop && way === 'across') return weight * Math.tan(frictionAngle) * Math.cos(slope);
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
