import { aimWordings } from '$lib/solution/findings/wording/aim.ts';
import { balanceWordings } from '$lib/solution/findings/wording/balance.ts';
import { handWorkWordings } from '$lib/solution/findings/wording/handWork.ts';
import { heardWordings } from '$lib/solution/findings/wording/heard.ts';
import { roomWordings } from '$lib/solution/findings/wording/room.ts';
import { seatWordings } from '$lib/solution/findings/wording/seats.ts';
import { screenWordings } from '$lib/solution/findings/wording/screens.ts';
import { standingWordings } from '$lib/solution/findings/wording/standing.ts';

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
