import type { Point } from '$lib/geometry/point.ts';
import type { Pose } from '$lib/layout/pose.ts';
import type { Speaker, StandSettings, Stock } from '$lib/project/project.ts';
import { footprintOf } from './footprint.ts';
import { stackOf } from './layers.ts';
import { woodOf } from './mass.ts';
import { built, type Outcome } from './outcome.ts';
import { profileOf } from './profile.ts';
import { type RodHole, rodRow } from './rods.ts';

/** One finished stand: mm, mm², mm³ and kg. */
export interface StandBody {
  /** Finished side view: u back from the mark along the toed direction, z over the desk; counter-clockwise. */
  readonly profile: readonly Point[];
  /** Corners of the base on the desk, desk frame, counter-clockwise. */
  readonly footprint: readonly Point[];
  /** What the layers are cut to: the profile less feet, pad and veneer, in the profile's axes. */
  readonly slice: readonly Point[];
  /** From front to rear; empty without rods. */
  readonly rods: readonly RodHole[];
  /** Least wood between a rod hole's rim and the slice's edge; null without rods. */
  readonly rodEdge: number | null;
  /** Finished width as built, the width asked for, and asked less built. */
  readonly width: number;
  readonly widthAsked: number;
  readonly leftOver: number;
  readonly layers: number;
  /** The stock's name and measured thickness. */
  readonly stock: string;
  readonly thickness: number;
  /** Heights of the wood at its front and rear ends, from its base to the line of its top. */
  readonly frontHeight: number;
  readonly rearHeight: number;
  /** The slice, its rod holes deducted; and the layers' wood alone. */
  readonly sliceArea: number;
  readonly volume: number;
  readonly mass: number;
}

/** What of a pose a stand depends on. */
export type Stance = Pick<Pose, 'side' | 'mark' | 'toe' | 'tilt' | 'lift'>;

/**
 * The stand under one cabinet. Refused as unsound when its thin end is too thin, without an answer when veneer, layers or
 * rods cannot be had; pointers are relative to the layout.
 */
export function buildStand(
  stance: Stance,
  speaker: Pick<Speaker, 'width' | 'depth'>,
  settings: StandSettings,
  stock: Pick<Stock, 'name' | 'thickness' | 'density'>,
): Outcome<StandBody> {
  const profile = profileOf(settings, speaker.depth, stance.tilt, stance.lift);
  if (!profile.ok) return profile;
  const stack = stackOf(settings.width ?? speaker.width, stock.thickness, settings.glue, settings.veneer);
  if (!stack.ok) return stack;
  const rods = settings.rods ? rodRow(settings.rods, profile.value) : built({ holes: [], edge: null });
  if (!rods.ok) return rods;

  const { outline, slice, frontHeight, rearHeight } = profile.value;
  const { holes, edge } = rods.value;
  return built({
    profile: outline,
    footprint: footprintOf(stance.mark, stance.toe, stance.side, baseOf(outline), stack.value.width),
    slice,
    rods: holes,
    rodEdge: edge,
    ...stack.value,
    stock: stock.name,
    thickness: stock.thickness,
    frontHeight,
    rearHeight,
    ...woodOf(slice, holes, stack.value.layers, stock.thickness, stock.density),
  });
}

/** u of the base's front and rear edge: an outline begins with them. */
const baseOf = ([front, rear]: readonly Point[]): readonly [number, number] => [front?.[0] ?? 0, rear?.[0] ?? 0];
