import { aimWordings } from './wording/aim.ts';
import { balanceWordings } from './wording/balance.ts';
import { handWorkWordings } from './wording/handWork.ts';
import { heardWordings } from './wording/heard.ts';
import { roomWordings } from './wording/room.ts';
import { seatWordings } from './wording/seats.ts';
import { screenWordings } from './wording/screens.ts';
import { standingWordings } from './wording/standing.ts';

/** The one list of the kinds of findings, each by its code with the sentence that tells it. */
export const wordings = {
  ...screenWordings,
  ...roomWordings,
  ...standingWordings,
  ...aimWordings,
  ...balanceWordings,
  ...handWorkWordings,
  ...heardWordings,
  ...seatWordings,
};
