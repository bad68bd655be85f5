import type { Push } from './push.ts';
import { leastPush, type Slide } from './sliding.ts';
import type { Span } from './span.ts';
import { edgeNames, GRAVITY, type EdgeName } from './tipping.ts';

/** One way in which a loudspeaker does not stay: the cabinet leaves its stand, or both go together. */
export interface GivesWay {
  readonly how: 'tips' | 'slides';
  readonly what: 'cabinet' | 'both';
  /** Over which edge, or the way it slides; null where it slides any way alike, or sideways along a stop. */
  readonly towards: EdgeName | null;
}

/** Whether a loudspeaker stays: the least of tipping and sliding. Radians and N. */
export interface Verdict {
  /** The steepest plane on which nothing tips and nothing slides, whichever way that is turned; 0 or less: not on the level. */
  readonly holds: Span;
  /** What gives way on a plane any steeper, with the least friction. */
  readonly first: GivesWay;
  /** The least level push at the cabinet's top edge that starts anything, and what; null without the cabinet's mass. */
  readonly push: { readonly force: number; readonly starts: GivesWay } | null;
}

interface Judged {
  /** The steepest plane on which nothing tips, and what tips first. */
  readonly tips: Span;
  readonly weakest: { readonly what: 'cabinet' | 'both'; readonly edge: EdgeName };
  readonly slide: Slide;
  /** Where the slope is low. */
  readonly low: EdgeName;
  /** Friction of the stand on the desk. */
  readonly base: Span;
  readonly push: Readonly<Record<EdgeName, Push>> | null;
  /** kg of the cabinet and of both; null where not known. */
  readonly mass: number | null;
  readonly together: number | null;
}

export function verdictOf({ tips, weakest, slide, low, base, push, mass, together }: Judged): Verdict {
  const cabinet: GivesWay = {
    how: 'slides',
    what: 'cabinet',
    towards: slide.stop || slide.slope === 0 ? null : low,
  };
  const both: GivesWay = { how: 'slides', what: 'both', towards: null };
  const planes = [
    { way: { how: 'tips', what: weakest.what, towards: weakest.edge } satisfies GivesWay, holds: tips },
    { way: cabinet, holds: slide.survives },
    { way: both, holds: { least: Math.atan(base.least), most: Math.atan(base.most) } },
  ];
  const first = planes.reduce((a, b) => (b.holds.least < a.holds.least ? b : a));
  return {
    holds: { least: first.holds.least, most: Math.min(...planes.map(({ holds }) => holds.most)) },
    first: first.way,
    push:
      push && mass !== null && together !== null
        ? leastOf([
            ...edgeNames.map((edge) => ({
              force: push[edge].tips,
              starts: { how: 'tips', what: push[edge].off ? 'cabinet' : 'both', towards: edge } satisfies GivesWay,
            })),
            { force: leastPush(slide, mass * GRAVITY), starts: cabinet },
            { force: base.least * together * GRAVITY, starts: both },
          ])
        : null,
  };
}

type Started = NonNullable<Verdict['push']>;

const leastOf = (pushes: readonly Started[]): Started | null =>
  pushes.reduce<Started | null>((a, b) => (a === null || b.force < a.force ? b : a), null);
