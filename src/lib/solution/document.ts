import type { Vec3 } from '$lib/geometry/point.ts';
import type { SurfaceName } from '$lib/acoustics/surface.ts';
import type { Layout, Project, SideName } from '$lib/project/project.ts';
import type { Finding } from '$lib/solution/findings/finding.ts';
import type { StandBody } from '$lib/stand/body.ts';
import type { Step } from '$lib/stand/step.ts';
import type { EdgeName } from '$lib/stand/tipping.ts';
import type { Part } from '$lib/workshop/part.ts';
import type { Take } from '$lib/workshop/standParts.ts';
import type { WidthSpread } from './widthSpread.ts';

/**
 * Where everything is and the stands under it, in the units of documents: angles in degrees, lengths in mm, delays in ms, the
 * time difference in µs, levels in dB. Nothing in it is rounded. What takes long is worked out when it is first read.
 */
export interface Plan {
  readonly project: Project;
  readonly layout: Layout;
  /** The layout's place in the project. */
  readonly layoutIndex: number;
  /** m/s. */
  readonly speedOfSound: number;
  readonly head: Vec3;
  readonly ears: Record<SideName, Vec3>;
  readonly sides: Record<SideName, SidePlan>;
  readonly triangle: TrianglePlan;
  /** What the geometry and the stands suffer from, worst first. */
  readonly checks: readonly Finding[];
  readonly balance: Record<SideName, BalancePlan>;
  readonly stand: Record<SideName, StandPlan>;
  /** What to cut for both stands, one entry for every part that differs. */
  readonly parts: readonly Part[];
}

export interface SidePlan {
  readonly toe: number;
  readonly tilt: number;
  readonly axisElevation: number;
  readonly lift: number;
  readonly frontEdgeHeight: number;
  readonly rearEdgeHeight: number;
  readonly mark: Vec3;
  readonly aimedPoint: Vec3;
  /** Unit vector. */
  readonly axis: Vec3;
  /** Where the axis passes nearest the head. */
  readonly nearest: Vec3;
  readonly miss: number;
  readonly drivers: readonly DriverPlan[];
  readonly crossovers: readonly CrossoverPlan[];
  /** Worked out when first read. */
  readonly reflections: readonly ReflectionPlan[];
  /** The cabinet's eight corners: bottom then top, each front outboard, front inboard, rear inboard, rear outboard. */
  readonly cabinet: readonly Vec3[];
}

export interface DriverPlan {
  readonly name: string;
  readonly position: Vec3;
  readonly acousticCentre: Vec3;
  /** Acoustic centre to head. */
  readonly distance: number;
  /** Degrees at the position between axis and head. */
  readonly offAxis: number;
  /** Diameter that makes it beam, mm, and whether that is an estimate, as nobody stated it. */
  readonly radiating: number;
  readonly radiatingEstimated: boolean;
}

export interface CrossoverPlan {
  readonly between: readonly [string, string];
  readonly frequency: number;
  /** Path of the lower driver less that of the upper one, mm. */
  readonly pathDifference: number;
  /** Degrees, unwrapped: 360 · frequency · path difference / speed of sound. */
  readonly phase: number;
  /** Whether the project says where the drivers were lined up: without that nothing is known of their sum. */
  readonly sumKnown: boolean;
  /** dB re the two drivers lined up; null where they cancel outright, or where it is not known. */
  readonly sumLevel: number | null;
}

/** One driver's sound by way of one surface. */
export interface ReflectionPlan {
  readonly surface: SurfaceName;
  /** Which of the screens, from 0; null for any other surface. */
  readonly monitor: number | null;
  readonly driver: string;
  readonly point: Vec3;
  /** Whether the surface is there at the point. */
  readonly lands: boolean;
  /** What stands in its way; null for nothing. It then loses the more the higher the frequency. */
  readonly screenedBy: 'monitor' | 'surface' | 'left-cabinet' | 'right-cabinet' | null;
  readonly pathDifference: number;
  readonly delay: number;
  /** dB re the direct sound, by spreading alone. */
  readonly relativeLevel: number;
  /** Hz: the lowest that arrives half a wave late within the band that the driver plays; null where there is none. */
  readonly firstNotch: number | null;
  /** That and the next such frequencies, three at most. */
  readonly notches: readonly number[];
}

export interface TrianglePlan {
  readonly base: number;
  readonly leftDistance: number;
  readonly rightDistance: number;
  readonly angle: number;
  readonly timeDifference: number;
  readonly levelDifference: number;
}

/** A number that is known (`least` and `most` are the same) or lies between two. */
export interface SpanPlan {
  readonly least: number;
  readonly most: number;
}

/** How safely one loudspeaker stands: mm, degrees, kg and N. */
export interface BalancePlan {
  /** Centres of mass in the desk frame: of the cabinet, of the stand's wood, and of both; null without the cabinet's mass. */
  readonly cabinet: Vec3;
  readonly wood: Vec3;
  readonly joint: Vec3 | null;
  /** Of cabinet and stand, kg; null without the cabinet's. */
  readonly mass: number | null;
  /**
   * Cabinet and stand as one, over each edge of the base: how far inside it the plumb line meets the desk (negative
   * outside), and the least tilt of the desk that tips it over. Spans over all masses when the cabinet's is not given.
   */
  readonly base: Record<EdgeName, { readonly margin: SpanPlan; readonly angle: SpanPlan }>;
  /** The same for the cabinet alone on its slope. */
  readonly contact: Record<EdgeName, { readonly margin: number; readonly angle: number }>;
  /** The steepest plane on which nothing tips, turned any way; negative when it falls over on the level. */
  readonly survives: SpanPlan;
  /** What gives way first there: the cabinet alone or both, over which edge. */
  readonly weakest: { readonly what: 'cabinet' | 'both'; readonly edge: EdgeName };
  /** Horizontal pushes at the cabinet's top edge, outwards over each edge; null without the cabinet's mass. */
  readonly push: Record<EdgeName, PushPlan> | null;
  readonly slide: SlidePlan;
  readonly verdict: VerdictPlan;
  /** Why something above is null; null when nothing is. */
  readonly missing: string | null;
}

export interface PushPlan {
  /** Tipping force, N, and whether the cabinet then leaves its stand behind. */
  readonly tips: number;
  readonly off: boolean;
  /** Push that starts the cabinet sliding on its stand; null when a stop or the slope keeps it from sliding that way. */
  readonly slides: number | null;
}

/** One way in which a loudspeaker does not stay: the cabinet alone or with its stand, and the way it goes; null for any, or along a stop. */
export interface GivesWayPlan {
  readonly how: 'tips' | 'slides';
  readonly what: 'cabinet' | 'both';
  readonly towards: EdgeName | null;
}

/** Whether a loudspeaker stays where it is put: the least of tipping and sliding. */
export interface VerdictPlan {
  /** The steepest plane on which nothing tips and nothing slides, whichever way that is turned; 0 or less: not on the level. */
  readonly holds: SpanPlan;
  /** What gives way first on a steeper one. */
  readonly first: GivesWayPlan;
  /** The least level push at the cabinet's top edge that starts anything, N, and what; null without the cabinet's mass. */
  readonly push: { readonly force: number; readonly starts: GivesWayPlan } | null;
}

/** A cabinet held on its slope by friction. */
export interface SlidePlan {
  readonly slope: number;
  /** The coefficient counted, the least that it may be; the most; what makes it; and the one that the slope takes. */
  readonly friction: number;
  readonly frictionMost: number;
  readonly by: 'pad' | 'wood';
  readonly frictionNeeded: number;
  /** Slope on which it would just start, atan of the friction; and that less the slope. */
  readonly frictionAngle: number;
  readonly margin: number;
  /** The steepest plane on which the cabinet stays, turned any way; with a stop, sideways along it. */
  readonly survives: SpanPlan;
  readonly stop: boolean;
  /** What friction leaves for a stop to hold, N; null without the cabinet's mass. */
  readonly stopLoad: number | null;
}

/** One stand as documents tell of it: its body, mitre and bevel of its saw cuts in degrees, its pieces as the parts of the plan. */
export interface StandPlan extends Omit<StandBody, 'pieces' | 'steps'> {
  /** How far the width may be off; null where it is of one piece. */
  readonly widthSpread: WidthSpread | null;
  /** Name of the part that most of it is made of; null when nothing of it is cut from sheet. */
  readonly part: string | null;
  /** What this stand takes of the plan's parts. */
  readonly pieces: readonly Take[];
  /** The order of work, each step with its text in mm. */
  readonly steps: readonly (Step & { readonly text: string })[];
}
