import { asFixed, asTyped, says, type Sentence, type Words } from '$lib/project/sentence.ts';
import { leastSquares } from './leastSquares.ts';
import { largeFace, taperFrom } from '$lib/workshop/taper.ts';

/** What was measured of one tab or slot of the coupon, mm; null for what was not. */
export interface CouponReading {
  readonly kind: 'tab' | 'slot';
  /** Width as drawn, finished. */
  readonly drawn: number;
  /** At the face that the beam entered, and at the far one. */
  readonly entry: number | null;
  readonly exit: number | null;
}

export interface CouponSetting {
  /** Of the stock, mm. */
  readonly thickness: number;
  /** The kerf that the files of the coupon took into account; 0 when it was cut along its lines. */
  readonly kerfUsed: number;
  /** Smallest step of the caliper, mm; default 0.01. */
  readonly resolution?: number;
}

/** A number with its standard uncertainty; that is null when there are too few readings to tell. */
export interface Measured {
  readonly value: number;
  readonly uncertainty: number | null;
}

/** What the coupon says of the beam. mm and radians. */
export interface CouponResult {
  /** Width of the cut at each face, null for a face that nobody measured; and its mean. */
  readonly entry: Measured | null;
  readonly exit: Measured | null;
  readonly kerf: Measured;
  /** Lean of each side from plumb, positive where the cut is wider at the entry; null without both faces. */
  readonly taper: Measured | null;
  /** The face at which a part is larger. */
  readonly largeFace: 'entry' | 'exit' | null;
  /** By how much the machine draws too large, as a share; null when the readings cannot tell it from the kerf. */
  readonly scale: Measured | null;
  /** Readings used, and what was left out or looks wrong, in words. */
  readonly used: number;
  readonly remarks: readonly Words[];
}

/** A width further than this from the drawn one is a slip of the pen, not a kerf, mm: half the widest kerf of a project. */
const SLIP = 3;
/** A residual beyond this many robust deviations, and beyond a twentieth of a millimetre, deserves a second look. */
const SUSPICIOUS = 4;
const SUSPICIOUS_LEAST = 0.05;
/** Median absolute deviation to standard deviation, of a normal distribution. */
const ROBUST = 1.4826;
/** Readings beyond the unknowns that it takes to trust a scale. */
const SPARE = 2;

interface Row {
  readonly name: Sentence;
  readonly face: 'entry' | 'exit';
  readonly sign: 1 | -1;
  readonly drawn: number;
  readonly off: number;
}

/**
 * Kerf and taper from a cut coupon, by least squares over all tabs and slots and both faces: a tab comes out at
 * drawn·(1 + scale) + used − kerf, a slot at drawn·(1 + scale) − used + kerf. Standard uncertainties are those of the fit,
 * with at least the caliper's resolution, a rectangular distribution, as the scatter of a reading. Null with the reasons
 * when nothing usable was measured.
 */
export function fitCoupon(
  readings: readonly CouponReading[],
  { thickness, kerfUsed, resolution = 0.01 }: CouponSetting,
): { readonly result: CouponResult | null; readonly remarks: readonly Words[] } {
  const { rows, remarks } = sifted(readings);
  if (rows.length === 0) return { result: null, remarks: [...remarks, 'Nothing usable was measured.'] };
  const faces = (['entry', 'exit'] as const).filter((face) => rows.some((row) => row.face === face));
  const reach = Math.max(...rows.map(({ drawn }) => drawn));
  const design = (scaled: boolean): number[][] =>
    rows.map(({ face, sign, drawn }) => [
      ...faces.map((one) => (one === face ? -sign : 0)),
      ...(scaled ? [drawn / reach] : []),
    ]);
  const off = rows.map((row) => row.off);
  const withScale = rows.length >= faces.length + 1 + SPARE ? leastSquares(design(true), off) : null;
  const fit = withScale ?? leastSquares(design(false), off);
  if (!fit) return { result: null, remarks: [...remarks, 'Nothing usable was measured.'] };

  const spare = rows.length - fit.values.length;
  const floor = resolution ** 2 / 12;
  const variance = spare > 0 ? Math.max(fit.rss / spare, floor) : null;
  const sure = (...weights: readonly number[]): number | null =>
    variance === null
      ? null
      : Math.sqrt(
          variance *
            weights.reduce(
              (sum, a, i) => sum + weights.reduce((s, b, j) => s + a * b * (fit.spread[i]?.[j] ?? 0), 0),
              0,
            ),
        );
  const at = (face: 'entry' | 'exit'): Measured | null => {
    const i = faces.indexOf(face);
    return i < 0
      ? null
      : { value: kerfUsed + (fit.values[i] ?? 0), uncertainty: sure(...faces.map((_, j) => (i === j ? 1 : 0))) };
  };
  const [entry, exit] = [at('entry'), at('exit')];
  const kerf: Measured =
    entry && exit
      ? { value: (entry.value + exit.value) / 2, uncertainty: sure(0.5, 0.5) }
      : (entry ?? exit ?? { value: kerfUsed, uncertainty: null });
  const taper = entry && exit ? taperOf(entry.value, exit.value, thickness, sure(1, -1)) : null;
  const scale = withScale
    ? {
        value: (fit.values.at(-1) ?? 0) / reach,
        uncertainty: over(sure(...faces.map(() => 0), 1), reach),
      }
    : null;
  const doubts = suspicious(rows, design(withScale !== null), fit.values);
  return {
    result: {
      entry,
      exit,
      kerf,
      taper,
      largeFace: taper ? largeFace(taper.value) : null,
      scale,
      used: rows.length,
      remarks: [...remarks, ...doubts],
    },
    remarks: [...remarks, ...doubts],
  };
}

const over = (value: number | null, by: number): number | null => (value === null ? null : value / by);

/** atan's slope is cos², so an uncertainty of the widths' difference becomes one of the angle. */
function taperOf(entry: number, exit: number, thickness: number, difference: number | null): Measured {
  const value = taperFrom(entry, exit, thickness);
  return { value, uncertainty: over(difference, (2 * thickness) / Math.cos(value) ** 2) };
}

/** The readings that can be a measured width, and a sentence for each that cannot. */
function sifted(readings: readonly CouponReading[]): { rows: readonly Row[]; remarks: readonly Words[] } {
  const rows: Row[] = [];
  const remarks: Words[] = [];
  for (const { kind, drawn, entry, exit } of readings) {
    for (const [face, measured] of [
      ['entry', entry],
      ['exit', exit],
    ] as const) {
      if (measured === null) continue;
      const name = says`${kind} of ${asTyped(drawn)}, ${face} face`;
      const sound = Number.isFinite(measured) && measured > 0 && Math.abs(measured - drawn) <= SLIP;
      if (sound) rows.push({ name, face, sign: kind === 'tab' ? 1 : -1, drawn, off: measured - drawn });
      else
        remarks.push(
          says`${name}: expected a width within ${asTyped(SLIP)} of the drawn one, got ${asTyped(measured)}: left out.`,
        );
    }
  }
  return { rows, remarks };
}

function suspicious(
  rows: readonly Row[],
  design: readonly (readonly number[])[],
  values: readonly number[],
): Sentence[] {
  const residuals = rows.map(
    ({ off }, i) => off - (design[i] ?? []).reduce((sum, x, j) => sum + x * (values[j] ?? 0), 0),
  );
  const sizes = residuals.map(Math.abs).sort((a, b) => a - b);
  const median = sizes[Math.floor(sizes.length / 2)] ?? 0;
  const limit = Math.max(SUSPICIOUS * ROBUST * median, SUSPICIOUS_LEAST);
  return rows.flatMap(({ name }, i) => {
    const off = residuals[i] ?? 0;
    return Math.abs(off) > limit ? [says`${name}: ${asFixed(off, 2)} away from the others: measure it again.`] : [];
  });
}
