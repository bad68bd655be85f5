import { polygonPath } from '$lib/geometry/contour.ts';
import { momentsOf } from '$lib/geometry/moments.ts';
import { add, subtract } from '$lib/geometry/point.ts';
import { placeSide } from '$lib/layout/place.ts';
import type { Pose } from '$lib/layout/pose.ts';
import { stand as standFields } from '$lib/project/fields/stand.ts';
import type { Layout, SideName, Speaker, StandSettings, Stock } from '$lib/project/project.ts';
import { standsAt } from '$lib/project/surface.ts';
import { balanceOf, type Balance } from './balance.ts';
import { buildNamed } from './builds/builds.ts';
import { lowestSection } from './builds/sections.ts';
import { buildStand } from './build.ts';
import type { Shop } from './buildRequest.ts';
import { firstPassing } from './firstPassing.ts';
import { standSurfaceOf } from './standSurfaceOf.ts';
import { lastHolding } from './lastHolding.ts';
import { profileOf } from './profile.ts';
import { rodRow } from './rods.ts';

/** One loudspeaker on its stand: what it takes to build it again with other settings. */
export interface Site {
  readonly speaker: Speaker;
  readonly layout: Layout;
  readonly side: SideName;
  readonly stock: Stock;
  /** Other stocks and the printer; left out, the stand is built of its own stock alone. */
  readonly shop?: Shop;
}

/** One change of the stand's settings that is enough by itself. */
export type Remedy =
  | { readonly key: LengthKey; readonly value: number }
  | { readonly key: 'stop'; readonly value: NonNullable<StandSettings['stop']> };

type LengthKey = 'frontMargin' | 'rearMargin' | 'width' | 'lift';

/** Lengths are suggested in whole tenths of a millimetre: what a rule and a saw can follow. */
const TENTHS = 10;

/** The balance with other settings, aimed anew; null when such a stand cannot be had. */
export function balanceWith(
  { speaker, layout, side, stock, shop }: Site,
  change: Partial<StandSettings>,
): Balance | null {
  const settings = { ...layout.stand, ...change };
  const pose = placeSide(speaker, { ...layout, stand: settings }, side);
  if (!pose.ok) return null;
  const stand = buildStand(pose.value, speaker, settings, stock, shop);
  return stand.ok ? balanceOf(speaker, pose.value, stand.value, settings) : null;
}

/**
 * The smallest single changes, in tenths of a millimetre, after which nothing tips on a plane of `test` radians: a deeper
 * stand where it tips over its front or rear, a wider one where it tips sideways, or a lower lift. Without the cabinet's
 * mass they hold for any mass. Empty when it passes already or when no single change is enough.
 *
 * @param now The balance as it is.
 */
export function tipRemedies(site: Site, now: Balance, test: number): Remedy[] {
  if (now.survives.least >= test) return [];
  const { stand, aim } = site.layout;
  const { what, edge } = now.weakest;
  const nearest = (key: LengthKey, from: number, limit: number) => nearestPassing(site, now, test, key, from, limit);
  const found: (Remedy | null)[] = [];
  if (edge === 'inboard' || edge === 'outboard') {
    found.push(nearest('width', stand.width ?? site.speaker.width, widestNeeded(site, now, test)));
  } else if (what === 'both') {
    const key = edge === 'front' ? 'frontMargin' : 'rearMargin';
    found.push(nearest(key, stand[key], standFields[key].max));
  }
  if (stand.lift !== undefined && aim.tilt.rule !== 'lift-to-ear') found.push(nearest('lift', stand.lift, 0));
  return found.filter((remedy) => remedy !== null);
}

/**
 * From `from` towards `limit`, the first length with which a stand can be built and passes. How far there is surface for one
 * and room for its rods is found first: that is quickly seen, and most that has no remedy is short of it there.
 */
function nearestPassing(
  site: Site,
  now: Balance,
  test: number,
  key: LengthKey,
  from: number,
  limit: number,
): Remedy | null {
  const step = limit < from ? -1 : 1;
  const start = (step < 0 ? Math.floor : Math.ceil)(from * TENTHS);
  const count = Math.floor(Math.abs(limit * TENTHS - start));
  const at = (steps: number): number => (start + step * steps) / TENTHS;
  const furthest = lastHolding(count, (some) => hasSurface(site, { [key]: at(some) }));
  if (furthest === null) return null;
  const rough = roughBalance(site, now);
  const marginOf = (balance: Balance | null) => balance && balance.survives.least - test;
  const steps = firstPassing(
    furthest,
    (some) => marginOf(at(some) === from ? now : balanceWith(site, { [key]: at(some) })),
    firstPassing(furthest, (some) => marginOf(rough({ [key]: at(some) }))),
  );
  return steps === null ? null : { key, value: at(steps) };
}

/**
 * About the balance with other settings, for next to nothing: the wood as one plain block under the cabinet, which is as
 * heavy for its size as the wood is now and has its middle as far from its own. It says where to look, never what is true.
 */
function roughBalance(
  { speaker, layout, side }: Site,
  { wood }: Balance,
): (change: Partial<StandSettings>) => Balance | null {
  const blockWith = (change: Partial<StandSettings>) => {
    const settings = { ...layout.stand, ...change };
    const pose = placeSide(speaker, { ...layout, stand: settings }, side);
    if (!pose.ok) return null;
    const width = settings.width ?? speaker.width;
    const surface = standSurfaceOf({ stance: pose.value, speaker, settings }, width);
    if (!surface.ok) return null;
    const { area, centre } = momentsOf(polygonPath(surface.value.outline));
    return {
      settings,
      pose: pose.value,
      width,
      surface: surface.value,
      volume: area * width,
      middle: surface.value.at(0, ...centre),
    };
  };
  const block = blockWith({});
  if (!block) return () => null;
  const [density, off] = [wood.mass / block.volume, subtract(wood.centre, block.middle)];
  return (change) => {
    const other = blockWith(change);
    if (!other) return null;
    const { settings, pose, width, surface, volume, middle } = other;
    const carrier = {
      width,
      mass: volume * density,
      centre: add(middle, off),
      footprint: surface.footprint(width),
      contact: surface.contact(width),
    };
    return balanceOf(speaker, pose, carrier, settings);
  };
}

/** Whether there is surface for a stand, and room in it for the rods of a build that has them; sooner too often than not. */
function hasSurface({ speaker, layout, side, stock }: Site, change: Partial<StandSettings>): boolean {
  const settings = { ...layout.stand, ...change };
  const stance = placeSide(speaker, { ...layout, stand: settings }, side);
  if (!stance.ok) return false;
  // A stack may come out narrower than asked for by half a layer.
  const width = Math.max(0, (settings.width ?? speaker.width) - stock.thickness);
  const surface = standSurfaceOf({ stance: stance.value, speaker, settings }, width);
  if (!surface.ok) return false;
  const rods = buildNamed(settings.build).details.includes('rods') ? settings.rods : null;
  return !rods || rodRow(rods, lowestSection(surface.value, width)).ok;
}

/**
 * A stand as wide as this passes for certain: half of it is more than the height of either centre of mass times the
 * test's tangent, by two layers, and the cabinet rests on it with its whole width.
 */
function widestNeeded({ speaker, layout, side, stock }: Site, { cabinet, wood }: Balance, test: number): number {
  const highest = Math.max(cabinet.z, wood.centre.z) - standsAt(layout, side);
  const needed = 2 * highest * Math.tan(test) + 2 * stock.thickness;
  return Math.min(standFields.width.max, Math.max(needed, speaker.width + stock.thickness));
}

/** Of a stop's wood, without veneer: as high as a finger is thick, and thick enough to be knocked. Common practice, no source; mm. */
const STOP_HEIGHT = 10;
const STOP_THICKNESS = 6;

/**
 * A stop at the low end to hold the cabinet, thinner than usual when the low end leaves no more room; null when there is
 * one already, or no room even for wood as thin as the stand's least edge. Rods stay where they fit: a stop only adds wood.
 */
export function stopRemedy(
  settings: StandSettings,
  depth: number,
  { tilt, lift }: Pick<Pose, 'tilt' | 'lift'>,
): Remedy | null {
  const { stop, minimumEdge, veneer } = settings;
  // A cabinet lies across a stand that is square to the desk, and no stop meets it.
  if (stop || settings.base !== 'turned') return null;
  const stopAt = (tenths: number) => ({
    height: STOP_HEIGHT + veneer,
    thickness: minimumEdge + 2 * veneer + tenths / TENTHS,
  });
  const fits = (tenths: number): boolean => profileOf({ ...settings, stop: stopAt(tenths) }, depth, tilt, lift).ok;
  const most = Math.floor(Math.max(0, STOP_THICKNESS - minimumEdge) * TENTHS);
  const tenths = fits(most) ? most : lastHolding(most, fits);
  return tenths === null ? null : { key: 'stop', value: stopAt(tenths) };
}
