import { asCount, asFineMm, asMm } from '$lib/project/sentence.ts';
import type { Piece, Sanding } from '$lib/stand/body.ts';
import type { Commission } from '$lib/stand/commission.ts';
import type { Stack } from '$lib/stand/layers.ts';
import { step, type Some, type Step } from '$lib/stand/step.ts';
import { finishSteps } from './finishSteps.ts';

/** How to glue a stack up, one step each. */
export function stackedSteps(
  { settings }: Commission,
  stack: Stack,
  pieces: readonly Piece[],
  sanding: Sanding | null,
): readonly Step[] {
  const all = pieces.map(({ name, quantity }): Some => ({ name, count: quantity }));
  const total = all.reduce((sum, one) => sum + one.count, 0);
  const differ = pieces.some(({ name }) => name.endsWith('1'));
  const cheeks = settings.cheeks?.count ?? 0;
  return [
    step({ act: 'cut', pieces: all }, `Cut {layers} ${total === 1 ? 'layer' : 'layers'}; brush off char and dust.`, {
      layers: asCount(total),
    }),
    step(
      { act: 'stack', layers: differ ? all : layersInOrder(pieces, cheeks) },
      `${
        differ
          ? 'Lay the slices out by their numbers, 1 inboard, all fronts the same way.'
          : 'Stack them dry, all fronts the same way.'
      }${cheeks > 0 ? ' {cheeks} of the cheeks close the stack on each side.' : ''}`,
      cheeks > 0 ? { cheeks: asCount(cheeks) } : {},
    ),
    ...(settings.rods
      ? [
          step(
            { act: 'rod', count: settings.rods.count, diameter: settings.rods.diameter },
            'Push {rods} rods of {diameter} through the holes to line the layers up.',
            { rods: asCount(settings.rods.count), diameter: asFineMm(settings.rods.diameter) },
          ),
        ]
      : []),
    ...(total > 1
      ? [
          step(
            { act: 'glue', parts: all.map(({ name }) => name) },
            'Glue thinly, a few layers at a time, base down on a flat board; clamp across the width.',
          ),
        ]
      : []),
    step({ act: 'check' }, 'Measure the stack: it should be {wide} wide.', {
      wide: asMm(stack.width - 2 * veneerOf(stack)),
    }),
    ...(sanding
      ? [
          step(
            { act: 'sand', to: sanding.face ?? 'flush' },
            `Sand the slope flat: each slice stands {height} above the next. Stop when the top edge of each slice’s ${sanding.face ?? 'higher'} face is just reached: that edge is the slope.`,
            { height: asFineMm(sanding.height) },
          ),
        ]
      : []),
    ...finishSteps(settings),
  ];
}

/** Alike layers from inboard: the cheeks outside. */
function layersInOrder(pieces: readonly Piece[], cheeks: number): readonly Some[] {
  const outer = pieces.filter(({ name }) => name === 'cheek').map(({ name }): Some => ({ name, count: cheeks }));
  const inner = pieces
    .filter(({ name }) => name !== 'cheek')
    .map(({ name, quantity }): Some => ({ name, count: quantity }));
  return [...outer, ...inner, ...outer];
}

const veneerOf = ({ widths }: Stack): number => widths.find(({ what }) => what === 'veneer')?.each ?? 0;
