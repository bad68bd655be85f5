import { expect } from 'vitest';
import type { Circle } from '$lib/geometry/contour.ts';
import { convexHull } from '$lib/geometry/convexHull.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Piece, StandBody } from '$lib/stand/body.ts';
import type { Some, Step } from '$lib/stand/step.ts';
import { heightAt } from './drawn.ts';
import { extent, faceBase, faceTop, laidCore, laidPiece, SAME, volumeOf, type Laid, type Plane } from './laid.ts';
import { interlocked, pieceOf, skinned, type Cross, type Line } from './ribs.ts';
import { expectRoutable } from './routing.ts';

/** What has been made of the parts. Its own axes: u back from the front corner of the base, z over the base. */
export interface Made {
  readonly layers: readonly Laid[];
  /** Cross ribs, which stand across: their top at the two ends, and how far back they stand. */
  readonly crosses: readonly Cross[];
  readonly width: number;
  /** mm³ of all that was cut and printed, after sanding. */
  readonly volume: number;
  /** Skins in the order they were glued on, and their thickness. */
  readonly skins: readonly { readonly name: string; readonly thickness: number }[];
  /** Height of the top over the base at a place across from inboard, and back from the front; null beside the wood. */
  readonly top: Plane | ((across: number, u: number) => number | null);
  /** Height of the lowest wood there. */
  readonly underside: (across: number, u: number) => number | null;
  /** What is left over of what was cut and printed. */
  readonly left: readonly Some[];
}

/** What the workshop has to know: the glue line's thickness, the stand's side, and the bit that cuts parts. */
export interface Shop {
  readonly glue: number;
  readonly onRight: boolean;
  readonly bit: number | null;
}

/** Carries out the steps of a stand that is put together of parts, by their data and the drawings alone. */
export function carryOut({ steps, pieces, printed, joints }: StandBody, { glue, onRight, bit }: Shop): Made {
  const pile = new Map<string, number>();
  let layers: readonly Laid[] = [];
  let crosses: readonly Cross[] = [];
  let skins: ReturnType<typeof skinned> = { volume: 0, laidOn: [] };
  let plane: Plane | null = null;
  const take = ({ name, count }: Some): void => {
    const there = pile.get(name) ?? 0;
    expect([name, there >= count]).toEqual([name, true]);
    pile.set(name, there - count);
  };
  const put = (made: readonly Some[], drawn: readonly Pick<Piece, 'name' | 'quantity'>[]): void => {
    for (const { name, count } of made) {
      expect([name, drawn.find((one) => one.name === name)?.quantity]).toEqual([name, count]);
      pile.set(name, (pile.get(name) ?? 0) + count);
    }
  };
  const widthNow = (): number => (crosses[0] ? extent(crosses[0].ring, 0)[1] : (layers.at(-1)?.to ?? 0));
  for (const step of steps) {
    expectTrueNumbers(step);
    if (step.act === 'cut') {
      put(step.pieces, pieces);
      if (bit !== null) for (const { name } of step.pieces) expectRoutable(pieceOf(pieces, name), bit);
    }
    if (step.act === 'print') put(step.bodies, printed);
    if (step.act === 'stack') {
      let from = 0;
      layers = step.layers.flatMap(({ name, count }) => {
        const first = name === 'core' ? laidCore(printed, 0, onRight) : laidPiece(pieceOf(pieces, name), 0);
        return Array.from({ length: count }, (): Laid => {
          if (name === 'core') for (const body of printed) take({ name: body.name, count: body.quantity });
          else take({ name, count: 1 });
          const laid = { ...first, from, to: from + first.to };
          from = laid.to + glue;
          return laid;
        });
      });
    }
    if (step.act === 'rod') expectRods(layers, step.count, step.diameter);
    if (step.act === 'interlock') {
      step.ribs.forEach(take);
      step.crosses.forEach(take);
      const built = interlocked(step.ribs, step.crosses, pieces);
      expect(joints.map(({ count }) => count)).toEqual([built.layers.length * built.crosses.length]);
      ({ layers, crosses } = built);
    }
    if (step.act === 'glue') {
      // Skins go onto what stands already; everything else is put together before it is glued.
      const onto = step.parts.filter((name) => name.endsWith('-skin'));
      for (const name of onto) take({ name, count: 1 });
      if (onto.length > 0) skins = skinned(onto, pieces, sidesOf(layers[0]?.inboard ?? []), widthNow());
    }
    if (step.act === 'sand' && step.to !== 'flush') plane = planeOf(layers, step.to);
  }
  const sanded = plane;
  const wood = layers.reduce((sum, layer) => sum + volumeOf(layer, layer.name === 'core' ? null : sanded), 0);
  const across = crosses.reduce((sum, { area, thickness }) => sum + area * thickness, 0);
  const at = (place: number) => layers.find(({ from, to }) => place >= from && place <= to);
  return {
    layers,
    crosses,
    width: widthNow(),
    volume: wood + across + skins.volume,
    skins: skins.laidOn,
    top: (place, u) => {
      const layer = at(place);
      const drawn = layer ? faceTop(layer, place, u) : null;
      return drawn !== null && sanded ? Math.min(drawn, sanded(place, u)) : drawn;
    },
    underside: (place, u) => {
      const layer = at(place);
      return layer ? faceBase(layer, u) : null;
    },
    left: [...pile].filter(([, count]) => count !== 0).map(([name, count]) => ({ name, count })),
  };
}

/** The lines of a rib's base, rear, top and front, wood on their left: the longest such edges of what spans it. */
function sidesOf(ring: readonly Point[]): readonly [Line, Line, Line, Line] {
  const hull = convexHull(ring);
  const edges = hull.map((from, i): Line => [from, hull[(i + 1) % hull.length] ?? from]);
  // Ends lean less than the slope falls: what is mostly upright is an end.
  const most = (weigh: (dx: number, dy: number) => number): Line => {
    const score = ([[x, y], [u, z]]: Line): number => weigh(u - x, z - y);
    return edges.reduce((best, edge) => (score(edge) > score(best) ? edge : best));
  };
  const upright = (way: 1 | -1) => most((dx, dy) => way * dy - 1.5 * Math.abs(dx));
  return [most((dx) => dx), upright(1), most((dx) => -dx), upright(-1)];
}

/** The same rods find their holes in every layer, each with room for it. */
function expectRods(layers: readonly Laid[], count: number, diameter: number): void {
  const [first] = layers;
  expect(first?.rodHoles).toHaveLength(count);
  for (const { name, rodHoles } of layers) {
    expect([name, rodHoles.length]).toEqual([name, count]);
    const sorted = (holes: readonly Circle[]): Circle[] => [...holes].sort((a, b) => a.centre[0] - b.centre[0]);
    sorted(rodHoles).forEach(({ centre, radius }, i) => {
      expect(2 * radius).toBeGreaterThanOrEqual(diameter);
      const other = sorted(first?.rodHoles ?? [])[i];
      expect(centre[0]).toBeCloseTo(other?.centre[0] ?? NaN, SAME);
      expect(centre[1]).toBeCloseTo(other?.centre[1] ?? NaN, SAME);
    });
  }
}

/** Looked at so far from the ends, mm: beyond rounded corners, before a rib's first slot and a recess. */
const BESIDE = 4;

/** The plane through the edges that are right as cut; nothing of the wood is under it, or there would be a gap. */
function planeOf(layers: readonly Laid[], face: 'inboard' | 'outboard'): Plane {
  const edge = (layer: Laid) => ({ across: face === 'inboard' ? layer.from : layer.to, ring: layer[face] });
  const sheets = layers.filter(({ name }) => name !== 'core');
  const [a, b] = [sheets[0], sheets.at(-1)].map((layer) => layer && edge(layer));
  if (!a || !b) throw new Error('there are layers to sand');
  const [front, rear] = extent(a.ring, 0);
  const at = (one: typeof a, u: number): number => heightAt(one.ring, u) ?? NaN;
  const [from, to] = [front + BESIDE, rear - BESIDE];
  const along = (at(a, to) - at(a, from)) / (to - from);
  const side = a.across === b.across ? 0 : (at(b, from) - at(a, from)) / (b.across - a.across);
  const plane = (across: number, u: number): number => at(a, from) + along * (u - from) + side * (across - a.across);
  for (const layer of sheets) {
    for (const u of [from, to]) {
      expect(at(edge(layer), u)).toBeCloseTo(plane(edge(layer).across, u), SAME);
      for (const across of [layer.from, layer.to]) {
        expect((faceTop(layer, across, u) ?? NaN) - plane(across, u)).toBeGreaterThan(-1e-6);
      }
    }
  }
  const level = plane(0, 0);
  return (across, u) => level + along * u + side * across;
}

/** The numbers of a sentence are those of what it does. */
function expectTrueNumbers(step: Step): void {
  const { quantities: said } = step;
  const total = (all: readonly Some[]): number => all.reduce((sum, { count }) => sum + count, 0);
  if (step.act === 'rod') expect([said.rods?.value, said.diameter?.value]).toEqual([step.count, step.diameter]);
  if (step.act === 'cut' && said.layers) expect(said.layers.value).toBe(total(step.pieces));
  if (step.act === 'cut' && said.cheeks) expect(said.cheeks.value).toBe(total(step.pieces));
}
