import { asCount, asFineMm } from '$lib/project/sentence.ts';
import type { Piece, Sanding, WidthLayer } from '$lib/stand/body.ts';
import type { BuildRequest } from '$lib/stand/buildRequest.ts';
import type { Stack } from '$lib/stand/layers.ts';
import { step, type Some, type Step } from '$lib/stand/step.ts';
import { finishSteps } from './finishSteps.ts';

/** How to glue a stack up, one step each. */
export function stackedSteps(
  { settings }: BuildRequest,
  stack: Stack,
  pieces: readonly Piece[],
  sanding: Sanding | null,
): readonly Step[] {
  const all = pieces.map(({ name, quantity }): Some => ({ name, count: quantity }));
  const total = all.reduce((sum, one) => sum + one.count, 0);
  const differ = pieces.some(({ name }) => name.endsWith('1'));
  const cheeks = settings.cheeks?.count ?? 0;
  return [
    step(
      { act: 'cut', pieces: all },
      `Cut {layers} ${total === 1 ? 'layer' : 'layers'}; clean any char and dust off the faces to be glued.`,
      {
        layers: asCount(total),
      },
    ),
    step(
      { act: 'stack', layers: differ ? all : layersInOrder(pieces, cheeks) },
      `Stack them dry${differ ? ' by their numbers, 1 inboard' : ''}, all fronts the same way${
        cheeks > 0 ? `, with {cheeks} ${cheeks === 1 ? 'cheek' : 'cheeks'} outside on each side` : ''
      }.`,
      cheeks > 0 ? { cheeks: asCount(cheeks) } : {},
    ),
    ...(settings.rods
      ? [
          step(
            { act: 'rod', count: settings.rods.count, diameter: settings.rods.diameter },
            `Try {rods} ${settings.rods.count === 1 ? 'rod' : 'rods'} of {diameter} through the dry stack; ream holes that bind.`,
            { rods: asCount(settings.rods.count), diameter: asFineMm(settings.rods.diameter) },
          ),
        ]
      : []),
    measuring(stack),
    ...(total > 1
      ? [
          step(
            { act: 'glue', parts: all.map(({ name }) => name) },
            `Take the stack apart and glue it up as “Glue-up” says: thinly, a few layers at a time, base down on a flat board covered with packing tape; clamp across the width.${
              settings.rods ? ' Cut the rods off flush when the glue is dry.' : ''
            }`,
          ),
        ]
      : []),
    ...(sanding
      ? [
          step(
            { act: 'sand', to: sanding.face ?? 'flush' },
            `Sand the slope flat: each layer stands {height} above the next. Stop when you just reach the top edge of each layer’s ${sanding.face ?? 'higher'} face: those edges are the slope.`,
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

/** While there is no glue in it: a board that is thicker or thinner than was typed in can still be put right. */
function measuring({ widths }: Stack): Step {
  const sum = (...kinds: readonly WidthLayer['what'][]): number =>
    widths.reduce((all, { what, each, count }) => (kinds.includes(what) ? all + each * count : all), 0);
  const [dry, glued] = [sum('layer', 'cheek'), sum('layer', 'cheek', 'glue')];
  return step(
    { act: 'check' },
    `Press the dry stack together and measure it: it should be {dry} wide${
      glued > dry ? ', and {glued} once glued' : ''
    }. If it is not, correct the board’s thickness in the project and plan again before you glue.`,
    { dry: asFineMm(dry), ...(glued > dry ? { glued: asFineMm(glued) } : {}) },
  );
}
