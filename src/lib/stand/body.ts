import type { Circle, Path } from '$lib/geometry/contour.ts';
import type { Point, Vec3 } from '$lib/geometry/point.ts';
import type { StandSettings, Stock } from '$lib/project/project.ts';
import type { Words } from '$lib/project/sentence.ts';
import type { RodHole } from './rods.ts';
import type { SawCut } from './saw.ts';
import type { Step } from './step.ts';

export type BuildName = StandSettings['build'];

/** What a stand is cut from: its thickness as measured, mm; kg/m³. */
export type Board = Pick<Stock, 'name' | 'thickness' | 'density'>;

/** Something to cut from sheet, in the profile's axes (or its own, for what is not seen from the side), mm. */
export interface Piece {
  /** Unique in its stand. */
  readonly name: string;
  readonly stock: string;
  readonly thickness: number;
  /** In one stand. */
  readonly quantity: number;
  readonly outside: Path;
  /** Clockwise paths, and circles. */
  readonly inside: readonly (Path | Circle)[];
  /** Whether its left end is the stand's front: then its label says so. */
  readonly fromSide: boolean;
  /** Centre lines to engrave: open paths. */
  readonly lines: readonly Path[];
}

/** Something to print, as prisms that stand on each other on the bed. Origin at the lower left of its plan, mm. */
export interface Printed {
  readonly name: string;
  /** In one stand. */
  readonly quantity: number;
  readonly levels: readonly { readonly height: number; readonly contours: readonly (Path | Circle)[] }[];
  /**
   * The outside at the body's top, where it differs from the levels' first contour, which it has at its bottom: vertex by
   * vertex the same, some of them as much higher or lower, in between in proportion. Left out for plain prisms.
   */
  readonly roof?: Path;
  /** What it takes of the bed, and its height. */
  readonly size: { readonly x: number; readonly y: number; readonly z: number };
  /** mm³ of the body, and kg of plastic in it. */
  readonly volume: number;
  readonly mass: number;
}

/** Something to saw from solid wood, mm. */
export interface Block {
  readonly name: string;
  /** The squared blank it is sawn from: from front to rear, across, and high. */
  readonly blank: { readonly length: number; readonly width: number; readonly height: number };
  /** mm³: of the blank, of what is left of it, and of the rest, the saw's kerf included. */
  readonly blankVolume: number;
  readonly volume: number;
  readonly waste: number;
  /** In the order of sawing. */
  readonly cuts: readonly SawCut[];
  /** At 1:1, to glue on and saw along: one for each face that shows a line. */
  readonly templates: readonly Template[];
}

/** One face of a block as it is seen from outside, the lower left corner of the blank's face at the origin, mm. */
export interface Template {
  readonly face: 'inboard side' | 'outboard side' | 'front' | 'rear';
  readonly outline: Path;
  /** What lies at its left and its right end. */
  readonly ends: readonly [left: TemplateEnd, right: TemplateEnd];
}

export type TemplateEnd = 'front' | 'rear' | 'inboard' | 'outboard';

/** One kind of layer across the finished width. */
export interface WidthLayer {
  readonly what: 'layer' | 'cheek' | 'core' | 'block' | 'rib span' | 'glue' | 'veneer';
  /** Of one, mm, and how many there are. */
  readonly each: number;
  readonly count: number;
}

/** How different slices meet the cabinet's bottom when the base is square to the desk. */
export interface Sanding {
  /** mm from one slice to the next, along the front end: to be sanded off. */
  readonly height: number;
  /** Which face of a slice decides its height: the one under the higher part of the slope; null when both do. */
  readonly face: 'inboard' | 'outboard' | null;
}

/** To compare builds: of one stand. mm, mm³ and kg. */
export interface BuildTotals {
  /** Outsides and insides of all pieces. */
  readonly cutLength: number;
  readonly printedVolume: number;
  readonly printedMass: number;
  /** Blanks, as bought. */
  readonly solidWood: number;
  /** Of the stand without rods, glue, veneer, feet and pad. */
  readonly finishedMass: number;
}

/** One finished stand: mm, mm², mm³ and kg. */
export interface StandBody {
  readonly build: BuildName;
  readonly base: StandSettings['base'];
  /**
   * Finished side view: u back from the mark along the toed direction, z over the desk; counter-clockwise. With a base
   * square to the desk: u straight away from the listener, the section through the middle of the stand.
   */
  readonly profile: readonly Point[];
  /** Corners of the base on the desk, desk frame, counter-clockwise. */
  readonly footprint: readonly Point[];
  /** Where the cabinet's bottom lies on the stand, seen from above, when that is not its whole width and depth. */
  readonly contact: readonly Point[] | null;
  /** What the layers are cut to: the profile less what covers it, in the profile's axes; the lowest one where they differ. */
  readonly slice: readonly Point[];
  /** From front to rear; empty without rods. */
  readonly rods: readonly RodHole[];
  /** Least wood between a rod hole's rim and the slice's edge; null without rods. */
  readonly rodEdge: number | null;
  /** Finished width as built, the width asked for, and asked less built. */
  readonly width: number;
  readonly widthAsked: number;
  readonly leftOver: number;
  /** How the width adds up: the sum of each · count, in this order, is the width. */
  readonly widths: readonly WidthLayer[];
  /** Layers of the stand's own stock. */
  readonly layers: number;
  /** The stock's name and measured thickness. */
  readonly stock: string;
  readonly thickness: number;
  /** Heights of the wood at its front and rear ends, from its base to the line of its top. */
  readonly frontHeight: number;
  readonly rearHeight: number;
  /** One layer of the stand's own stock, its holes deducted. */
  readonly sliceArea: number;
  /** All that stands there, and its mass and centre of mass (desk frame). */
  readonly volume: number;
  readonly mass: number;
  readonly centre: Vec3;
  readonly pieces: readonly Piece[];
  readonly printed: readonly Printed[];
  /** Solid wood; mitre and bevel of its saw cuts in radians. */
  readonly blocks: readonly Block[];
  readonly joints: readonly Joint[];
  /** Steps between different slices, to be sanded off; null where there are none. */
  readonly sanding: Sanding | null;
  /** How to make it, in the order of work. */
  readonly steps: readonly Step[];
  /** What the settings ask for and this build does otherwise, with the numbers. */
  readonly notes: readonly Words[];
  readonly figures: BuildTotals;
}

/** Faces that meet. */
export interface Joint {
  readonly between: string;
  readonly count: number;
  /** Of one, mm². */
  readonly area: number;
}
