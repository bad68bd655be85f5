import { degrees } from '$lib/geometry/angle.ts';
import type { SideName } from '$lib/project/project.ts';
import type { Placing, SidePlacing, Way } from '$lib/study/placeExisting.ts';
import type { PlaceAsk } from '$lib/study/placing/ask.ts';

/** Where stands that exist can be put, as a document of JSON: lengths in mm, angles in degrees, nothing rounded. */
export function placeFile(
  layout: string,
  ask: PlaceAsk,
  { sides, mirrored, setbacks, earHeights, ways }: Placing,
): string {
  // prettier-ignore
  const document = {
    format: 'wedgewright/place',
    version: 1,
    layout,
    stands: bothSides((side) => {
      const { tilt, lift, toe } = ask.stands[side];
      return { tilt: degrees(tilt), lift, toe: toe === null ? null : degrees(toe) };
    }),
    allowed: ask.allowed === 'safe-zone' ? { by: 'safe-zone' } : { by: 'miss', miss: ask.allowed.miss },
    mirrored,
    ways: ways.map(wayDocument),
    sides: bothSides((side) => sideDocument(sides[side])),
    setbacks,
    earHeights,
  };
  return `${JSON.stringify(document, null, 2)}\n`;
}

const bothSides = <Value>(of: (side: SideName) => Value) => ({ left: of('left'), right: of('right') });

const wayDocument = ({ moves, deadOn, edits, moved, total, at }: Way) => ({ moves, deadOn, edits, moved, total, sides: at }); // prettier-ignore

const sideDocument = ({ regions, nearest, packing }: SidePlacing) => ({
  regions,
  nearest,
  packing: packing.map(({ under, thickness, from, to, then }) => ({
    under,
    thickness,
    from,
    to,
    then: { tilt: degrees(then.tilt), lift: then.lift },
  })),
});
