import { extentOf } from '$lib/geometry/extent.ts';
import type { Project } from '$lib/project/project.ts';
import type { Part } from '$lib/workshop/part.ts';
import type { StandPlan } from './document.ts';

/** How one stand is glued up across its width. mm and minutes. */
export interface GlueUp {
  /** Layers of each sub-stack, from one side to the other; one number where all go at once. */
  readonly subStacks: readonly number[];
  /** From spreading to clamping; `known`: as the workshop has it, or the least of common glues. */
  readonly open: { readonly minutes: number; readonly known: boolean };
  /** In the clamps; null: as the label says. */
  readonly clamp: number | null;
  /** Clamps that one glue-up takes, along the stand and one above the other, and how many there are. */
  readonly clamps: {
    readonly along: number;
    readonly rows: number;
    readonly needed: number;
    readonly have: number | null;
  };
  /**
   * How wide a clamp has to open for the whole stand with its cauls before the glue is pressed out, bare of veneer; and how
   * wide those there are do; null: not known.
   */
  readonly opening: { readonly needed: number; readonly have: number | null };
  /** What keeps a sub-stack from being larger; null where all go at once. */
  readonly limit: 'open time' | 'opening' | null;
  /** Sub-stacks that the clamps hold at the same time, at least one. */
  readonly atOnce: number;
  /** What the clamps press on: a board on each side, as large as the largest layer. */
  readonly caul: { readonly length: number; readonly height: number; readonly thickness: number };
}

/** Least open time of common white and yellow glues, minutes (rule of thumb). */
const OPEN = 5;
/** To spread one side face and lay the next layer on, minutes (rule of thumb). */
const PER_JOINT = 0.5;
/** From clamp to clamp, and from a clamp to the end, mm: 8 to 12 inches and about 2 (rule of thumb). */
const APART = 250;
const FROM_END = 45;
/** A side higher than this takes a second row of clamps, mm (rule of thumb). */
const ROW = 120;
/** A caul thinner than this bends, mm (rule of thumb). */
const CAUL = 20;

/** Null where nothing is glued side by side: ribs, a solid block, a single layer. `parts`: the plan's. */
export function glueUpOf(stand: StandPlan, { shop }: Pick<Project, 'shop'>, parts: readonly Part[]): GlueUp | null {
  const layers = layersOf(stand).reduce((sum, { count }) => sum + count, 0);
  if (layers < 2) return null;
  const { length, height } = largestOf(stand, parts);
  const { open, clamp, clamps, opening } = shop.glue;
  const minutes = open ?? OPEN;
  // One joint at least: two layers make the smallest sub-stack.
  const spread = Math.max(2, 1 + Math.floor(minutes / PER_JOINT));
  const reached = opening === null ? Infinity : layersBetween(opening - 2 * CAUL, stand);
  // Clamps that do not reach round two layers hold no sub-stack at all: nothing is cut down for them.
  const most = reached < 2 ? spread : Math.min(spread, reached);
  const count = Math.ceil(layers / most);
  const along = Math.max(2, 1 + Math.ceil(Math.max(0, length - 2 * FROM_END) / APART));
  const rows = Math.max(1, Math.ceil(height / ROW));
  const needed = along * rows;
  return {
    subStacks: evenly(layers, count),
    open: { minutes, known: open !== null },
    clamp,
    clamps: { along, rows, needed, have: clamps },
    opening: { needed: bareWidth(stand) + (stand.widthSpread?.glue.most ?? 0) + 2 * CAUL, have: opening },
    limit: layers <= most ? null : count > Math.ceil(layers / spread) ? 'opening' : 'open time',
    atOnce: clamps === null ? 1 : Math.max(1, Math.floor(clamps / needed)),
    caul: { length, height, thickness: CAUL },
  };
}

/** The longest and the highest of a stand's layers, mm: with a base square to the desk they differ. */
function largestOf({ pieces }: StandPlan, parts: readonly Part[]): Pick<GlueUp['caul'], 'length' | 'height'> {
  const sides = parts
    .filter(({ name }) => pieces.some(({ part }) => part === name))
    .map(({ outside }) => extentOf(outside));
  return {
    length: Math.max(...sides.map(({ left, right }) => right - left)),
    height: Math.max(...sides.map(({ bottom, top }) => top - bottom)),
  };
}

/** Of the layers and the glue between them, without the veneer that comes later, mm. */
export const bareWidth = ({ widths }: StandPlan): number =>
  widths.filter(({ what }) => what !== 'veneer').reduce((sum, { each, count }) => sum + each * count, 0);

const layersOf = ({ widths }: StandPlan) =>
  widths.filter(({ what }) => what === 'layer' || what === 'cheek' || what === 'core');

/** How many layers go into a room so wide, mm, be they the thickest. */
function layersBetween(room: number, stand: StandPlan): number {
  const thickest = Math.max(...layersOf(stand).map(({ each }) => each));
  const line = stand.widths.find(({ what }) => what === 'glue')?.each ?? 0;
  return Math.floor((room + line) / (thickest + line));
}

/** A whole number in so many parts that differ by one at most, the larger ones first. */
const evenly = (whole: number, parts: number): readonly number[] =>
  Array.from({ length: parts }, (_, i) => Math.floor(whole / parts) + (i < whole % parts ? 1 : 0));
