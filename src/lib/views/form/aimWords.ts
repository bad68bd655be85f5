import type { Plan } from '$lib/solution/document.ts';
import { angleText } from '$lib/views/ui/formatNumber.ts';

type Aimed = Pick<Plan['sides']['left'], 'toe' | 'tilt'>;

/** What a change has come to, for a screen reader: `Toe 41.9°, tilt 14.7°`; both loudspeakers where they differ. */
export function aimWords({ left, right }: Readonly<Record<'left' | 'right', Aimed>>): string {
  const words = ({ toe, tilt }: Aimed): string => `toe ${angleText(toe)}, tilt ${angleText(tilt)}`;
  const [one, other] = [words(left), words(right)];
  return one === other ? `${one.slice(0, 1).toUpperCase()}${one.slice(1)}` : `Left: ${one}; right: ${other}`;
}
