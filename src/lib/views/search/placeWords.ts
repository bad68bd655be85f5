import type { LengthDisplay } from '$lib/project/units.ts';
import { sideNames, type Layout } from '$lib/project/project.ts';
import type { Placing, Stood, Way } from '$lib/study/placeExisting.ts';
import type { Packing } from '$lib/study/placing/packing.ts';
import { angleText, lengthText } from '$lib/views/ui/formatNumber.ts';

/** Lengths that read alike are told once, mm. */
const ALIKE = 0.05;

const editOf = (way: Way, pointer: string): number | undefined => way.edits.find((edit) => edit.pointer === pointer)?.value; // prettier-ignore

/** What a way asks of one: `Sit 85 mm further back`. @param layout As it is now. */
export function wayTitle(way: Way, { listener }: Layout, display: LengthDisplay): string {
  const text = (mm: number): string => lengthText(Math.abs(mm), display);
  switch (way.moves) {
    case 'nothing':
      return 'Leave everything where it is';
    case 'marks': {
      const { left, right } = way.moved;
      return Math.abs(left - right) < ALIKE
        ? `Move both marks ${text(right)}`
        : `Move the left mark ${text(left)}, the right one ${text(right)}`;
    }
    case 'setback': {
      const by = (editOf(way, '/listener/setback') ?? listener.setback) - listener.setback;
      return `Sit ${text(by)} ${by < 0 ? 'nearer' : 'further back'}`;
    }
    case 'earHeight': {
      const by = (editOf(way, '/listener/earHeight') ?? listener.earHeight) - listener.earHeight;
      return `Sit ${text(by)} ${by < 0 ? 'lower' : 'higher'}`;
    }
  }
}

/** Where that puts things, and how well it aims. */
export function wayDetail(way: Way, display: LengthDisplay): string {
  const { left, right } = way.at;
  const place = ({ mark, toe }: Stood): string => `${lengthText(Math.abs(mark.x), display)} from the middle, ${lengthText(mark.y, display)} from the edge, toe ${angleText(toe)}`; // prettier-ignore
  const alike = Math.abs(left.mark.x + right.mark.x) < ALIKE && Math.abs(left.mark.y - right.mark.y) < ALIKE;
  const marks = alike ? `Both marks ${place(right)}` : `Left mark ${place(left)}; right mark ${place(right)}`;
  const over = sideNames.map((side) => way.at[side].over);
  const worst = over.reduce((most, one) => (Math.abs(one) > Math.abs(most) ? one : most), 0);
  const aims = way.deadOn ? 'the axes are dead on' : `the axes pass ${lengthText(Math.abs(worst), display)} ${worst > 0 ? 'over' : 'under'}`; // prettier-ignore
  return way.moves === 'marks' ? `${marks}; ${aims}.` : `${aims.replace('the', 'The')}.`;
}

/** A name for a layout that a way makes. */
export const wayName = (way: Way, layout: Layout, display: LengthDisplay): string =>
  `stands I have: ${wayTitle(way, layout, display).toLowerCase().replaceAll('\u202f', ' ')}`;

/** What would make a stand hit where it is: `a shim 3.2 mm thick under the front edge (2.5 to 3.9 mm will do)`. */
export function packingText({ under, thickness, from, to, then }: Packing, display: LengthDisplay): string {
  const text = (mm: number): string => lengthText(Math.abs(mm), display);
  if (under === 'base' && thickness < 0) {
    return `it is ${text(thickness)} too high: take that much off the base, or sit that much higher`;
  }
  const least = Math.max(0, from);
  const range = to - least > ALIKE ? `; ${text(least)} to ${text(to)} will do` : '';
  return under === 'base'
    ? `a riser ${text(thickness)} thick under the whole base${range}`
    : `a shim ${text(thickness)} thick under the ${under} edge, all across it, which makes the slope ${angleText((then.tilt * 180) / Math.PI)}${range}`; // prettier-ignore
}

/** The riser and the shim of each stand; of both at once where they are the same. */
export function packings(
  { sides: { left, right } }: Placing,
  display: LengthDisplay,
): { readonly stand: string; readonly texts: readonly string[] }[] {
  // prettier-ignore
  const [ofLeft, ofRight] = [left, right].map(({ packing }) => packing.map((one) => packingText(one, display)));
  if (!ofLeft || !ofRight) return [];
  return ofLeft.join() === ofRight.join()
    ? [{ stand: 'Each stand', texts: ofRight }]
    : [
        { stand: 'Left stand', texts: ofLeft },
        { stand: 'Right stand', texts: ofRight },
      ];
}
