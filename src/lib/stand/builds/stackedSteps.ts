import type { Piece, Sanding } from '$lib/stand/body.ts';
import type { Commission } from '$lib/stand/commission.ts';
import type { Stack } from '$lib/stand/layers.ts';
import { shown } from '$lib/stand/slack.ts';
import { finishSteps } from './finishSteps.ts';

/** How to glue a stack up, one step each. */
export function stackedSteps(
  { settings }: Commission,
  stack: Stack,
  pieces: readonly Piece[],
  sanding: Sanding | null,
): readonly string[] {
  const total = pieces.reduce((sum, { quantity }) => sum + quantity, 0);
  const differ = pieces.some(({ name }) => name.endsWith('1'));
  const count = settings.cheeks?.count ?? 0;
  return [
    `Cut ${total} ${total === 1 ? 'layer' : 'layers'}; brush off char and dust.`,
    differ
      ? 'Lay the slices out by their numbers, 1 inboard, all fronts the same way.'
      : 'Stack them dry, all fronts the same way.',
    ...(count > 0 ? [`${count} of the thicker cheeks close the stack on each side.`] : []),
    ...(settings.rods
      ? [`Push ${settings.rods.count} rods of ${settings.rods.diameter} mm through the holes to line the layers up.`]
      : []),
    ...(total > 1 ? ['Glue thinly, a few layers at a time, base down on a flat board; clamp across the width.'] : []),
    `Measure the stack: it should be ${shown(stack.width - 2 * veneerOf(stack))} mm wide.`,
    ...(sanding
      ? [
          `Sand the slope flat: each slice stands ${shown(sanding.height, 2)} mm above the next. Stop when the top edge of each slice’s ${sanding.face ?? 'higher'} face is just reached: that edge is the slope.`,
        ]
      : []),
    ...finishSteps(settings),
  ];
}

const veneerOf = ({ widths }: Stack): number => widths.find(({ what }) => what === 'veneer')?.each ?? 0;
