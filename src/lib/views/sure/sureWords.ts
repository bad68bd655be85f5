import { capital } from '$lib/project/capital.ts';
import type { Plan } from '$lib/solution/document.ts';
import { sidesAlike } from '$lib/drawing/sidesAlike.ts';
import { measuredWith } from '$lib/project/fields/measuredWith.ts';
import type { Tool } from '$lib/project/fields/readingKinds.ts';
import type { Layout, SideName, Speaker } from '$lib/project/project.ts';
import type { SureKey } from '$lib/project/sure.ts';
import { MM_PER_INCH, type LengthDisplay } from '$lib/project/units.ts';
import { classNames } from '$lib/proof/generalTolerance.ts';
import { coarsestWithin, type ShopError, type ShopTolerance } from '$lib/proof/shopTolerance.ts';
import type { ListeningAreaPlan } from '$lib/solution/listeningArea.ts';
import type { SideSure, SurePlan } from '$lib/solution/howSure.ts';
import { angleText, formatNumber, lengthText, tapeText } from '$lib/views/ui/formatNumber.ts';
import { sureNames } from '$lib/project/sureNames.ts';

/** The side that is less sure, and how both are called where they are alike. */
export function lessSure(plan: Plan, { sides }: SurePlan): { readonly side: SideName; readonly name: string } {
  if (sidesAlike(plan)) return { side: 'right', name: 'each loudspeaker' };
  const side = sides.left.ellipse.major > sides.right.ellipse.major ? 'left' : 'right';
  return { side, name: `the ${side} loudspeaker` };
}

/** One measured value and its part of what is open. */
export interface SureRow {
  readonly value: SureKey;
  readonly name: string;
  /** What it is measured with where its span is what that commonly leaves open; null for a doubt of one's own. */
  readonly tool: string | null;
  /** What else it may be measured with. */
  readonly tools: readonly Tool[];
  /** How far it may be off: `± 10 mm`. */
  readonly span: string;
  /** 0…1. */
  readonly share: number;
  /** By how far the axis then passes the head. */
  readonly atHead: string;
}

/** Less of what is open is not worth a line. */
const LEAST_SHARE = 0.005;

/** What does the most first; what does next to nothing is left out. */
export const sureRows = ({ by }: SideSure, { project, layout }: Plan): readonly SureRow[] =>
  by
    .filter(({ share }) => share >= LEAST_SHARE)
    .map(({ value, span, share, shift }) => {
      const tools = measuredWith(value, lengthOf(value, project.speaker, layout));
      return {
        value,
        name: capital(sureNames[value]),
        tool: tools.find(({ sure }) => sure === span)?.name ?? null,
        tools,
        span: `±\u202f${value === 'baffleRake' ? angleText(span) : tapeText(span, project.display)}`,
        share,
        atHead: tapeText(Math.hypot(...shift), project.display),
      };
    });

/** How long what a value is taped over is, mm, at the most where it is several; 0 where it is none. */
function lengthOf(value: SureKey, speaker: Speaker, { desk, placement: { left, right } }: Layout): number {
  switch (value) {
    case 'deskHeight':
      return desk.height;
    case 'driverHeight':
      return Math.max(...speaker.drivers.map(({ height }) => height));
    case 'markX':
      return Math.max(Math.abs(left.x), Math.abs(right.x));
    case 'markY':
      return Math.max(left.y, right.y);
    default:
      return 0;
  }
}

/** What to measure again first; null where nothing is open. */
export function measureAgain({ by: [most] }: SideSure): string | null {
  if (!most || most.share < LEAST_SHARE) return null;
  return `Measure this again first: ${sureNames[most.value]}. It makes ${formatNumber(most.share * 100, 0)} % of what is open at the head.`;
}

/** What the doubts do to angles that are judged: triangle, and each crossover of a side. */
export const sureAngles = (
  sure: SurePlan,
  side: SideName,
): readonly { readonly name: string; readonly text: string }[] => [
  { name: 'Triangle at the head', text: `±\u202f${angleText(sure.triangle)}` },
  ...sure.sides[side].crossovers.map(({ between: [one, other], phase }) => ({
    name: `Phase between ${one} and ${other}`,
    text: `±\u202f${formatNumber(phase, 0)}°`,
  })),
];

/** Distances from the head that a chance is told for, mm: half a finger's breadth, a finger's, two. */
export const CHANCES = [10, 20, 40] as const;

/** Steps of rings that somebody reads at a glance, mm and inches. */
const RING_STEPS = { mm: [1, 2, 5, 10, 20, 50, 100, 200], in: [0.25, 0.5, 1, 2, 4, 8] } as const;

/** Two to four rings up to `reach`, mm, at a round distance from each other. */
export function ringsFor(reach: number, { length }: LengthDisplay): readonly number[] {
  const steps = RING_STEPS[length].map((step) => (length === 'mm' ? step : step * MM_PER_INCH));
  const step = steps.find((one) => one * 4 >= reach) ?? Math.ceil(reach / 4);
  return Array.from({ length: Math.max(2, Math.ceil(reach / step)) }, (_, index) => (index + 1) * step);
}

const ERROR_NAMES: Readonly<Record<ShopError['what'], string>> = {
  thickness: 'Each board’s thickness',
  kerf: 'Kerf',
  saw: 'Angle at the saw',
  mark: 'Mark on the desk',
  turn: 'A rear corner, sideways',
  glue: 'Each glue line',
  moisture: 'Moisture of the wood',
};

/** One thing of the shop, by how much it may be off, and what that does. */
export interface ShopRow {
  readonly name: string;
  readonly by: string;
  readonly atHead: string;
  /** `5.4 mm wider`; empty where the width stays. */
  readonly wider: string;
}

/** Less is nothing that a caliper shows, mm. */
const LEAST_WIDER = 0.05;

export const shopRows = ({ errors }: ShopTolerance, { project: { display } }: Plan): readonly ShopRow[] =>
  errors.map(({ what, by, atHead, wider }) => ({
    name: ERROR_NAMES[what],
    by: what === 'saw' ? angleText(by) : what === 'moisture' ? `${by}\u202f%` : lengthText(by, display),
    atHead: lengthText(atHead, display),
    wider: wider < LEAST_WIDER ? '' : `${lengthText(wider, display)} wider`,
  }));

/** What is worth care in the shop, and which general tolerance does. `area`: how far the head may move; null where that is not known yet. */
export function shopVerdict(
  tolerance: ShopTolerance,
  area: Pick<ListeningAreaPlan, 'box'> | null,
  { project: { display } }: Plan,
): string {
  const [most] = tolerance.errors;
  const care = most && most.atHead > 0 ? `Worth the most care: ${lowerFirst(ERROR_NAMES[most.what])}.` : '';
  if (!area) return care;
  const zone = Math.min(...Object.values(area.box).map(({ distance }) => distance));
  const of = coarsestWithin(tolerance, zone);
  const reach = tapeText(zone, display);
  return `${care} ${
    of === null
      ? `No general tolerance of ISO 2768-1 keeps the axis within the safe zone, ${reach} at its narrowest: set each stand by a light or a string.`
      : `ISO 2768-1 ${of} (${classNames[of]}) will do: all of it at once moves the axis ${lengthText(tolerance.classes.find((one) => one.of === of)?.atHead ?? 0, display)} at the head, and the safe zone is ${reach} at its narrowest.`
  }`.trim();
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
