import { ribs as fields } from '$lib/project/fields/stand.ts';
import { startOf } from '$lib/project/fields/starts.ts';
import type { Ribs } from '$lib/project/project.ts';
import { bareTop } from '$lib/stand/bareTop.ts';
import type { StandSurface } from '$lib/stand/standSurface.ts';
import { built, noAnswer, type Outcome } from '$lib/stand/outcome.ts';
import { shownDown, shownUp, SLACK } from '$lib/stand/slack.ts';
import { asFineMm, asTyped, needs, says } from '$lib/project/sentence.ts';

/** What is built where the settings say nothing. */
const COMMON: Ribs = startOf(fields);

export const ribsOf = ({ ribs }: { readonly ribs: Ribs | null }): Ribs => ribs ?? COMMON;

/** Where profile ribs and cross ribs stand, and how they meet. mm. */
export interface RibPlan {
  /** Middles of the profile ribs, across from the stand's middle, from inboard. */
  readonly ribs: readonly number[];
  /** Middles of the cross ribs, in u, from the front. */
  readonly crosses: readonly number[];
  /** Width of every slot as drawn. */
  readonly slot: number;
}

/**
 * Profile ribs as far out as the inset lets them, cross ribs spread evenly between the ends. A slot is as wide as the wood
 * is thick, and the fit, and what a leaning cut edge takes from it at its narrow face.
 *
 * No answer when the ribs find no room side by side, with a slot's width of wood between slots, or when less than the
 * stand's least edge is left beyond the outer ones.
 *
 * @param wood Width without veneer.
 * @param cut `taper`: lean of the cut edges from plumb, each side, radians; `beside`: what the reliefs at a
 *   slot's end take of the wood on either side of it, by its width, mm.
 */
export function ribPlan(
  { count, cross, fit, inset }: Ribs,
  surface: StandSurface,
  wood: number,
  thickness: number,
  { taper, beside }: { readonly taper: number; readonly beside: (slot: number) => number },
  minimumEdge: number,
): Outcome<RibPlan> {
  const slot = thickness + fit + thickness * Math.tan(taper);
  const bite = beside(slot);
  // Between slots as much wood as one is wide, and at least the least edge between their reliefs.
  const spacing = bite === 0 ? 2 * slot : Math.max(2 * slot, slot + 2 * bite + minimumEdge);
  const beyond = inset - (slot - thickness) / 2 - bite;
  if (beyond < minimumEdge - SLACK) {
    return noAnswer(
      '/stand/ribs/inset',
      needs(
        says`ribs that stand in far enough for ${asTyped(minimumEdge)} of wood beyond the outer slots`,
        asTyped(inset),
        says`make it ${shownUp(inset + minimumEdge - beyond)} or more`,
      ),
    );
  }
  const outermost = wood / 2 - inset - thickness / 2;
  const apart = (2 * outermost) / (count - 1);
  if (apart < spacing - SLACK) {
    const needed = 2 * inset + thickness + spacing * (count - 1);
    return noAnswer(
      '/stand/ribs',
      needs(
        says`a width of at least ${shownUp(needed)} for ${count} ribs of ${asFineMm(thickness)} that stand ${asTyped(inset)} in`,
        shownDown(wood),
        'use fewer ribs, a smaller inset or a wider stand',
      ),
    );
  }
  const [front, rear] = straightStretch(surface);
  const land = Math.max(minimumEdge + bite, thickness) + slot / 2;
  const [from, to] = [front + land, rear - land];
  const pitch = (to - from) / (cross - 1);
  if (pitch < spacing - SLACK) {
    const needed = 2 * land + spacing * (cross - 1);
    return noAnswer(
      '/stand/ribs/cross',
      needs(says`a depth of at least ${shownUp(needed)} for ${cross} cross ribs`, shownDown(rear - front), 'use fewer'),
    );
  }
  return built({
    ribs: Array.from({ length: count }, (_, i) => -outermost + i * apart),
    crosses: Array.from({ length: cross }, (_, i) => from + i * pitch),
    slot,
  });
}

/** The stretch in u over which there are both base and bare top. */
function straightStretch(surface: StandSurface): readonly [number, number] {
  const section = surface.section(0);
  const [baseFront = [0, 0], baseRear = [0, 0]] = section.core;
  const [topRear, topFront] = bareTop(section);
  return [Math.max(baseFront[0], topFront[0]), Math.min(baseRear[0], topRear[0])];
}
