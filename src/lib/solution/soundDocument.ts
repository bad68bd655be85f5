import type { Vec3 } from '$lib/geometry/point.ts';
import type { SurfaceName } from '$lib/acoustics/surface.ts';
import type { SideName } from '$lib/project/project.ts';
import type { ReflectionPlan } from './document.ts';

/**
 * What the geometry does to the sound, as the page sees it: angles in degrees, lengths in mm, delays in ms, levels in dB,
 * frequencies in Hz. Nothing in it is rounded. Curves over frequency stand over `frequencies`.
 */
export interface SoundPlan {
  readonly layout: string;
  /** Hz, evenly in octaves from 20 Hz to 20 kHz. */
  readonly frequencies: Readonly<Float64Array>;
  readonly sides: Record<SideName, SideSound>;
  /** Both loudspeakers with the same signal; 0 dB is both flat, on axis and in step. */
  readonly both: ResponsePlan;
  /** Where the drivers are lined up, and whether that is assumed of their maker; null where it is not known, and they count as arriving in step. */
  readonly designPoint: { readonly driver: string; readonly distance: number; readonly assumed: boolean } | null;
  readonly baffleStep: BaffleStepPlan;
  readonly early: EarlyRule;
  /** Where the responses may lie, as measured values may be off; null where that is still being worked out. */
  readonly bands: Readonly<Record<SideName | 'both', ResponseBand>> | null;
  /** Hz: under it nothing is known of what the desk does, and the responses' lowest part with it. */
  readonly deskKnownFrom: number;
  /** What the responses leave out, one sentence each. */
  readonly leftOut: readonly string[];
}

export interface SideSound {
  readonly drivers: readonly DriverSound[];
  readonly crossovers: readonly CrossoverSound[];
  readonly reflections: readonly ReflectionSound[];
  /** By surface: what all drivers together send by it. */
  readonly early: readonly EarlySound[];
  /** Whether every early reflection meets the rule in `early`. */
  readonly earlyPasses: boolean;
  /** 0 dB is this loudspeaker flat, on its axis, at the head's distance from the aimed point, with no surface near. */
  readonly response: ResponsePlan;
}

export interface DriverSound {
  readonly name: string;
  /** Between its axis and the head, at the baffle. */
  readonly offAxis: number;
  /** Diameter of the piston that stands for it, and whether that is an estimate, as nobody stated it. */
  readonly radiating: number;
  readonly radiatingEstimated: boolean;
  /** At the head re on its axis; an upper bound of the loss, as for any dome or cone. */
  readonly levels: Float64Array;
  readonly beams: readonly BeamPlan[];
}

/** Half-beamwidth at a frequency: where it is 3 and 6 dB down; null where it never is in front. */
export interface BeamPlan {
  readonly frequency: number;
  readonly threeDown: number | null;
  readonly sixDown: number | null;
}

export interface CrossoverSound {
  readonly between: readonly [string, string];
  readonly frequency: number;
  readonly alignment: 'in-phase' | 'quadrature';
  readonly lower: string;
  readonly upper: string;
  /** The one of the two that takes what is above the crossover. */
  readonly treble: string;
  /** Path of the lower driver less that of the upper one. */
  readonly pathDifference: number;
  /** Degrees, unwrapped. */
  readonly phase: number;
  /** Null where nobody said how the drivers were lined up: then nothing is known of their sum. */
  readonly sum: CrossoverSumSound | null;
}

export interface CrossoverSumSound {
  /** Path difference and phase less what they are at the design point. */
  readonly relativeDifference: number;
  readonly relativePhase: number;
  /** The sum re the drivers lined up; null where they cancel outright. In quadrature it may be over 0, up to 3.01. */
  readonly level: number | null;
  /** The same, whatever the crossover's own alignment is. */
  readonly inPhaseLevel: number | null;
  readonly quadratureLevel: number | null;
  /** Null for drivers one behind the other. */
  readonly lobe: LobePlan | null;
  readonly lineUp: LineUpPlan;
}

export interface LobePlan {
  readonly centre: Vec3;
  readonly forward: Vec3;
  readonly upward: Vec3;
  readonly radius: number;
  /** Elevation of the ear from `centre`, positive towards the upper driver. */
  readonly ear: number;
  readonly halfPower: BoundsPlan;
  readonly nulls: BoundsPlan;
  readonly angles: Float64Array;
  /** dB re the drivers lined up, −60 at the least. */
  readonly levels: Float64Array;
}

/** The nearest ones under and over the ear; null where there is none in front. */
export interface BoundsPlan {
  readonly below: number | null;
  readonly above: number | null;
}

export interface TreblePlan {
  readonly driver: string;
  readonly offAxis: number;
  /** At `frequency`, re on its axis. */
  readonly level: number;
  /** Whether the diameter that makes it beam is an estimate. */
  readonly radiatingEstimated: boolean;
  readonly frequency: number;
}

export interface LineUpPlan {
  readonly now: TreblePlan;
  /** The tilt that brings the drivers to the head in step, lift kept; null when none from −60° to 60° does. */
  readonly tilt: { readonly value: number; readonly price: TreblePlan } | null;
  /** The aimed point that does, as a fraction from the lower driver to the upper; null when none between them does. */
  readonly aimedPoint: { readonly value: number; readonly price: TreblePlan } | null;
}

/** A reflection of the plan, with what directivity and the surface do to it. */
export interface ReflectionSound extends ReflectionPlan {
  /** Between the driver's axis and where the sound leaves to. */
  readonly leaving: number;
  /** What the surface takes off, 0 or less; null where nothing is sent back. */
  readonly absorption: number | null;
  /** Re this driver's direct sound at some frequencies, all counted. */
  readonly levels: readonly { readonly frequency: number; readonly level: number }[];
}

export interface EarlySound {
  readonly surface: SurfaceName;
  readonly monitor: number | null;
  /** Of the first driver to be heard by it. */
  readonly delay: number;
  /** Mean over the rule's band, all drivers together, re their direct sound. */
  readonly level: number;
  /** By spreading alone, of the loudest driver. */
  readonly spreading: number;
  /** The plan's first notch by it, and of which driver; null where there is none in a driver's band. */
  readonly firstNotch: { readonly frequency: number; readonly driver: string } | null;
  /** What stands in the way of that driver's sound; null for nothing. */
  readonly screenedBy: ReflectionPlan['screenedBy'];
  readonly within: boolean;
  readonly passes: boolean;
}

export interface EarlyRule {
  readonly level: number;
  readonly window: number;
  readonly source: string;
  readonly plainly: string;
}

export interface ResponsePlan {
  /** As computed, and as mean power over 1/24 and 1/3 octave. */
  readonly level: Float64Array;
  readonly fine: Float64Array;
  readonly smooth: Float64Array;
  readonly notches: readonly NotchPlan[];
}

export interface NotchPlan {
  /** Its place among the frequencies. */
  readonly index: number;
  readonly frequency: number;
  readonly level: number;
  readonly depth: number;
  /** What fills it most when taken away: a surface, the drivers' unequal paths (where their alignment is known), or the two loudspeakers' ones. */
  readonly cause: SurfaceName | 'drivers' | 'pair' | null;
  readonly monitor: number | null;
  /** By how much that fills it. */
  readonly fill: number;
}

/** Where a response may lie, over the frequencies, and its notches. */
export interface ResponseBand {
  /** Of its mean over 1/24 octave. */
  readonly least: Float64Array;
  readonly most: Float64Array;
  /** Of each of its notches, in their order. */
  readonly notches: readonly NotchRange[];
}

export interface NotchRange {
  /** From and to. */
  readonly frequency: readonly [number, number];
  /** The least and the most, 0 where it may be none at all. */
  readonly depth: readonly [number, number];
  /** With one measured value off at a time: in so many cases `of` all it is there and has the same cause. */
  readonly same: number;
  readonly of: number;
}

/** A hint, in the responses only when asked for. */
export interface BaffleStepPlan {
  /** Hz: c/(π · cabinet's width). */
  readonly corner: number;
  readonly counted: boolean;
  readonly source: string;
}
