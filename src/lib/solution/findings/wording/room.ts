import { says } from '$lib/project/sentence.ts';
import { DESK, surfaceCalled } from '$lib/project/surface.ts';
import { wallText, type WallWay } from '$lib/project/wall.ts';
import { addStopText } from '$lib/solution/findings/wording/standing.ts';
import type { Nothing, Sides, Told } from '$lib/solution/findings/told.ts';

/** An edge of what the stand is on. */
interface Over {
  readonly edge: 'front' | 'back' | 'left' | 'right';
  readonly on: string;
}

const edgeText = ({ edge, on }: Over): string =>
  on === DESK ? `the desk's ${edge} edge` : `the ${edge} edge of ${surfaceCalled(on)}`;

/** The desk, or a surface by its name. */
interface ASurface {
  readonly surface: string;
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

  'stand-over-edge': ({ facts, quantities: { over } }: Told<'over', Nothing, Over>, { The }: Sides) =>
    says`${The} stand stands ${over} over ${edgeText(facts)} and may fall. Move its mark inwards.`,

  'cabinet-over-edge': ({ facts, quantities: { over } }: Told<'over', Nothing, Over>, { The }: Sides) =>
    says`${The} cabinet juts out ${over} over ${edgeText(facts)}. Move its mark inwards, or see that nothing knocks it.`,

  'into-surface': ({ subject: { surface }, quantities: { depth } }: Told<'depth', ASurface>, { The }: Sides) =>
    says`${The} cabinet and ${surface === DESK ? 'the desk’s top' : surfaceCalled(surface)} share ${depth} of the same place. Move the one or the other.`,

  'plate-tips': ({
    subject: { surface },
    facts: { edge, carried },
    quantities: { least, most, plane },
  }: Told<
    'least' | 'most' | 'plane',
    ASurface,
    { readonly edge: 'forwards' | 'backwards' | 'to the left' | 'to the right'; readonly carried: 'desk' | 'floor' }
  >) =>
    says`The ${carried === 'desk' ? 'riser' : 'floor stand'} ${surfaceCalled(surface)} tips ${edge} with what stands on it ${
      most.value <= 0
        ? 'by itself'
        : least.value < most.value
          ? says`at ${least} to ${most} of tilt, depending on the cabinet’s mass, which is not given`
          : says`when ${carried === 'desk' ? 'the desk' : 'the floor under it'} tilts by ${least}`
    }; it should stand ${plane}. Use a larger or heavier base, or move the mark to its middle.`,

  'no-stop': (
    {
      facts: { surface, base },
      quantities: { slope, stopHeight, stopThickness },
    }: Told<
      'slope',
      Nothing,
      { readonly surface: string; readonly base: 'turned' | 'square-to-desk' },
      'stopHeight' | 'stopThickness'
    >,
    { The }: Sides,
  ) =>
    says`${The} cabinet leans ${slope} down from ${surfaceCalled(surface)} with nothing but friction to hold it. ${
      stopHeight && stopThickness
        ? says`${addStopText(stopHeight, stopThickness)} to the front of the stand.`
        : base === 'turned'
          ? 'Raise the lift to make room for a stop.'
          : 'Use a base turned with the cabinet, which can have a stop.'
    }`,

  'close-to-wall': (
    { facts: { wall }, quantities: { gap, wanted } }: Told<'gap' | 'wanted', AWall, To>,
    { The }: Sides,
  ) =>
    says`${The} cabinet leaves ${gap} to the ${wallText(wall)}: ${wanted} is asked for a plug, its cable or a port. Move the mark forwards.`,
};
