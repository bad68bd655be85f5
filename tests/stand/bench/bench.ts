import { expect } from 'vitest';
import type { Circle } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Piece, Printed, StandBody } from '$lib/stand/body.ts';
import type { Some, Step } from '$lib/stand/step.ts';
import { areaOf, areaWithin, clipped, heightAt, holeArea, ringOf } from './drawn.ts';

/** Something that lies across the width between two places, mm from inboard, at its two faces as drawn. */
export interface Laid {
  readonly name: string;
  readonly from: number;
  readonly to: number;
  readonly inboard: readonly Point[];
  readonly outboard: readonly Point[];
  readonly open: number;
  readonly rodHoles: readonly Circle[];
}

/** What has been made of the parts. Its own axes: u back from the front of the base, z over the base. */
export interface Made {
  readonly layers: readonly Laid[];
  /** Cross ribs, which stand across: their top at the two ends, and how far back they stand. */
  readonly crosses: readonly { readonly at: number; readonly thickness: number; readonly ring: readonly Point[] }[];
  readonly width: number;
  /** mm³ of all that was cut and printed, after sanding; without skins. */
  readonly volume: number;
  /** Height of the top over the base at a place across from inboard, and back from the front; null beside the wood. */
  readonly top: (across: number, u: number) => number | null;
  /** What is left over of what was cut and printed. */
  readonly left: readonly Some[];
}

/** Lengths that were drawn equal are so to a millionth of a millimetre, by way of sines and cosines. */
const SAME = 6;

/** Carries out the steps of a stand that is put together of parts, by their data and the drawings alone. */
export function carryOut({ steps, pieces, printed, joints }: StandBody, glue: number, onRight: boolean): Made {
  const pile = new Map<string, number>();
  let layers: readonly Laid[] = [];
  let crosses: Made['crosses'] = [];
  let plane: ((across: number, u: number) => number) | null = null;
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
  for (const step of steps) {
    expectTrueNumbers(step);
    if (step.act === 'cut') put(step.pieces, pieces);
    if (step.act === 'print') put(step.bodies, printed);
    if (step.act === 'stack') {
      let from = 0;
      layers = step.layers.flatMap(({ name, count }) =>
        Array.from({ length: count }, () => {
          if (name === 'core') for (const body of printed) take({ name: body.name, count: body.quantity });
          else take({ name, count: 1 });
          const laid = name === 'core' ? laidCore(printed, from, onRight) : laidPiece(pieceOf(pieces, name), from);
          from = laid.to + glue;
          return laid;
        }),
      );
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
    }
    if (step.act === 'sand' && step.to !== 'flush') plane = planeOf(layers, step.to);
  }
  const width = crosses[0] ? extent(crosses[0].ring, 0)[1] : (layers.at(-1)?.to ?? 0);
  const sanded = plane;
  return {
    layers,
    crosses,
    width,
    volume: layers.reduce((sum, layer) => sum + volumeOf(layer, crosses.length > 0 ? null : sanded), 0) + crosses.reduce((sum, { ring, thickness }) => sum + Math.abs(areaOf(ring)) * thickness, 0), // prettier-ignore
    top: (across, u) => {
      const layer = layers.find(({ from, to }) => across >= from && across <= to);
      const drawn = layer && faceTop(layer, across, u);
      if (drawn === undefined || drawn === null) return null;
      return sanded ? Math.min(drawn, sanded(across, u)) : drawn;
    },
    left: [...pile].filter(([, count]) => count !== 0).map(([name, count]) => ({ name, count })),
  };
}

const extent = (ring: readonly Point[], axis: 0 | 1): [number, number] => {
  const all = ring.map((point) => point[axis]);
  return [Math.min(...all), Math.max(...all)];
};

function pieceOf(pieces: readonly Piece[], name: string): Piece {
  const piece = pieces.find((one) => one.name === name);
  if (!piece) throw new Error(`no piece is called ${name}`);
  return piece;
}

/** Base down on the board, front against the stop. */
function flush(ring: readonly Point[]): { ring: Point[]; by: Point } {
  const z = extent(ring, 1)[0];
  const u = extent(ring, 0)[0];
  return { ring: ring.map(([x, y]): Point => [x - u, y - z]), by: [-u, -z] };
}

function laidPiece({ name, thickness, outside, inside }: Piece, from: number): Laid {
  const { ring, by } = flush(ringOf(outside));
  const rodHoles = inside
    .filter((hole) => hole.kind === 'circle')
    .map((hole): Circle => ({ ...hole, centre: [hole.centre[0] + by[0], hole.centre[1] + by[1]] }));
  return { name, from, to: from + thickness, inboard: ring, outboard: ring, open: holeArea(inside), rodHoles };
}

/** The core stands up from its bed: what was up is on the listener's right. */
function laidCore(printed: readonly Printed[], from: number, onRight: boolean): Laid {
  const bodies = printed.flatMap((body) => Array.from({ length: body.quantity }, () => body));
  const [first, second] = bodies;
  if (!first) throw new Error('a core has a body');
  const front = bodies.find(({ name }) => name === 'core-front');
  const rear = bodies.find(({ name }) => name === 'core-rear');
  const faces = (body: Printed): readonly [Point[], Point[]] => {
    const bottom = body.levels[0]?.contours[0];
    if (bottom?.kind !== 'path') throw new Error('a body has an outline');
    return [ringOf(bottom), ringOf(body.roof ?? bottom)];
  };
  const holes = (body: Printed) => body.levels[0]?.contours.slice(1) ?? [];
  if (front && rear) {
    const [[frontFloor, frontRoof], [rearFloor, rearRoof]] = [faces(front), faces(rear)];
    // The plumb faces meet: the front half's base ends where the rear one's begins.
    const at = Math.max(...frontFloor.filter(([, y]) => y < 1e-9).map(([x]) => x));
    const moved = (ring: readonly Point[]): Point[] => ring.map(([x, y]): Point => [x + at, y]);
    // One outline for heights and areas: both halves, one after the other.
    const whole = (a: readonly Point[], b: readonly Point[]): Point[] => [...a, ...moved(b), moved(b)[0] ?? [0, 0], a[0] ?? [0, 0]]; // prettier-ignore
    const [down, up] = [whole(frontFloor, rearFloor), whole(frontRoof, rearRoof)];
    const rodHoles = [
      ...holes(front).filter((hole) => hole.kind === 'circle'),
      ...holes(rear).filter((hole) => hole.kind === 'circle').map((hole) => ({ ...hole, centre: [hole.centre[0] + at, hole.centre[1]] as const })), // prettier-ignore
    ];
    const open = holeArea(holes(front)) + holeArea(holes(rear));
    return laidBetween(from, front.size.z, onRight ? [down, up] : [up, down], open, rodHoles);
  }
  const rodHoles = holes(first).filter((hole) => hole.kind === 'circle');
  const lower = faces(first);
  const upper = second ? faces(second) : lower;
  if (second) expect(extent(lower[1], 1)[1]).toBeCloseTo(extent(upper[0], 1)[1], SAME);
  const high = bodies.reduce((sum, { size }) => sum + size.z, 0);
  return laidBetween(
    from,
    high,
    onRight ? [lower[0], upper[1]] : [upper[1], lower[0]],
    holeArea(holes(first)),
    rodHoles,
  );
}

function laidBetween(
  from: number,
  thickness: number,
  [inboard, outboard]: readonly [readonly Point[], readonly Point[]],
  open: number,
  rodHoles: readonly Circle[],
): Laid {
  return { name: 'core', from, to: from + thickness, inboard: flush(inboard).ring, outboard: flush(outboard).ring, open, rodHoles }; // prettier-ignore
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

/** Slots of a rib into its top or its base: middle, and the height of the floor. */
function slotsOf(ring: readonly Point[], up: boolean): { middle: number; width: number; floor: number }[] {
  const slots = [];
  for (const [i, [x, y]] of ring.entries()) {
    const [u, z] = ring[(i + 1) % ring.length] ?? [x, y];
    const before = ring[(i + ring.length - 1) % ring.length] ?? [x, y];
    const after = ring[(i + 2) % ring.length] ?? [u, z];
    // A floor is level and short, its walls plumb: above it for a slot from above.
    const plumb = before[0] === x && after[0] === u;
    // Counter-clockwise, a slot's floor runs as the side that it is cut into does.
    const runs = up ? u < x : u > x;
    const above = up ? before[1] > y && after[1] > z : before[1] < y && after[1] < z;
    if (Math.abs(y - z) < 1e-9 && plumb && above && runs)
      slots.push({ middle: (x + u) / 2, width: Math.abs(u - x), floor: y });
  }
  return slots.sort((a, b) => a.middle - b.middle);
}

/** Cross ribs lowered into the profile ribs' slots until all stand on the board. */
function interlocked(
  ribs: readonly Some[],
  crosses: readonly Some[],
  pieces: readonly Piece[],
): Pick<Made, 'layers' | 'crosses'> {
  const across = crosses.map(({ name }) => {
    const piece = pieceOf(pieces, name);
    return { piece, ring: flush(ringOf(piece.outside)).ring };
  });
  const [first] = across;
  if (!first) throw new Error('there are cross ribs');
  const places = slotsOf(first.ring, false);
  const standing = ribs.flatMap(({ name, count }) => Array.from({ length: count }, () => pieceOf(pieces, name)));
  expect(places).toHaveLength(standing.length);
  const layers = standing.map((piece, i): Laid => {
    const middle = places[i]?.middle ?? NaN;
    return { ...laidPiece(piece, middle - piece.thickness / 2) };
  });
  const stations = slotsOf(layers[0]?.inboard ?? [], true);
  expect(stations).toHaveLength(across.length);
  const stood = across.map(({ piece, ring }, i) => ({
    at: stations[i]?.middle ?? NaN,
    thickness: piece.thickness,
    ring,
  }));
  for (const layer of layers) {
    for (const [j, cross] of stood.entries()) {
      const own = slotsOf(layer.inboard, true)[j];
      const opposite = slotsOf(cross.ring, false).find(({ middle }) => middle > layer.from && middle < layer.to);
      if (!own || !opposite) throw new Error('a rib and a cross rib meet in two slots');
      // Both stand on the board, and the slots' floors touch.
      expect(own.floor).toBeCloseTo(opposite.floor, SAME);
      // Neither stands in the other's wood.
      const [u, half] = [cross.at, cross.thickness / 2];
      expect(areaWithin(layer.inboard, [u - half, own.floor], [u + half, 1e4])).toBeLessThan(1e-6);
      expect(areaWithin(cross.ring, [layer.from, 0], [layer.to, own.floor])).toBeLessThan(1e-6);
    }
  }
  return { layers, crosses: stood };
}

/** Looked at so far from the ends, mm: beyond rounded corners, before a rib's first slot. */
const BESIDE = 4;

/** The plane through the edges that are right as cut; nothing of the wood is under it, or there would be a gap. */
function planeOf(layers: readonly Laid[], face: 'inboard' | 'outboard'): (across: number, u: number) => number {
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
  return plane;
}

function faceTop({ from, to, inboard, outboard }: Laid, across: number, u: number): number | null {
  const [near, far] = [heightAt(inboard, u), heightAt(outboard, u)];
  if (near === null || far === null) return null;
  return near + ((far - near) * (across - from)) / (to - from);
}

/** Of a layer under a plane: sections change evenly, so three tell the whole. */
function volumeOf({ from, to, inboard, outboard, open }: Laid, plane: ((across: number, u: number) => number) | null) {
  const area = (across: number): number => {
    const share = (across - from) / (to - from);
    const ring = inboard.map(([x, y], i): Point => [x, y + ((outboard[i]?.[1] ?? y) - y) * share]);
    if (!plane) return Math.abs(areaOf(ring));
    const [level, slope] = [plane(across, 0), plane(across, 1) - plane(across, 0)];
    return Math.abs(areaOf(clipped(ring, -slope, 1, level)));
  };
  return ((area(from) + 4 * area((from + to) / 2) + area(to)) / 6 - open) * (to - from);
}

/** The numbers of a sentence are those of what it does. */
function expectTrueNumbers(step: Step): void {
  const { quantities: said } = step;
  const total = (all: readonly Some[]): number => all.reduce((sum, { count }) => sum + count, 0);
  if (step.act === 'rod') expect([said.rods?.value, said.diameter?.value]).toEqual([step.count, step.diameter]);
  if (step.act === 'cut' && said.layers) expect(said.layers.value).toBe(total(step.pieces));
  if (step.act === 'cut' && said.cheeks) expect(said.cheeks.value).toBe(total(step.pieces));
}
