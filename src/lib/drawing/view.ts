import type { FindingCode } from '$lib/solution/findings/finding.ts';
import type { FindingLevel } from '$lib/solution/findings/told.ts';
import type { Point } from '$lib/geometry/point.ts';

/**
 * A view as data: what is drawn where, in the view's own plane and in millimetres of the real thing. Screen, paper and
 * file draw the same data; none of them measures it. First axis to the right, second axis up.
 */
export interface View {
  readonly name: string;
  readonly items: readonly Item[];
  /** Smallest box round everything that matters, `[left, bottom, right, top]`: what "fit" shows. */
  readonly extent: readonly [number, number, number, number];
  /** False for a chart: its millimetres are those of the paper, and no scale is told. */
  readonly toScale?: false;
}

/**
 * Line kinds after ISO 128: wide for visible outlines; narrow for dimension, extension and hatching lines; hidden (dashed)
 * for what lies behind; centre (long dash, dot) for axes of symmetry; phantom (long dash, two dots) for neighbours;
 * aim for the axis of a loudspeaker and sight for lines between loudspeakers and ears (long dash, dot); other (short dashes)
 * for another layout.
 */
export type Pen = 'wide' | 'narrow' | 'hidden' | 'centre' | 'phantom' | 'aim' | 'sight' | 'other';

/** What a thing is: decides its tint, its name for a screen reader and what a selection lights up. */
export type Subject =
  | 'desk'
  | 'wall'
  | 'monitor'
  | 'surface'
  | 'cabinet'
  | 'driver'
  | 'stand'
  | 'head'
  | 'axis'
  | 'triangle'
  | 'sight'
  | 'reflection'
  | 'other';

export type Item = Outline | Round | Spot | Label | Dimension | AngleDimension;

/**
 * How much room an item asks for: 1 is drawn on the smallest sheet; 2 on a middling one; 3 on paper at any scale, and on a
 * screen where it is enlarged; 4 only where there is plenty.
 */
export type Rank = 1 | 2 | 3 | 4;

interface Common {
  /** Unique in the view and stable from plan to plan, so that the screen can move a thing instead of making it anew. */
  readonly id: string;
  readonly subject: Subject;
  /** 1 where nothing is said. */
  readonly rank?: Rank;
  /** The greatest rank of a sheet that shows it: where there is more room, another item says the same. 4 where nothing is said. */
  readonly upTo?: Rank;
}

/** How grave what the checks say of a value is; what they only note asks for no change. */
export type Concern = Exclude<FindingLevel, 'note'>;

export interface Outline extends Common {
  readonly kind: 'outline';
  readonly pen: Pen;
  readonly points: readonly Point[];
  readonly closed: boolean;
  /** Whether the area is tinted with the subject's tint. */
  readonly filled: boolean;
  /**
   * Whether the area carries general hatching (ISO 128-3: narrow lines at 45°). Where it is filled as well, the hatching ends
   * without a line: a wall has no far side.
   */
  readonly hatched?: boolean;
}

export interface Round extends Common {
  readonly kind: 'round';
  readonly pen: Pen;
  readonly centre: Point;
  readonly radius: number;
  readonly filled: boolean;
}

/** A point worth marking, of the same size on the paper whatever the scale. */
export interface Spot extends Common {
  readonly kind: 'spot';
  readonly at: Point;
  readonly mark: 'cross' | 'dot' | 'ring';
}

export interface Label extends Common {
  readonly kind: 'label';
  readonly at: Point;
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
  /** How far it is moved on the paper, to the right and down, in text sizes. */
  readonly shift?: Point;
}

/** A linear dimension between two points. Its value comes from the model. */
export interface Dimension extends Common {
  readonly kind: 'dimension';
  readonly from: Point;
  readonly to: Point;
  /** Which distance is meant: along the first axis, along the second, or straight from point to point. */
  readonly run: 'across' | 'up' | 'aligned';
  /**
   * Row of the dimension line counted outwards from the outline, 1, 2, 3…: above or to the right; negative on the other
   * side (below / left). An aligned one counts from the line between its points, positive to the left of the way from the
   * first to the second. 0: on the points themselves.
   */
  readonly row: number;
  /**
   * Where rows are counted from, mm on the axis square to the run: for one thing in the middle of the view. Default the
   * edge of the view's extent. For an aligned one: how far from its line, towards the row, the outline lies. Default 0.
   */
  readonly base?: number;
  /** At which end the text stands when the room between the arrows is too short for it; `to` where nothing is said. */
  readonly beside?: 'from' | 'to';
  /** Whether the text stands level beside the end, to the left, when the room is too short: where a turned one has none. */
  readonly level?: boolean;
  /** Where the text stands on its line, a share of it from the first point: for what would be in the way in the middle. */
  readonly textAt?: number;
  /** mm. */
  readonly value: number;
  /** Whether it is said once for the left and the right side, which are alike. Default false. */
  readonly each?: boolean;
  /** Whether the thing is made to it: a result that stands without brackets all the same. Default false. */
  readonly defining?: boolean;
  /** What it is, in words: "ear height over the floor". */
  readonly name: string;
  /** JSON pointer of the project value that it shows, when it is an input and not a result. */
  readonly input?: string;
  /** −1 where the project holds the negative of what is shown: a mark to the left of the middle. Default 1. */
  readonly inputSign?: 1 | -1;
  /** What the project holds where the dimension is 0; default 0. */
  readonly inputZero?: number;
  /** What the checks say of its value, on a screen. Default nothing. */
  readonly concern?: Concern;
}

/** An angle between two directions at a corner. Degrees; value from the model. */
export interface AngleDimension extends Common {
  readonly kind: 'angle';
  readonly corner: Point;
  /** Directions of the two legs, radians counter-clockwise from the first axis; the arc runs counter-clockwise from the first. */
  readonly from: number;
  readonly to: number;
  /** Radius of the arc, mm of the real thing. */
  readonly radius: number;
  /** Which legs are drawn; the others are lines of the drawing already. `both` where nothing is said. */
  readonly legs?: 'both' | 'from' | 'to' | 'none';
  /** Beyond which leg the text stands. Where nothing is said: between them while there is room, else beyond the second. */
  readonly beyond?: 'from' | 'to';
  /** Where on the arc the text stands between the legs, a share of it from the first. Default 0.5. */
  readonly textAt?: number;
  /** Which end of the text stands there; by its place on the arc where nothing is said. */
  readonly anchor?: 'start' | 'end';
  readonly value: number;
  readonly name: string;
  readonly input?: string;
  /** As for a linear dimension. */
  readonly inputSign?: 1 | -1;
  readonly concern?: Concern;
  /** What a finding on a result would be. */
  readonly about?: FindingCode;
}
