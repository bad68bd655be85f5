import type { StandSettings } from '$lib/project/project.ts';
import { asTyped, needs, says, type Sentence, type Words } from '$lib/project/sentence.ts';
import type { Cover } from './cover.ts';
import { type Refusal, unsound } from './outcome.ts';
import { shownDown, shownUp, SLACK } from './slack.ts';

/**
 * The low end's height of wood: plumb from the base to the corner where the end meets the line of the top, in the wood
 * that lies under a cover, or finished without one.
 *
 * @param reach How far the stand goes beyond the cabinet's low edge, along the slope, 0 or more.
 */
export function lowEndHeight(
  settings: StandSettings,
  tilt: number,
  lift: number,
  reach: number,
  cover: Cover | null,
): number {
  const [sin, cos] = [Math.abs(Math.sin(tilt)), Math.cos(tilt)];
  const finished = lift - reach * sin - settings.pad * cos - settings.feet;
  if (!cover) return finished;
  const end = tilt >= 0 ? cover.rear : cover.front;
  // The corner moves in along the base or along the slope, and the top comes down square to the slope.
  const moved = settings.ends === 'plumb' ? (cover.top - end * sin) / cos : cover.top * cos - end * sin;
  return finished - moved - cover.base;
}

/** Null when the low end is at least `minimumEdge` high; else a fault at the setting that takes too much. */
export function thinEndFault(settings: StandSettings, tilt: number, lift: number, cover: Cover | null): Refusal | null {
  const reach = lowReach(settings, tilt);
  const height = lowEndHeight(settings, tilt, lift, reach.length, cover);
  const missing = settings.minimumEdge - height;
  if (missing <= SLACK) return null;
  const under = cover ? ` under the ${cover.skinned ? 'skin' : 'veneer'}` : '';
  const thin = (helps: Words): Sentence =>
    needs(says`a thin end of at least ${asTyped(settings.minimumEdge)}${under}`, shownDown(height), helps);
  const raise = says`raise the lift by ${shownUp(missing)}`;
  if (settings.minimumEdge - lowEndHeight(settings, tilt, lift, 0, cover) > SLACK) {
    return unsound('/stand/lift', thin(raise));
  }
  const sooner = missing / Math.abs(Math.sin(tilt));
  return unsound(reach.pointer, thin(says`let the stand end ${shownUp(sooner)} sooner or ${raise}`));
}

/** How far the stand goes beyond the cabinet at its low end, and the setting that says so. */
function lowReach(settings: StandSettings, tilt: number): { length: number; pointer: string } {
  const [margin, name] = tilt >= 0 ? [settings.rearMargin, 'rearMargin'] : [settings.frontMargin, 'frontMargin'];
  const lip = settings.stop?.thickness ?? 0;
  return lip > margin
    ? { length: lip, pointer: '/stand/stop/thickness' }
    : { length: margin, pointer: `/stand/${name}` };
}
