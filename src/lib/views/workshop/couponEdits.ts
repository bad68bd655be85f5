import { degrees } from '$lib/geometry/angle.ts';
import { pointerTo } from '$lib/project/fault.ts';
import { stock as stockFields } from '$lib/project/fields/stock.ts';
import { fromMillimetres, type LengthUnit } from '$lib/project/units.ts';
import type { Edit } from '$lib/document/edit.ts';
import { formatNumber } from '$lib/views/ui/formatNumber.ts';
import type { CouponResult, Measured } from '$lib/workshop/coupon/coupon.ts';

/** A caliper’s hundredth is kept, and a digit more, for a mean is finer than its readings. */
const rounded = (value: number): number => Number(value.toFixed(3));

const within = (value: number, { min, max }: { min: number; max: number }): number =>
  Math.min(max, Math.max(min, rounded(value)));

/** What a coupon’s result writes into a board: one step. A taper that was not measured stays as it is. */
export const couponEdits = (stock: number, { kerf, taper }: CouponResult): readonly Edit[] => [
  [pointerTo('stock', stock, 'kerf'), within(kerf.value, stockFields.kerf)],
  ...(taper
    ? [[pointerTo('stock', stock, 'taper'), within(Math.abs(degrees(taper.value)), stockFields.taper)] as const]
    : []),
];

const withDoubt = ({ value, uncertainty }: Measured, unit: string, decimals: number): string =>
  `${formatNumber(value, decimals)} ${uncertainty === null ? '' : `± ${formatNumber(uncertainty, decimals)} `}${unit}`;

/** A thousandth of a millimetre, or about as much in inches. */
const DECIMALS = { mm: 3, in: 5 } as const;

/** The result in words and figures, name by name. */
export function couponFigures(
  result: CouponResult,
  unit: LengthUnit,
): readonly (readonly [name: string, text: string])[] {
  const { entry, exit, kerf, taper, largeFace, scale } = result;
  const length = ({ value, uncertainty }: Measured): string =>
    withDoubt(
      {
        value: fromMillimetres(value, unit),
        uncertainty: uncertainty === null ? null : fromMillimetres(uncertainty, unit),
      },
      unit,
      DECIMALS[unit],
    );
  const inDegrees = (of: Measured): Measured => ({
    value: degrees(of.value),
    uncertainty: of.uncertainty === null ? null : degrees(of.uncertainty),
  });
  return [
    ['Kerf, mean', length(kerf)],
    ...(entry ? [['Kerf at the beam’s face', length(entry)] as const] : []),
    ...(exit ? [['Kerf at the far face', length(exit)] as const] : []),
    ...(taper ? [['Taper, each side', withDoubt(inDegrees(taper), '°', 2)] as const] : []),
    ...(largeFace ? [['Parts are larger at', largeFace === 'exit' ? 'the far face' : 'the beam’s face'] as const] : []),
    ...(scale
      ? [
          [
            'Drawn too large by',
            withDoubt({ value: scale.value * 100, uncertainty: scale.uncertainty && scale.uncertainty * 100 }, '%', 2),
          ] as const,
        ]
      : []),
    ['Readings used', String(result.used)],
  ];
}
