import type { StandSettings } from '$lib/project/project.ts';
import type { Span } from './span.ts';

/** The friction between two faces: its coefficient, from the least to the most that it may be, and what makes it. */
export interface Grip<By extends string> {
  readonly friction: Span;
  readonly by: By | 'wood';
}

/** Most that is measured of dry wood on wood; a drive engineering guide. */
const WOOD_MOST = 0.75;

/** Under the cabinet: the pad's where one lies there whose friction is stated, else that of the bare faces. */
export const gripUnderCabinet = (settings: StandSettings): Grip<'pad'> =>
  settings.pad > 0 && settings.padFriction !== null
    ? stated(settings.padFriction, 'pad')
    : { friction: bare(settings), by: 'wood' };

/** Under the stand: the feet's where there are some whose friction is stated, else that of the bare faces. */
export const gripUnderStand = (settings: StandSettings): Grip<'feet'> =>
  settings.feet > 0 && settings.feetFriction !== null
    ? stated(settings.feetFriction, 'feet')
    : { friction: bare(settings), by: 'wood' };

const stated = <By extends string>(friction: number, by: By): Grip<By> => ({
  friction: { least: friction, most: friction },
  by,
});

const bare = ({ friction, frictionMost }: StandSettings): Span => ({
  least: friction,
  most: frictionMost ?? Math.max(friction, WOOD_MOST),
});
