import { offsetEdges } from '$lib/geometry/offsetEdges.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { StandSettings } from '$lib/project/project.ts';
import { built, noAnswer, type Outcome } from './outcome.ts';
import { outlineOf } from './outline.ts';
import { shownDown } from './slack.ts';
import { slopeOf } from './slope.ts';
import { thinEndFault } from './thinEnd.ts';
import { threshold } from './threshold.ts';

/** The stand from the side, in (u, z): u back from the mark along the toed direction, z over the desk, mm. */
export interface Profile {
  /** The finished stand without feet and pad. Simple and counter-clockwise, from the base's front corner. */
  readonly outline: readonly Point[];
  /** What the layers are cut to: the outline less the veneer on every face but the base. Corners as in the outline. */
  readonly slice: readonly Point[];
  /** The slice without its stop: base front, base rear, top rear, top front. Convex, its ends parallel. */
  readonly core: readonly Point[];
  /** Heights of the finished wood at its ends: from its base up to the line of its top, plumb. */
  readonly frontHeight: number;
  readonly rearHeight: number;
}

/**
 * The profile of a stand whose top, with the pad on it, is exactly the cabinet's bottom.
 *
 * Refused as unsound when the thin end is under its minimum, finished or under the veneer; without an answer when the
 * veneer leaves no wood somewhere.
 *
 * @param depth The cabinet's depth, mm.
 * @param tilt Radians within ±60°, positive with the front high.
 * @param lift Height of the cabinet's lowest bottom edge over the desk, mm.
 */
export function profileOf(settings: StandSettings, depth: number, tilt: number, lift: number): Outcome<Profile> {
  const thin = thinEndFault(settings, tilt, lift, 0);
  if (thin) return thin;
  const slope = slopeOf(settings, depth, tilt, lift);
  const outline = outlineOf(slope, settings, depth);
  const bare = outlineOf(slope, { ...settings, stop: null }, depth);
  const slice = lessVeneer(outline, settings.veneer);
  const core = lessVeneer(bare, settings.veneer);
  if (!slice || !core) return swallowed(outline, bare, settings.veneer);
  const thinUnderVeneer = thinEndFault(settings, tilt, lift, settings.veneer);
  if (thinUnderVeneer) return thinUnderVeneer;
  const heightAt = (s: number) => slope.at(s, slope.top)[1] - slope.base;
  return built({ outline, slice, core, frontHeight: heightAt(slope.front), rearHeight: heightAt(slope.rear) });
}

/** Every edge but the first, the base, moved in by the veneer's thickness. Null when nothing sound is left. */
const lessVeneer = (outline: readonly Point[], veneer: number): readonly Point[] | null =>
  offsetEdges(
    outline,
    outline.map((_, edge) => (edge === 0 ? 0 : veneer)),
  );

function swallowed(outline: readonly Point[], bare: readonly Point[], veneer: number): Outcome<never> {
  const most = threshold(0, veneer, (some) => lessVeneer(outline, some) !== null && lessVeneer(bare, some) !== null);
  return noAnswer(
    '/stand/veneer',
    `expected a veneer under ${shownDown(most)} mm, for wood to be left in the profile, got ${veneer} mm: use thinner veneer, a thicker stop or more lift`,
  );
}
