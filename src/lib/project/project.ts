import type * as v from 'valibot';
import type { projectSchema } from './schema.ts';

type Frozen<Value> = Value extends readonly unknown[] | object
  ? { readonly [Key in keyof Value]: Frozen<Value[Key]> }
  : Value;

/** A parsed project: every default filled in, every number in its range, every reference resolved. Frozen. */
export type Project = Frozen<v.InferOutput<typeof projectSchema>>;

export type Speaker = Project['speaker'];
export type Driver = Speaker['drivers'][number];
export type Crossover = Speaker['crossovers'][number];
export type Stock = Project['stock'][number];
export type Cutter = Project['cutter'];
/** Colour of each layer of the cut files, `#rrggbb`. */
export type LayerColours = NonNullable<Cutter['colours']>;
export type Layout = Project['layouts'][number];
export type Desk = Layout['desk'];
export type DeskOutline = Desk['outline'];
export type Wall = Layout['room']['walls'][number];
/** A shelf, a riser, or the plate of a floor stand. */
export type Surface = Layout['surfaces'][number];

export type Monitor = Layout['monitors'][number];
export type Listener = Layout['listener'];
/** A person whose ear height was estimated. */
export type Person = NonNullable<Listener['earHeightFrom']>;
export type Posture = Listener['postures'][number];
export type Aim = Layout['aim'];
export type ToeRule = Aim['toe'];
export type TiltRule = Aim['tilt'];
export type StandSettings = Layout['stand'];
export type Rods = NonNullable<StandSettings['rods']>;
export type Ribs = NonNullable<StandSettings['ribs']>;
export type Printer = NonNullable<Project['printer']>;
/** The machines and the glue of a workshop. */
export type Workshop = Project['shop'];
/** How the parts of a layout lie on their sheets. */
export type Arrangement = NonNullable<Layout['arrangement']>;
/** One part held in place by hand; `turn` in degrees. */
export type Locked = Arrangement['locked'][number];

/** What was read of the finished stands of a layout, and the record of what was read before. */
export type Built = NonNullable<Layout['built']>;
/** One thing to read of a finished stand; lengths in mm over the surface, angles in degrees, null what is not read yet. */
export type Reading = Built['sides']['left']['readings'][number];
/** One stand as it was read once, and what was done then. */
export type Recorded = Built['record'][number];

/** A measured response of a layout. */
export type HeardOne = Built['heard'][number];

/** Which of the pair. */
export type SideName = 'left' | 'right';
export const sideNames = ['left', 'right'] as const satisfies readonly SideName[];
