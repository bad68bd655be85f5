import { says } from '$lib/project/sentence.ts';
import type { Sides, Told } from '$lib/solution/findings/told.ts';

/** How many screens there are: a single one needs no number. */
interface Of {
  readonly monitors: number;
}

/** A screen by its place in the list, from 0. */
interface OfScreen {
  readonly monitor: number;
}

const called = ({ monitor }: OfScreen, { monitors }: Of, name: string): string =>
  monitors === 1 ? `the ${name}` : `${name} ${monitor + 1}`;

export const screenWordings = {
  'monitor-collision': ({ subject, facts, quantities: { depth } }: Told<'depth', OfScreen, Of>, { The }: Sides) =>
    says`${The} cabinet and ${called(subject, facts, 'screen')} share ${depth} of the same place. Move the mark outwards or forwards.`,

  'monitor-in-sight-line': (
    { subject, facts, quantities: { inside } }: Told<'inside', OfScreen & { readonly driver: string }, Of>,
    { the }: Sides,
  ) =>
    says`From the head, ${called(subject, facts, 'screen')} hides ${the} ${subject.driver}: the line passes ${inside} inside its edge. Move the mark outwards or forwards, or the screen back.`,

  'close-to-screen': ({ subject, facts, quantities: { gap } }: Told<'gap', OfScreen, Of>, { The }: Sides) =>
    says`${The} cabinet stands ${gap} from ${called(subject, facts, 'screen')}: too near to turn it without touching. Move the mark outwards or forwards.`,

  'screen-hidden': ({ subject, facts, quantities: { share } }: Told<'share', OfScreen, Of>, { The }: Sides) =>
    says`${The} cabinet hides ${share} of ${called(subject, facts, 'screen')} from the eyes. Move the mark outwards or back.`,
};
