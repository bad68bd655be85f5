import type { Commission } from './commission.ts';
import type { Skin } from './cover.ts';
import type { Ground } from './ground.ts';
import type { Outcome } from './outcome.ts';
import { squareGround } from './squareGround.ts';
import { turnedGround } from './turnedGround.ts';

/**
 * The ground under one cabinet, turned with it or square to the desk.
 *
 * @param width Finished width of the stand, mm.
 * @param skin Boards on the wood, under the veneer.
 */
export const groundOf = (
  commission: Pick<Commission, 'stance' | 'speaker' | 'settings'>,
  width: number,
  skin?: Skin,
): Outcome<Ground> =>
  commission.settings.base === 'turned' ? turnedGround(commission, skin) : squareGround(commission, width);
