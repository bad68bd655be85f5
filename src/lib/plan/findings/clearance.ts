import { bodyGap } from '$lib/geometry/bodyGap.ts';
import { overlapDepth } from '$lib/geometry/solid.ts';
import { hiddenShare } from '$lib/layout/hiddenShare.ts';
import { sideNames } from '$lib/project/project.ts';
import type { Finding } from '$lib/plan/document.ts';
import type { PlacedCheck } from './check.ts';
import { mmText, percentText } from './say.ts';

/** Between a cabinet and a screen, mm: room for the fingers that turn the one without marking the other. */
const TO_SCREEN = 10;
/** Between a cabinet and the wall behind it, mm: room for a plug and the bend of its cable. */
const TO_WALL = 40;
/** Share of a screen, %, from which what is hidden is more than a note. */
const MUCH_HIDDEN = 5;
/** Bodies that touch overlap by the dust of rounding, mm; a shadow that touches a screen hides as little, %. */
const DUST = 1e-6;

/** What a screen is called in a sentence, by its place in the list. */
const called = (index: number, count: number): string => (count === 1 ? 'the screen' : `screen ${index + 1}`);

/** A cabinet so near to a screen that nobody can turn it; one that shares its place is told as such. */
export const closeToScreen: PlacedCheck = ({ cabinets, monitors }) =>
  sideNames.flatMap((side) =>
    monitors.flatMap((monitor, index): Finding[] => {
      const gap = bodyGap(cabinets[side], monitor, TO_SCREEN);
      if (gap === 0 && overlapDepth(cabinets[side], monitor) > DUST) return [];
      if (gap >= TO_SCREEN - DUST) return [];
      return [
        {
          code: 'close-to-screen',
          level: 'note',
          side,
          text: `The ${side} cabinet stands ${mmText(gap)} from ${called(index, monitors.length)}: too near to turn it without touching. Move the mark outwards or forwards.`,
          value: gap,
          limit: TO_SCREEN,
          unit: 'mm',
          source: 'room for fingers: rule of thumb',
        },
      ];
    }),
  );

/** A cabinet so near to the wall behind it that no plug fits in; one that reaches into it is told as such. */
export const closeToWall: PlacedCheck = ({ layout, poses }) => {
  const { depth, wallGap } = layout.desk;
  if (wallGap === null) return [];
  return sideNames.flatMap((side): Finding[] => {
    const gap = depth + wallGap - Math.max(...poses[side].cabinet.map(({ y }) => y));
    if (gap < -DUST || gap >= TO_WALL - DUST) return [];
    return [
      {
        code: 'close-to-wall',
        level: 'note',
        side,
        text: `The ${side} cabinet leaves ${mmText(Math.max(0, gap))} to the wall behind it: too little for a plug and the bend of its cable. Move the mark forwards.`,
        value: Math.max(0, gap),
        limit: TO_WALL,
        unit: 'mm',
        source: 'a plug and its cable: rule of thumb; measure your own',
      },
    ];
  });
};

/** A cabinet between the eyes and a screen. */
export const screenHidden: PlacedCheck = ({ cabinets, layout, head }) =>
  sideNames.flatMap((side) =>
    layout.monitors.flatMap((monitor, index): Finding[] => {
      const share = 100 * hiddenShare(cabinets[side], monitor, head);
      if (share <= DUST) return [];
      return [
        {
          code: 'screen-hidden',
          level: share > MUCH_HIDDEN ? 'caution' : 'note',
          side,
          text: `The ${side} cabinet hides ${percentText(share)} of ${called(index, layout.monitors.length)} from the eyes. Move the mark outwards or back.`,
          value: share,
          limit: 0,
          unit: '%',
          source: `the geometry itself, from the middle of the head; a caution over ${MUCH_HIDDEN} %: rule of thumb`,
        },
      ];
    }),
  );
