import { bodyGap } from '$lib/geometry/bodyGap.ts';
import { overlapDepth } from '$lib/geometry/solid.ts';
import { hiddenShare } from '$lib/layout/hiddenShare.ts';
import { sideNames } from '$lib/project/project.ts';
import { asMm, asUnit } from '$lib/project/sentence.ts';
import { gapToWall, wayTo } from '$lib/project/wall.ts';
import type { Finding } from './finding.ts';
import type { PlacedCheck } from './check.ts';

/** Between a cabinet and a screen, mm: room for the fingers that turn the one without marking the other. */
const TO_SCREEN = 10;
/** Share of a screen, %, from which what is hidden is more than a note. */
const MUCH_HIDDEN = 5;
/** Bodies that touch overlap by the dust of rounding, mm; a shadow that touches a screen hides as little, %. */
const DUST = 1e-6;

/** A cabinet so near to a screen that nobody can turn it; one that shares its place is told as such. */
const closeToScreen: PlacedCheck = ({ cabinets, monitors }) =>
  sideNames.flatMap((side) =>
    monitors.flatMap((monitor, index): Finding[] => {
      const gap = Math.min(...monitor.map((body) => bodyGap(cabinets[side], body, TO_SCREEN)));
      if (gap === 0 && monitor.some((body) => overlapDepth(cabinets[side], body) > DUST)) return [];
      if (gap >= TO_SCREEN - DUST) return [];
      return [
        {
          code: 'close-to-screen',
          level: 'note',
          sides: [side],
          subject: { monitor: index },
          facts: { monitors: monitors.length },
          quantities: { gap: asMm(gap) },
          value: gap,
          limit: TO_SCREEN,
          unit: 'mm',
          source: 'fingers',
        },
      ];
    }),
  );

/** A cabinet's back nearer to a wall than its plug, cable or port wants; one that reaches into it is told as such. */
const closeToWall: PlacedCheck = ({ speaker: { rearClearance }, layout, poses }) =>
  layout.room.walls.flatMap((wall, index) =>
    sideNames.flatMap((side): Finding[] => {
      const gap = gapToWall(
        wall,
        poses[side].cabinet.map(({ x, y }) => [x, y]),
      );
      if (wayTo(wall) !== 'back' || gap < -DUST || gap >= rearClearance - DUST) return [];
      return [
        {
          code: 'close-to-wall',
          level: 'note',
          sides: [side],
          subject: { wall: index },
          facts: { wall: wall.name, way: 'back' },
          quantities: { gap: asMm(Math.max(0, gap)), wanted: asMm(rearClearance) },
          value: Math.max(0, gap),
          limit: rearClearance,
          unit: 'mm',
          source: 'plug',
        },
      ];
    }),
  );

/** A cabinet between the eyes and a screen. */
const screenHidden: PlacedCheck = ({ cabinets, layout, head }) =>
  sideNames.flatMap((side) =>
    layout.monitors.flatMap((monitor, index): Finding[] => {
      const share = 100 * hiddenShare(cabinets[side], monitor, head);
      if (share <= DUST) return [];
      return [
        {
          code: 'screen-hidden',
          level: share > MUCH_HIDDEN ? 'caution' : 'note',
          sides: [side],
          subject: { monitor: index },
          facts: { monitors: layout.monitors.length },
          quantities: { share: asUnit(share, '%') },
          value: share,
          limit: 0,
          unit: '%',
          source: 'hidden-screen',
        },
      ];
    }),
  );

/** In the order in which they are told. */
export const clearanceChecks: readonly PlacedCheck[] = [screenHidden, closeToScreen, closeToWall];
