import { says } from '$lib/project/sentence.ts';
import { wallText, type WallWay } from '$lib/project/wall.ts';
import type { Nothing, Sides, Told } from '$lib/solution/findings/told.ts';

/** An edge of the desk. */
interface Over {
  readonly edge: 'front' | 'back' | 'left' | 'right';
}

/** Which of the walls, from 0. */
interface AWall {
  readonly wall: number;
}

/** A wall's name, and the side of the desk that it is on. */
interface To {
  readonly wall: string;
  readonly way: WallWay;
}

const away: Readonly<Record<WallWay, string>> = { back: 'forwards', front: 'back', left: 'inwards', right: 'inwards' };

export const roomWordings = {
  'into-wall': (
    {
      facts: { what, wall, way },
      quantities: { depth },
    }: Told<'depth', AWall, { readonly what: 'cabinet' | 'stand' } & To>,
    { The }: Sides,
  ) =>
    says`${The} ${what} reaches ${depth} into the ${wallText(wall)}. Move its mark ${away[way]} or the desk away from the wall.`,

  'stand-over-edge': ({ facts: { edge }, quantities: { over } }: Told<'over', Nothing, Over>, { The }: Sides) =>
    says`${The} stand stands ${over} over the desk's ${edge} edge and may fall. Move its mark inwards.`,

  'cabinet-over-edge': ({ facts: { edge }, quantities: { over } }: Told<'over', Nothing, Over>, { The }: Sides) =>
    says`${The} cabinet juts out ${over} over the desk's ${edge} edge. Move its mark inwards, or see that nothing knocks it.`,

  'close-to-wall': ({ facts: { wall }, quantities: { gap } }: Told<'gap', AWall, To>, { The }: Sides) =>
    says`${The} cabinet leaves ${gap} to the ${wallText(wall)}: too little for a plug and the bend of its cable. Move the mark forwards.`,
};
