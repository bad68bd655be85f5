import { vec3, type Point } from '$lib/geometry/point.ts';
import type { BuildRequest, Stance } from './buildRequest.ts';
import { NO_SKIN, type Skin } from './cover.ts';
import { footprintOf } from './footprint.ts';
import type { StandSurface } from './standSurface.ts';
import { built, type Outcome } from './outcome.ts';
import { profileOf } from './profile.ts';

/** The surface of a stand that is turned with its cabinet: every section is the same. Refused as the profile is. */
export function turnedSurface(
  { stance, speaker, settings }: Pick<BuildRequest, 'stance' | 'speaker' | 'settings'>,
  skin: Skin = NO_SKIN,
): Outcome<StandSurface> {
  const profile = profileOf(settings, speaker.depth, stance.tilt, stance.lift, skin);
  if (!profile.ok) return profile;
  const { outline, slice, core, frontHeight, rearHeight } = profile.value;
  const section = { slice, core };
  const [baseFront = [0, 0], , topRear = [0, 0], topFront = [0, 0]] = core;
  const along = (topRear[1] - topFront[1]) / (topRear[0] - topFront[0]);
  return built({
    outline,
    frontHeight,
    rearHeight,
    layer: () => section,
    section: () => section,
    base: baseFront[1],
    top: (_, u) => topFront[1] + along * (u - topFront[0]),
    slope: { across: 0, along },
    footprint: (width) => footprintOf(stance.mark, stance.toe, stance.side, baseOf(outline), width),
    contact: () => null,
    at: (across, u, z) => turnedPlace(stance, across, u, z),
  });
}

/** u of the base's front and rear edge: an outline begins with them. */
const baseOf = ([front, rear]: readonly Point[]): readonly [number, number] => [front?.[0] ?? 0, rear?.[0] ?? 0];

function turnedPlace({ mark, toe, side }: Stance, across: number, u: number, z: number) {
  const mirror = side === 'right' ? 1 : -1;
  const [sin, cos] = [Math.sin(toe), Math.cos(toe)];
  return vec3(mark.x + mirror * (u * sin + across * cos), mark.y + u * cos - across * sin, mark.z + z);
}
