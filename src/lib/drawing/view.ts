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
}

/**
 * Line kinds after ISO 128: wide for visible outlines; narrow for dimension, extension and hatching lines; hidden (dashed)
 * for what lies behind; centre (long dash, dot) for axes of symmetry; phantom (long dash, two dots) for neighbours;
 * aim for the axis of a loudspeaker and sight for lines between loudspeakers and ears (long dash, dot).
 */
export type Pen = 'wide' | 'narrow' | 'hidden' | 'centre' | 'phantom' | 'aim' | 'sight';

/** What a thing is: decides its tint, its name for a screen reader and what a selection lights up. */
export type Subject = 'desk' | 'wall' | 'monitor' | 'cabinet' | 'driver' | 'stand' | 'head' | 'axis' | 'triangle' | 'sight' | 'reflection';

export type Item = Outline | Round | Label | Dimension | AngleDimension;

interface Common {
  /** Unique in the view and stable from plan to plan, so that the screen can move a thing instead of making it anew. */
  readonly id: string;
  readonly subject: Subject;
}

export interface Outline extends Common {
  readonly kind: 'outline';
  readonly pen: Pen;
  readonly points: readonly Point[];
  readonly closed: boolean;
  /** Whether the area is tinted with the subject's tint. */
  readonly filled: boolean;
}

export interface Round extends Common {
  readonly kind: 'round';
  readonly pen: Pen;
  readonly centre: Point;
  readonly radius: number;
  readonly filled: boolean;
}

export interface Label extends Common {
  readonly kind: 'label';
  readonly at: Point;
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
}

/** A linear dimension between two points. Its value comes from the model. */
export interface Dimension extends Common {
  readonly kind: 'dimension';
  readonly from: Point;
  readonly to: Point;
  /** Which distance is meant: along the first axis, along the second, or straight from point to point. */
  readonly run: 'across' | 'up' | 'aligned';
  /** Row of the dimension line counted outwards from the outline, 1, 2, 3…; negative on the other side (below / left). */
  readonly row: number;
  /** mm. */
  readonly value: number;
  /** What it is, in words: "ear height over the floor". */
  readonly name: string;
  /** JSON pointer of the project value that it shows, when it is an input and not a result. */
  readonly input?: string;
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
  readonly value: number;
  readonly name: string;
  readonly input?: string;
}
