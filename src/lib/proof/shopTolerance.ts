import { radians } from '$lib/geometry/angle.ts';
import { length, subtract, type Vec3 } from '$lib/geometry/point.ts';
import { headOf } from '$lib/layout/ears.ts';
import { passingOf } from '$lib/layout/passing.ts';
import { placeSide } from '$lib/layout/place.ts';
import type { SideName } from '$lib/project/project.ts';
import { asStood } from '$lib/project/stood.ts';
import type { Plan, StandPlan } from '$lib/solution/document.ts';
import { angleTolerance, lengthTolerance, toleranceClasses, type ToleranceClass } from './generalTolerance.ts';
import { cabinetOf, plannedStanding, stood, type Standing } from './standing.ts';

/** One thing of the shop that may be off. */
export interface ShopError {
  readonly what: 'thickness' | 'kerf' | 'saw' | 'mark' | 'turn' | 'glue' | 'moisture';
  /** By how much: mm, degrees at the saw, and per cent of the wood’s dry mass of moisture. */
  readonly by: number;
  /** By how far the axis then passes the head from where it is planned, mm. */
  readonly atHead: number;
  /** By how much the stand is then wider, mm. */
  readonly wider: number;
}

/** What the making of one stand does at the head. */
export interface ShopTolerance {
  /** What does the most first. */
  readonly errors: readonly ShopError[];
  /** Each general tolerance class of ISO 2768-1, kept in slope, heights and marking out at once (root of the sum of squares), mm at the head. */
  readonly classes: readonly { readonly of: ToleranceClass; readonly atHead: number }[];
}

/** What is usual where nobody takes special care: common practice, no source. */
const USUAL = { thickness: 0.1, kerf: 0.2, saw: 0.5, mark: 1, turn: 1, glue: 0.1, moisture: 4 } as const;

/** Of beech across the grain, along the rings, for 1 % of moisture. Wood Handbook, FPL-GTR-190, table 13-5. */
const SOLID_SWELLS = 0.00431;

/** Of fibreboard for 1 % of moisture: in its plane, both ways alike, and through its thickness. Figures of the panel trade. */
const BOARD_SWELLS = { plane: 0.0005, thickness: 0.0035 } as const;

/** What errors of the shop do at the head, for one stand of a plan. Null where its aim has no answer. */
export function shopTolerance(plan: Plan, side: SideName): ShopTolerance | null {
  const speaker = asStood(plan.project.speaker);
  const pose = placeSide(speaker, plan.layout, side);
  if (!pose.ok) return null;
  const cabinet = cabinetOf(speaker, pose.value);
  const planned = plannedStanding(pose.value);
  const head = headOf(plan.layout.listener, plan.layout.desk);
  const passes = (standing: Standing): Vec3 => {
    const { onBaffle, forward } = stood(cabinet, standing);
    return passingOf({ aimedPoint: onBaffle(cabinet.aimed), forward }, head);
  };
  const at = passes(planned);
  const off = (change: Partial<Standing>): number => {
    const by = Object.fromEntries(
      Object.entries(change).map(([key, value]) => [key, planned[key as keyof Standing] + value]),
    );
    return length(subtract(passes({ ...planned, ...by }), at));
  };
  const stand = plan.stand[side];
  return {
    errors: errorsOf(stand, { depth: speaker.depth, tilt: pose.value.tilt, off }).sort((a, b) => b.atHead - a.atHead),
    classes: toleranceClasses.map((of) => ({ of, atHead: classAtHead(of, stand, planned, speaker.depth, off) })),
  };
}

interface Made {
  readonly depth: number;
  readonly tilt: number;
  /** How far the axis passes from where it is planned when the cabinet stands otherwise by so much. */
  readonly off: (change: Partial<Standing>) => number;
}

function errorsOf(stand: StandPlan, made: Made): ShopError[] {
  const { depth, tilt, off } = made;
  const sawn = stand.blocks.length > 0;
  const one = (what: ShopError['what'], atHead: number, wider = 0): ShopError => ({
    what,
    by: USUAL[what],
    atHead,
    wider,
  });
  return [
    ...(sawn ? [one('saw', off({ tilt: radians(USUAL.saw) }))] : []),
    ...(!sawn && stand.layers > 0
      ? [
          // Layers stand side by side: what they are off by adds up across, and no slope changes.
          one('thickness', 0, stand.layers * USUAL.thickness),
          one('glue', 0, (stand.layers - 1) * USUAL.glue),
          // Half of it at the top and half at the base, each square to its edge.
          ...(stand.printed.length > 0
            ? []
            : [one('kerf', off({ front: (USUAL.kerf / 2) * (1 + 1 / Math.cos(tilt)) }))]),
        ]
      : []),
    one('mark', Math.hypot(off({ x: USUAL.mark }), off({ y: USUAL.mark }))),
    one('turn', off({ toe: Math.atan(USUAL.turn / depth) })),
    swelling(stand, made, sawn),
  ];
}

/** A block swells upwards only, and grows steeper; a stack of board swells alike in height and length, and keeps its slope. */
function swelling(stand: StandPlan, { tilt, off }: Made, sawn: boolean): ShopError {
  const share = USUAL.moisture * (sawn ? SOLID_SWELLS : BOARD_SWELLS.plane);
  const steeper = sawn ? Math.atan(Math.tan(tilt) * (1 + share)) - tilt : 0;
  return {
    what: 'moisture',
    by: USUAL.moisture,
    atHead: off({ front: stand.frontHeight * share, tilt: steeper }),
    wider: stand.width * (sawn ? 0 : USUAL.moisture * BOARD_SWELLS.thickness),
  };
}

function classAtHead(
  of: ToleranceClass,
  { frontHeight, rearHeight }: StandPlan,
  { x, y }: Standing,
  depth: number,
  off: Made['off'],
): number {
  return Math.hypot(
    off({ tilt: angleTolerance(depth, of) }),
    off({ front: lengthTolerance(Math.max(frontHeight, rearHeight), of) }),
    off({ x: lengthTolerance(Math.abs(x), of) }),
    off({ y: lengthTolerance(Math.abs(y), of) }),
    off({ toe: Math.atan(lengthTolerance(depth, of) / depth) }),
  );
}

/** The coarsest class that keeps the axis within so far from where it is planned, mm; null where none does. */
export const coarsestWithin = ({ classes }: ShopTolerance, most: number): ToleranceClass | null =>
  classes.findLast(({ atHead }) => atHead <= most)?.of ?? null;
