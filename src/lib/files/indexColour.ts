/**
 * DXF's older colours are numbers from 1 to 255 of a fixed palette. Readers that know no true colours go by these, so a
 * file gives both.
 */

type Rgb = readonly [red: number, green: number, blue: number];

/** 1 to 9: what the names red, yellow, green, cyan, blue and magenta stand for, then black or white, and two greys. */
const NAMED: readonly Rgb[] = [
  [255, 0, 0],
  [255, 255, 0],
  [0, 255, 0],
  [0, 255, 255],
  [0, 0, 255],
  [255, 0, 255],
  [255, 255, 255],
  [128, 128, 128],
  [192, 192, 192],
];

/** Brightness of the five pairs of each hue; the second of a pair is half as saturated. */
const BRIGHTNESS = [1, 0.65, 0.5, 0.3, 0.15];
const FIRST_HUE = 10;
const FIRST_GREY = 250;
const HUE_STEP = 15;

/** 250 to 255, as the library ezdxf lists them. */
const GREYS = [0, 101, 102, 153, 204, 255];

/** Black on white, white on black. */
const BLACK_OR_WHITE = 7;

/** The red, green and blue of `#rrggbb`, 0…255 each. */
function rgbOf(hex: string): Rgb {
  const number = parseInt(hex.slice(1), 16);
  return [(number >> 16) & 255, (number >> 8) & 255, number & 255];
}

/** The index whose colour lies nearest `#rrggbb`, the lower one of two; black is 7, which shows on any ground. */
export function indexColour(hex: string): number {
  const wanted = rgbOf(hex);
  if (wanted.every((share) => share === 0)) return BLACK_OR_WHITE;
  let [best, least] = [BLACK_OR_WHITE, Infinity];
  palette.forEach((colour, i) => {
    const far = colour.reduce((sum, share, axis) => sum + (share - (wanted[axis] ?? 0)) ** 2, 0);
    if (far < least) [best, least] = [i + 1, far];
  });
  return best;
}

const palette: readonly Rgb[] = [
  ...NAMED,
  ...Array.from({ length: FIRST_GREY - FIRST_HUE }, (_, i) => hued(i)),
  ...GREYS.map((grey): Rgb => [grey, grey, grey]),
];

/** Ten shades for each hue, a hue every 15° round from red. */
function hued(at: number): Rgb {
  const hue = Math.floor(at / 10) * HUE_STEP;
  const bright = 255 * (BRIGHTNESS[Math.floor((at % 10) / 2)] ?? 1);
  const pale = at % 2 === 0 ? 0 : bright / 2;
  const share = (from: number): number => {
    const away = Math.abs(((hue - from + 540) % 360) - 180);
    return Math.floor(pale + (bright - pale) * Math.min(1, Math.max(0, 2 - away / 60)));
  };
  return [share(0), share(120), share(240)];
}
