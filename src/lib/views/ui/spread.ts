import { degrees } from '$lib/geometry/angle.ts';
import { aimSpread } from '$lib/layout/aimSpread.ts';
import { missSpread } from '$lib/layout/missSpread.ts';
import type { SideName } from '$lib/project/project.ts';
import type { Plan } from '$lib/solution/document.ts';
import { angleText, tapeText } from './formatNumber.ts';

/** What rounds to nothing is not shown. */
const LEAST_ANGLE = 0.05;
const LEAST_LENGTH = 0.5;

/** What the tape leaves open of one loudspeaker’s aim, each as `± 1.4°`, empty where it is next to nothing. */
export interface SpreadTexts {
  readonly toe: string;
  readonly tilt: string;
  readonly lift: string;
}

export function spreadTexts({ project: { speaker, sure, display }, layout }: Plan, side: SideName): SpreadTexts {
  const { toe, tilt, lift } = aimSpread(speaker, layout, side, sure)?.all ?? { toe: 0, tilt: 0, lift: 0 };
  const angle = (value: number): string => (degrees(value) < LEAST_ANGLE ? '' : plusMinus(angleText(degrees(value))));
  return {
    toe: angle(toe),
    tilt: angle(tilt),
    lift: lift < LEAST_LENGTH ? '' : plusMinus(tapeText(lift, display)),
  };
}

/** How far from where it is planned the axis may pass the head, as `± 18 mm`, empty where it is next to nothing. */
export function missText({ project: { speaker, sure, display }, layout }: Plan, side: SideName): string {
  const by = missSpread(speaker, layout, side, sure) ?? 0;
  return by < LEAST_LENGTH ? '' : plusMinus(tapeText(by, display));
}

const NARROW = '\u202f';
const plusMinus = (text: string): string => `±${NARROW}${text.replace(/^≈\s?/, '')}`;

/** A value and what is left open of it: `41.9° ± 1.4°`. */
export const withSpread = (value: string, spread: string): string => (spread === '' ? value : `${value} ${spread}`);
