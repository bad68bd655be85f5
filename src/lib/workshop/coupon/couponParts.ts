import { openPath, polygonPath } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';
import { reversed } from '$lib/geometry/reversed.ts';
import type { Stock } from '$lib/project/project.ts';
import { toMillimetres, type LengthUnit } from '$lib/project/units.ts';
import type { CouponReading } from './coupon.ts';
import { labelInside } from '$lib/workshop/lettering/label.ts';
import { letteringWidth } from '$lib/workshop/lettering/lettering.ts';
import type { Part, PartLabel } from '$lib/workshop/part.ts';

/** Widths of tabs and slots, in the unit that is measured in: far enough apart to tell the machine's scale from its kerf. */
const WIDTHS = { mm: [5, 10, 20, 40], in: [0.2, 0.4, 0.8, 1.6] } as const;
/** How long tabs and slots are, mm: room for a caliper's jaws. */
const LONG = 20;
/** Wood round every slot, mm. */
const WALL = 8;
/** What the slots of the gauge have more than the stock is thick, likewise: from a press fit to an easy one. */
const FITS = { mm: [-0.1, 0, 0.1, 0.2, 0.3], in: [-0.004, 0, 0.004, 0.008, 0.012] } as const;
/** Decimals of what is lettered under them. */
const FIT_DECIMALS = { mm: 1, in: 3 } as const;
/** How deep the gauge's slots are, mm, and the wood between them. */
const DEEP = 15;
const BETWEEN = 10;
const LETTERS = 2.5;

/** What is to be measured on the coupon, not yet measured. Drawn in mm, round in the unit. */
export const couponReadings = (unit: LengthUnit): readonly CouponReading[] =>
  (['tab', 'slot'] as const).flatMap((kind) =>
    WIDTHS[unit].map((width) => ({ kind, drawn: toMillimetres(width, unit), entry: null, exit: null })),
  );

/**
 * The test coupon for one stock: a plate with slots and loose tabs of the same widths, and a comb to try how tightly the
 * stock's own edge sits. To be cut before anything else; drawn at finished size, as all parts are.
 *
 * @param unit of the round widths, and of the numbers lettered on it.
 */
export function couponParts({ name, thickness }: Pick<Stock, 'name' | 'thickness'>, unit: LengthUnit): readonly Part[] {
  const common = { stock: name, thickness, quantity: 1 };
  return [
    { ...common, ...plate(unit) },
    ...WIDTHS[unit].map((width) => ({ ...common, ...tab(width, unit) })),
    { ...common, ...comb(thickness, unit) },
  ];
}

type Drawn = Pick<Part, 'name' | 'outside' | 'inside' | 'mark' | 'labels'>;

const rectangle = (x: number, y: number, width: number, height: number): Point[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

function plate(unit: LengthUnit): Drawn {
  let x = WALL;
  const slots = WIDTHS[unit].map((told) => {
    const [from, width] = [x, toMillimetres(told, unit)];
    x += width + WALL;
    return { told, width, from };
  });
  const strip = WALL + LETTERS * 2;
  return {
    name: 'coupon-slots',
    outside: polygonPath(rectangle(0, 0, x, strip + LONG + WALL)),
    inside: slots.map(({ width, from }) => reversed(polygonPath(rectangle(from, strip, width, LONG)))),
    mark: [],
    labels: slots.flatMap(({ told, width, from }) => lettered(String(told), from + width / 2, width + WALL)),
  };
}

function tab(told: number, unit: LengthUnit): Drawn {
  const width = toMillimetres(told, unit);
  const outline = rectangle(0, 0, width, LONG);
  return {
    name: `coupon-tab-${told}`,
    outside: polygonPath(outline),
    inside: [],
    mark: [],
    labels: labelInside(outline, { from: 0, to: width }, [String(told)]),
  };
}

/** Open slots along the upper edge, each a little wider than the one before. */
function comb(thickness: number, unit: LengthUnit): Drawn {
  const widths = FITS[unit].map((fit) => thickness + toMillimetres(fit, unit));
  const length = widths.reduce((sum, width) => sum + width + BETWEEN, BETWEEN);
  const height = WALL + LETTERS * 2 + DEEP;
  let x = BETWEEN;
  const slots = widths.map((width) => {
    const from = x;
    x += width + BETWEEN;
    return { from, to: from + width };
  });
  const upper = [...slots].reverse().flatMap(({ from, to }): Point[] => [
    [to, height],
    [to, height - DEEP],
    [from, height - DEEP],
    [from, height],
  ]);
  return {
    name: 'coupon-fits',
    outside: polygonPath([[0, 0], [length, 0], [length, height], ...upper, [0, height]]),
    inside: [],
    // A line down from each slot leads to its number.
    mark: slots.map(({ from, to }) =>
      openPath([
        [(from + to) / 2, height - DEEP - 1],
        [(from + to) / 2, height - DEEP - 3],
      ]),
    ),
    labels: slots.flatMap(({ from, to }, i) =>
      lettered((FITS[unit][i] ?? 0).toFixed(FIT_DECIMALS[unit]), (from + to) / 2, to - from + BETWEEN),
    ),
  };
}

/** A number under its slot, as large as its room is wide. */
function lettered(text: string, x: number, room: number): readonly PartLabel[] {
  const height = Math.min(LETTERS, (0.9 * room) / letteringWidth(text, 1));
  return [{ text, height, x, y: WALL / 2 }];
}
