/** The shapes that screens are sold in, width to height; of `21:9` what most of them really have. */
export const screenRatios: readonly (readonly [name: string, across: number, up: number])[] = [
  ['16:9', 16, 9],
  ['16:10', 16, 10],
  ['21:9', 43, 18],
  ['32:9', 32, 9],
  ['3:2', 3, 2],
  ['4:3', 4, 3],
  ['5:4', 5, 4],
];

/** A measured shape may differ from a sold one by so much, as a share: a frame round the picture, and the tape. */
const NEAR = 0.03;

/** The shape nearest to that of a screen; null where none is near. */
export function ratioOf(width: number, height: number): string | null {
  const off = ([, across, up]: (typeof screenRatios)[number]): number =>
    Math.abs(Math.log((width * up) / (height * across)));
  const [nearest] = [...screenRatios].sort((a, b) => off(a) - off(b));
  return nearest && off(nearest) <= NEAR ? nearest[0] : null;
}

/** Width and height of a screen of a diagonal and a shape, mm to a thousandth; as its sides are now where the shape is none of the list. */
export function sizeOf(
  diagonal: number,
  ratio: string | null,
  now: { readonly width: number; readonly height: number },
) {
  const [, across, up] = screenRatios.find(([name]) => name === ratio) ?? ['', now.width, now.height];
  const rounded = (mm: number): number => Math.round(mm * 1000) / 1000;
  return {
    width: rounded((diagonal * across) / Math.hypot(across, up)),
    height: rounded((diagonal * up) / Math.hypot(across, up)),
  };
}
