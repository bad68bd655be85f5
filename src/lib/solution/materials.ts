import { signedArea } from '$lib/geometry/area.ts';
import { polygonPath } from '$lib/geometry/contour.ts';
import { sideNames, type Layout, type Project, type SideName } from '$lib/project/project.ts';
import { asStood } from '$lib/project/stood.ts';
import type { Sheet } from '$lib/workshop/part.ts';
import type { Plan, StandPlan } from './document.ts';
import { bareWidth, glueUpOf } from './glueUp.ts';

/** One thing to have at hand before the work begins. */
export interface Material {
  readonly what: string;
  /** The stock it is of, by the project's own name for it; null where there is none. */
  readonly of: string | null;
  /** For both stands: pieces, grams, or mm². */
  readonly quantity: number;
  readonly unit: 'pieces' | 'g' | 'mm²';
  /** mm; null where it has none. */
  readonly length: number | null;
  readonly width: number | null;
  readonly thickness: number | null;
  readonly diameter: number | null;
  /** What has to be said of it; no lengths in it. */
  readonly note: string;
}

const SIZELESS = { of: null, length: null, width: null, thickness: null, diameter: null } as const;

/** Glue that a joint takes, g/m², generously (rule of thumb: 150 to 250). */
const SPREAD = 250;
const MM2_IN_M2 = 1e6;
/** Veneer is cut larger than its face and trimmed: so much more (rule of thumb). */
const TRIM = 1.15;
/** Feet under one stand (rule of thumb). */
const FEET = 4;

/**
 * What both stands take: boards and offcuts as the sheets have them, solid wood, rods, glue, veneer, feet, pads, mats,
 * filament, sandpaper, clamps and cauls. Things that both stands take alike are one row.
 *
 * @param sheets How the parts lie; empty where that is not known: then boards are left out.
 */
export function materialsOf(
  project: Project,
  layout: Layout,
  plan: Plan,
  sheets: readonly Sheet[],
): readonly Material[] {
  const each = sideNames.flatMap((side) => ofStand(project, layout, plan, side));
  return [...boards(project, sheets), ...merged(each), ...helpers(project, plan)];
}

function boards({ stock }: Project, sheets: readonly Sheet[]): Material[] {
  const used = sheets.map(({ stock: name, width, height, offcut = false }): Material => ({
    ...SIZELESS,
    what: offcut ? 'Offcut' : 'Sheet',
    of: name,
    quantity: 1,
    unit: 'pieces',
    length: width,
    width: height,
    thickness: stock.find((one) => one.name === name)?.thickness ?? null,
    note: offcut ? '' : 'And some for the coupon and the gauges.',
  }));
  return merged(used);
}

function ofStand(project: Project, { stand: settings }: Layout, { stand, parts }: Plan, side: SideName): Material[] {
  const one = stand[side];
  const speaker = asStood(project.speaker);
  const printed = one.printed.reduce((sum, { mass, quantity }) => sum + 1000 * mass * quantity, 0);
  const veneer = veneerArea(one, parts, settings);
  const glued = one.joints.reduce((sum, { area, count }) => sum + area * count, 0) + veneer;
  const pieces = { ...SIZELESS, unit: 'pieces' } as const;
  const solid = one.blocks.map(({ name, blank }): Material => ({
    ...pieces,
    what: `Solid wood, blank for the ${name}`,
    quantity: 1,
    length: blank.length,
    width: blank.width,
    thickness: blank.height,
    note: 'Squared up; buy it larger. Its mass is worked out with the density of the board that is chosen.',
  }));
  return [
    ...solid,
    ...(one.rods.length > 0 && settings.rods
      ? [
          {
            ...pieces,
            what: 'Rod',
            quantity: one.rods.length,
            length: bareWidth(one),
            diameter: settings.rods.diameter,
            note: 'Its length in the finished stand: cut it longer, for wet glue widens the stack; trim it flush when the glue is dry.',
          },
        ]
      : []),
    ...(glued > 0
      ? [
          {
            ...SIZELESS,
            what: one.printed.length > 0 ? 'Glue for wood on plastic' : 'Wood glue',
            quantity: (glued / MM2_IN_M2) * SPREAD,
            unit: 'g' as const,
            note:
              one.printed.length > 0
                ? 'Epoxy, for instance: white glue does not hold plastic. A generous estimate.'
                : 'A generous estimate; the label states its own coverage.',
          },
        ]
      : []),
    ...(veneer > 0
      ? [
          {
            ...SIZELESS,
            what: 'Veneer',
            quantity: veneer * TRIM,
            unit: 'mm²' as const,
            thickness: settings.veneer,
            note: 'With some to trim off.',
          },
        ]
      : []),
    ...(settings.feet > 0
      ? [
          {
            ...pieces,
            what: 'Foot',
            quantity: FEET,
            thickness: settings.feet,
            note: 'Four under each stand, near its corners.',
          },
        ]
      : []),
    ...(settings.pad > 0
      ? [
          {
            ...pieces,
            what: 'Pad',
            quantity: 1,
            length: speaker.depth,
            width: Math.min(one.width, speaker.width),
            thickness: settings.pad,
            note: 'Between stand and cabinet.',
          },
        ]
      : []),
    ...(settings.recess
      ? [
          {
            ...pieces,
            what: 'Anti-slip mat',
            quantity: 1,
            length: faceLength(one, settings.recess.face) - 2 * settings.recess.border,
            width: one.width,
            thickness: settings.recess.depth,
            note: `For the ${settings.recess.face}’s recess; as thick as the recess is deep, or more.`,
          },
        ]
      : []),
    ...(printed > 0
      ? [
          {
            ...SIZELESS,
            what: 'Filament',
            quantity: printed,
            unit: 'g' as const,
            note: 'The bodies alone, as filled; brims and failed prints come on top.',
          },
        ]
      : []),
    ...sandpaper(one),
  ];
}

/** Sheets of each grit for one stand (rule of thumb); a printed core is roughened for the glue with the coarse one. */
const sandpaper = ({ sanding, build }: StandPlan): Material[] =>
  [...(sanding !== null || build === 'solid' || build === 'skinned' ? ['P80'] : []), 'P120', 'P180'].map(
    (grit): Material => ({
      ...SIZELESS,
      what: `Sandpaper ${grit}`,
      quantity: grit === 'P80' ? 2 : 1,
      unit: 'pieces',
      note: 'Sheets, rule of thumb.',
    }),
  );

/** What serves one glue-up after the other. */
function helpers(project: Project, { stand, parts }: Plan): Material[] {
  const ups = sideNames.map((side) => glueUpOf(stand[side], project, parts)).filter((up) => up !== null);
  if (ups.length === 0) return [];
  const most = (of: (up: (typeof ups)[number]) => number): number => Math.max(...ups.map(of));
  return [
    {
      ...SIZELESS,
      what: 'Clamp',
      quantity: most((up) => up.clamps.needed),
      unit: 'pieces',
      length: most(({ opening }) => opening.needed),
      note: 'For one glue-up after the other; its length is the least opening.',
    },
    {
      ...SIZELESS,
      what: 'Caul',
      quantity: 2,
      unit: 'pieces',
      length: most(({ caul }) => caul.length),
      width: most(({ caul }) => caul.height),
      thickness: most(({ caul }) => caul.thickness),
      note: 'For one glue-up after the other; flat and stiff, covered with packing tape.',
    },
  ];
}

/** mm² of all veneered faces: the profile's first edge is the base, the second the rear, the last the front. */
function veneerArea(one: StandPlan, parts: Plan['parts'], { veneer, veneerFaces }: Layout['stand']): number {
  if (veneer === 0) return 0;
  const { profile, width } = one;
  const ribs = one.build === 'ribbed' ? ribEdges(one, parts) : null;
  const edges = profile.map((from, i) => {
    const to = profile[(i + 1) % profile.length] ?? from;
    const face = i === 0 ? 'base' : i === 1 ? 'rear' : i === profile.length - 1 ? 'front' : 'top';
    return veneerFaces[face] ? Math.hypot(to[0] - from[0], to[1] - from[1]) * (ribs?.wide(face) ?? width) : 0;
  });
  const sides = veneerFaces.sides ? (ribs?.sides ?? 2 * Math.abs(signedArea(polygonPath(profile)))) : 0;
  return edges.reduce((sum, area) => sum + area, sides);
}

/**
 * What of the ribbed build's faces can hold veneer: a skin all over, open faces only the edges of ribs; the outer ribs stand
 * in from the sides, where cross ribs and skins end. mm of width for each face, and mm² of both sides.
 */
function ribEdges(
  { pieces, width }: StandPlan,
  parts: Plan['parts'],
): { readonly wide: (face: 'base' | 'rear' | 'front' | 'top') => number; readonly sides: number } {
  const named = (start: string) =>
    pieces.flatMap(({ part: name, quantity }) =>
      parts.filter((part) => part.name === name && name.startsWith(start)).map((part) => ({ ...part, quantity })),
    );
  const edges = named('rib').reduce((sum, { thickness, quantity }) => sum + thickness * quantity, 0);
  const skins = { top: named('top-skin'), front: named('front-skin'), base: [], rear: [] };
  const crossEnds = named('cross-rib').map(({ outside: { vertices }, thickness }) => {
    const far = Math.max(...vertices.map(({ x }) => x));
    const high = [0, far].map((end) => Math.max(...vertices.filter(({ x }) => x === end).map(({ y }) => y)));
    return thickness * high.reduce((sum, one) => sum + one, 0);
  });
  const skinEnds = [...skins.top, ...skins.front].map(
    ({ outside: { vertices }, thickness }) => 2 * thickness * Math.max(...vertices.map(({ x }) => x)),
  );
  return {
    wide: (face) => (skins[face].length > 0 ? width : edges),
    sides: [...crossEnds, ...skinEnds].reduce((sum, area) => sum + area, 0),
  };
}

/** Of the base, or of the slope: the longest edge between rear and front, for a stop has edges of its own. */
function faceLength({ profile }: StandPlan, face: 'top' | 'base'): number {
  const lengths = profile.map(([u, z], i) => {
    const [nextU, nextZ] = profile[(i + 1) % profile.length] ?? [u, z];
    return Math.hypot(nextU - u, nextZ - z);
  });
  return face === 'base' ? (lengths[0] ?? 0) : Math.max(...lengths.slice(2, -1));
}

/** Rows that are the same thing, added up, in the order of their first ones. */
function merged(rows: readonly Material[]): Material[] {
  const found = new Map<string, Material>();
  for (const row of rows) {
    const { what, of, unit, length, width, thickness, diameter } = row;
    const key = JSON.stringify([what, of, unit, ...[length, width, thickness, diameter].map((mm) => mm?.toFixed(3))]);
    const before = found.get(key);
    found.set(key, { ...row, quantity: row.quantity + (before?.quantity ?? 0) });
  }
  return [...found.values()];
}
