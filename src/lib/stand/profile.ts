import { offsetEdges } from '$lib/geometry/offsetEdges.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { StandSettings } from '$lib/project/project.ts';
import { asTyped, needs, says } from '$lib/project/sentence.ts';
import { coverOf, coverOfEdges, NO_SKIN, type Cover, type Skin } from './cover.ts';
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
  /** What the layers are cut to: the outline less the veneer and skins on it. Corners as in the outline. */
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
 * @param skin Boards on the wood, under the veneer; default none.
 */
export function profileOf(
  settings: StandSettings,
  depth: number,
  tilt: number,
  lift: number,
  skin: Skin = NO_SKIN,
): Outcome<Profile> {
  const thin = thinEndFault(settings, tilt, lift, null);
  if (thin) return thin;
  const slope = slopeOf(settings, depth, tilt, lift);
  const outline = outlineOf(slope, settings, depth);
  const bare = settings.stop ? outlineOf(slope, { ends: settings.ends, stop: null }, depth) : outline;
  const cover = coverOf(settings, skin);
  const slice = less(outline, cover);
  const core = settings.stop ? less(bare, cover) : slice;
  if (!slice || !core) return swallowed(outline, bare, settings, skin);
  const thinUnder = thinEndFault(settings, tilt, lift, cover);
  if (thinUnder) return thinUnder;
  const heightAt = (s: number) => slope.at(s, slope.top)[1] - slope.base;
  return built({ outline, slice, core, frontHeight: heightAt(slope.front), rearHeight: heightAt(slope.rear) });
}

/** Every edge moved in by what covers it. Null when nothing sound is left. */
const less = (outline: readonly Point[], cover: Cover): readonly Point[] | null =>
  offsetEdges(outline, coverOfEdges(outline, cover));

function swallowed(
  outline: readonly Point[],
  bare: readonly Point[],
  settings: StandSettings,
  skin: Skin,
): Outcome<never> {
  const { veneer } = settings;
  const leaves = (some: number): boolean => {
    const cover = coverOf({ ...settings, veneer: some }, skin);
    return less(outline, cover) !== null && less(bare, cover) !== null;
  };
  if (!leaves(0)) {
    const [top, front] = [shownDown(skin.top), shownDown(skin.front)];
    return noAnswer(
      '/stand/ribs/skin',
      needs(
        'skins that leave wood in the profile',
        says`${top} on the top and ${front} on the front`,
        'use a thinner skin or more lift',
      ),
    );
  }
  const most = threshold(0, veneer, leaves);
  return noAnswer(
    '/stand/veneer',
    needs(
      says`a veneer under ${shownDown(most)}, for wood to be left in the profile`,
      asTyped(veneer),
      'use thinner veneer, a thicker stop or more lift',
    ),
  );
}
