import type { BuildRequest } from './buildRequest.ts';
import type { Skin } from './cover.ts';
import type { StandSurface } from './standSurface.ts';
import type { Outcome } from './outcome.ts';
import { squareSurface } from './squareSurface.ts';
import { turnedSurface } from './turnedSurface.ts';

/**
 * The surface under one cabinet, turned with it or square to the desk.
 *
 * @param width Finished width of the stand, mm.
 * @param skin Boards on the wood, under the veneer.
 */
export const standSurfaceOf = (
  request: Pick<BuildRequest, 'stance' | 'speaker' | 'settings'>,
  width: number,
  skin?: Skin,
): Outcome<StandSurface> =>
  request.settings.base === 'turned' ? turnedSurface(request, skin) : squareSurface(request, width);
