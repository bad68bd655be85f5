import { dot, subtract } from '$lib/geometry/point.ts';
import type { SideName } from '$lib/project/project.ts';
import { MM_PER_INCH, type LengthUnit } from '$lib/project/units.ts';
import type { SideProof } from '$lib/proof/prove.ts';
import { stood } from '$lib/proof/standing.ts';
import type { SafeZone } from '$lib/solution/safeZone.ts';

/** Where an axis passes the head: mm to the right and up, and the ellipse that holds it in 95 of 100, turned counter-clockwise by so many degrees. */
export interface Hit {
  readonly side: SideName;
  readonly right: number;
  readonly over: number;
  readonly major: number;
  readonly minor: number;
  readonly turn: number;
}

/** What is known of one side; null where its readings do not say. */
export const hitOf = ({ side, known, pass, spread }: SideProof): Hit | null =>
  known
    ? {
        side,
        right: pass.right,
        over: pass.over,
        major: spread.pass.major,
        minor: spread.pass.minor,
        turn: (spread.pass.turn * 180) / Math.PI,
      }
    : null;

/** The plan's own aim has to be this far beside the head to be told, mm: less is rounding. */
const BESIDE = 0.5;

/** Where the plan's own axis passes, mm to the right and up from behind the head; null where that is the head. */
export function aimOf({ side, past, target, head, cabinet, planned }: SideProof): Pick<Hit, 'side' | 'right' | 'over'> | null {
  if (past < BESIDE) return null;
  const { forward } = stood(cabinet, planned);
  const run = Math.hypot(forward.x, forward.y);
  const off = subtract(target, head);
  const across = { x: -forward.y / run, y: forward.x / run, z: 0 };
  const up = { x: (-forward.z * forward.x) / run, y: (-forward.z * forward.y) / run, z: run };
  return { side, right: dot(off, across), over: dot(off, up) };
} // prettier-ignore

/** How far the target shows round the head at least, and at most, mm. */
const LEAST = 115;
const MOST = 900;

/** Half of what the target shows: room for every hit with what it may be off. */
export const reachOf = (hits: readonly Hit[]): number =>
  Math.min(MOST, Math.max(LEAST, ...hits.map(({ right, over, major }) => 1.25 * (Math.max(Math.abs(right), Math.abs(over)) + major)))); // prettier-ignore

const RINGS = { mm: [10, 25, 50, 100, 200, 400, 800], in: [0.5, 1, 2, 4, 8, 16, 32] } as const;

/** Rings within a reach, with what each is called: radii in mm. */
export const ringsOf = (reach: number, unit: LengthUnit): readonly { readonly radius: number; readonly text: string }[] =>
  RINGS[unit]
    .map((size) => ({ radius: unit === 'in' ? size * MM_PER_INCH : size, text: String(size) }))
    .filter(({ radius }, index) => index < 3 || radius < 0.8 * reach)
    .slice(-4); // prettier-ignore

/** Whether an axis passes within the safe zone, as far as its readings tell. */
export const isSafe = ({ right, over }: Pick<Hit, 'right' | 'over'>, zone: SafeZone): boolean =>
  right <= zone.right && -right <= zone.left && over <= zone.up && -over <= zone.down;
