import { lengthWithUnit, trimmed } from '$lib/project/lengthText.ts';
import type { Recorded } from '$lib/project/project.ts';
import { decimally, type LengthDisplay } from '$lib/project/units.ts';

/** What was done to a stand, as its record tells it: `1.6 mm of card, rear edge; turned in 0.8°`. */
export function doneText(done: Recorded['done'], display: LengthDisplay): string {
  const length = (mm: number): string => lengthWithUnit(Math.abs(mm), decimally(display));
  return done
    .map((one) => {
      switch (one.act) {
        case 'leave':
          return 'left as it was';
        case 'shim':
          return `${length(one.by)} of card, ${one.where} edge`;
        case 'turn':
          return `turned ${one.by < 0 ? 'out' : 'in'} ${trimmed(Math.abs(one.by), 1)}°`;
        case 'move':
          return `moved ${length(one.x)} ${one.x < 0 ? 'left' : 'right'}, ${length(one.y)} ${one.y < 0 ? 'near' : 'away'}`;
      }
    })
    .join('; ');
}
