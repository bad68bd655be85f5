import { says } from '$lib/project/sentence.ts';
import type { Nothing, Sides, Told } from '$lib/solution/findings/told.ts';

/** An edge of the desk. */
interface Over {
  readonly edge: 'front' | 'back' | 'left' | 'right';
}

export const roomWordings = {
  'into-wall': (
    { facts: { what }, quantities: { depth } }: Told<'depth', Nothing, { readonly what: 'cabinet' | 'stand' }>,
    { The }: Sides,
  ) =>
    says`${The} ${what} reaches ${depth} into the wall behind the desk. Move its mark forwards or the desk away from the wall.`,

  'stand-over-edge': ({ facts: { edge }, quantities: { over } }: Told<'over', Nothing, Over>, { The }: Sides) =>
    says`${The} stand stands ${over} over the desk's ${edge} edge and may fall. Move its mark inwards.`,

  'cabinet-over-edge': ({ facts: { edge }, quantities: { over } }: Told<'over', Nothing, Over>, { The }: Sides) =>
    says`${The} cabinet juts out ${over} over the desk's ${edge} edge. Move its mark inwards, or see that nothing knocks it.`,

  'close-to-wall': ({ quantities: { gap } }: Told<'gap'>, { The }: Sides) =>
    says`${The} cabinet leaves ${gap} to the wall behind it: too little for a plug and the bend of its cable. Move the mark forwards.`,
};
