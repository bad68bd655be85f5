import { radians } from '$lib/geometry/angle.ts';
import type { Point } from '$lib/geometry/point.ts';
import { failure, success, type Result } from '$lib/project/fault.ts';
import { asMm, says } from '$lib/project/sentence.ts';
import type { Layout, Project, SideName, Speaker } from '$lib/project/project.ts';
import type { Plan } from '$lib/solution/document.ts';
import { plan } from '$lib/solution/plan.ts';
import type { ExistingStand, PlaceAsk } from './ask.ts';

type Stands = PlaceAsk['stands'];

/** A slope in degrees with how high it stands, mm: its lowest edge (lift), or the edge under the cabinet's front. */
export interface TypedStand {
  readonly tilt: number;
  readonly height: { readonly at: 'lift' | 'front'; readonly value: number };
}

/** A stand whose slope and height are known and nothing else. @param at Pointer of the height, for the fault. */
export function typedStand({ depth }: Speaker, { tilt, height }: TypedStand, at: string): Result<ExistingStand> {
  const rise = Math.max(0, depth * Math.sin(radians(tilt)));
  const lift = height.at === 'lift' ? height.value : height.value - rise;
  return lift < 0
    ? failure({ pointer: at, message: says`expected a front at least as high as the slope rises, ${asMm(shownUp(rise))}, got ${asMm(height.value)}` }) // prettier-ignore
    : success({ tilt: radians(tilt), lift, toe: null, footprint: null });
}

/** A limit to one decimal that is itself within it, mm. */
const shownUp = (limit: number): number => Math.ceil(limit * 10) / 10;

/** The stands that a layout of the project asks for; its faults where it has none. */
export function standsOfLayout(project: Project, layout: Layout): Result<Stands> {
  const made = plan(project, layout, false);
  return made.ok
    ? success({ left: standOf(made.value, 'left'), right: standOf(made.value, 'right') })
    : { ok: false, faults: made.faults };
}

function standOf({ layout, sides, stand }: Plan, side: SideName): ExistingStand {
  const { tilt, lift, toe } = sides[side];
  const mark = layout.placement[side];
  const [sin, cos] = [Math.sin(radians(toe)), Math.cos(radians(toe))];
  // Turned back about the mark, and seen as a right one.
  const untoed = ([x, y]: Point): Point => {
    const [right, back] = [side === 'left' ? mark.x - x : x - mark.x, y - mark.y];
    return [right * cos - back * sin, right * sin + back * cos];
  };
  return {
    tilt: radians(tilt),
    lift,
    toe: layout.stand.base === 'square-to-desk' ? radians(toe) : null,
    footprint: stand[side].footprint.map(untoed),
  };
}

/** The layout of a name, or the fault that lists those there are. */
export function layoutNamed({ layouts }: Project, name: string, at: string): Result<Layout> {
  const found = layouts.find((layout) => layout.name === name);
  const known = layouts.map((one) => JSON.stringify(one.name)).join(', ');
  return found
    ? success(found)
    : failure({ pointer: at, message: `expected the name of a layout (${known}), got ${JSON.stringify(name)}` });
}
