import { expect } from 'vitest';
import type { StandBody } from '$lib/stand/body.ts';
import { askedSection, coverIn, slopeIn, type Asked, type Where, type Zone } from './asked.ts';
import type { Made } from './bench.ts';
import { alongLine, heightAt } from './drawn.ts';
import type { Laid } from './laid.ts';

/** Height of the cabinet's bottom over the desk, less what lies between it and the wood. */
export function woodUnder(where: Where) {
  const { mark, toe, tilt, lift, side } = where.stance;
  const way = side === 'right' ? 1 : -1;
  const front = lift + Math.max(0, where.depth * Math.sin(tilt));
  const between = where.settings.pad + coverIn(where).top;
  return (x: number, y: number): number => {
    const back = (x - mark.x) * Math.sin(toe) * way + (y - mark.y) * Math.cos(toe);
    return mark.z + front - back * Math.tan(tilt) - between / Math.cos(tilt);
  };
}

/** From the wood's front base corner and from inboard to the desk, by the planned footprint. */
export function onDesk(body: StandBody, width: number, where: Where) {
  const { stance, settings } = where;
  const [frontRight, rearRight, , frontLeft] = body.footprint;
  if (!frontRight || !rearRight || !frontLeft) throw new Error('a footprint has four corners');
  const unit = (a: readonly number[], b: readonly number[]): [number, number] => {
    const [x, y] = [(b[0] ?? 0) - (a[0] ?? 0), (b[1] ?? 0) - (a[1] ?? 0)];
    return [x / Math.hypot(x, y), y / Math.hypot(x, y)];
  };
  const [back, right] = [unit(frontRight, rearRight), unit(frontLeft, frontRight)];
  const cover = coverIn(where);
  const { tilt } = stance;
  // The wood's front base corner from the finished one: where the end leans, veneer under the base moves it too.
  const inset = settings.ends === 'plumb' ? cover.front : cover.front / Math.cos(tilt) + cover.base * Math.tan(tilt);
  const middle = [(frontRight[0] + frontLeft[0]) / 2, (frontRight[1] + frontLeft[1]) / 2] as const;
  return (across: number, u: number): [number, number] => {
    const aside = (stance.side === 'right' ? 1 : -1) * (across - width / 2);
    return [0, 1].map((axis) => (middle[axis] ?? 0) + (right[axis] ?? 0) * aside + (back[axis] ?? 0) * (u + inset)) as [number, number]; // prettier-ignore
  };
}

/** The tolerance of the whole bench, mm: nothing is rounded on the way, and arcs do not reach the places looked at. */
const DIGITS = 6;

/** How many places of each kind were looked at. */
export type Seen = Record<Zone['what'] | 'end' | 'stop' | 'skin' | 'web', number>;

/** What was made is as the settings and the pose ask for, wherever it is looked at. */
export function expectAsPlanned(made: Made, body: StandBody, where: Where, bit: number | null = null): Seen {
  const { settings } = where;
  const veneer = settings.veneerFaces.sides ? settings.veneer : 0;
  expect(made.left).toEqual([]);
  expect(made.width + 2 * veneer).toBeCloseTo(body.width, DIGITS);
  expect(body.widths.reduce((sum, { each, count }) => sum + each * count, 0)).toBeCloseTo(body.width, 9);
  const base = settings.feet + coverIn(where).base;
  const [place, bottom] = [onDesk(body, made.width, where), woodUnder(where)];
  const line =
    (across: number) =>
    (u: number): number =>
      bottom(...place(across, u)) - base;
  const seen: Seen = { slope: 0, mat: 0, base: 0, slot: 0, end: 0, stop: 0, skin: 0, web: 0 };
  // What reliefs and rounded corners take, and what of a zone is near its ends by rounding.
  const clear = 0.05 + (bit === null ? 0 : 2 * (bit / 2 + 0.1));
  const rounded = 3 * (settings.corner ?? 0);
  // Under a slope that does not fall to a side, layers of one part look alike wherever they are.
  const looked = new Set<Laid['inboard']>();
  for (const layer of made.layers) {
    if (settings.base === 'turned' && looked.has(layer.inboard)) continue;
    looked.add(layer.inboard);
    const { from, to, name } = layer;
    // Floors of recesses are as cut: from the top that a layer has at its higher face. What leans itself follows the slope.
    const follows = name === 'core' || name === 'block';
    const [inboard, outboard] = [line(from)(0), line(to)(0)];
    const cutAt = inboard > outboard ? from : to;
    for (const across of [from + 0.01 * (to - from), (from + to) / 2, to - 0.01 * (to - from)]) {
      const own = askedSection(where, line(across));
      const cut = follows ? own : askedSection(where, line(cutAt));
      own.tops.forEach((zone, i) => {
        const floor = cut.tops[i] ?? zone;
        for (const u of placesIn(zone, own.tops, made, clear, rounded)) {
          const asked = zone.what === 'mat' ? Math.min(floor.z(u), line(across)(u)) : zone.z(u);
          expectHeight(`${name}: ${zone.what}`, made.top(across, u), asked);
          seen[zone.what] += 1;
        }
      });
      for (const zone of own.undersides) {
        for (const u of placesIn(zone, own.undersides, made, clear, rounded)) {
          expectHeight(`${name}: ${zone.what} from below`, made.underside(across, u), zone.z(u));
          seen[zone.what] += 1;
        }
      }
    }
    if (settings.relief) seen.web += expectWebs(layer, made, line, settings.relief.web);
    for (const [ring, across] of [
      [layer.inboard, follows ? from : cutAt],
      [layer.outboard, follows ? to : cutAt],
    ] as const) {
      const asked = askedSection(where, line(across));
      seen.end += expectEnds(ring, asked, settings.corner ?? 0, line(across));
      expectMouths(ring, asked);
    }
    if (settings.stop && name !== 'block') seen.stop += expectStop(layer, where);
  }
  for (const { at, thickness, ring } of made.crosses) {
    for (const u of [at - thickness / 2, at + thickness / 2]) {
      for (const share of [0.02, 0.98]) {
        const across = share * made.width;
        const high = heightAt(ring, across) ?? 0;
        expect(high).toBeGreaterThan(0);
        expect(high + base - bottom(...place(across, u))).toBeLessThan(1e-6);
      }
    }
  }
  if (where.skin > 0) {
    expect(made.skins.map(({ name }) => name).sort()).toEqual(['front-skin', 'top-skin']);
    for (const { thickness } of made.skins) expect(thickness).toBe(where.skin);
    seen.skin += 1;
  }
  return seen;
}

function expectHeight(what: string, found: number | null, asked: number): void {
  const off = found === null ? NaN : Math.abs(found - asked);
  expect({ what, found, asked, near: off < 10 ** -DIGITS }).toEqual({ what, found, asked, near: true });
}

/**
 * Where a zone is looked at: away from its ends, where reliefs are, from those of all zones, which may be rounded, and from
 * cross ribs.
 */
function placesIn(zone: Zone, all: readonly Zone[], { crosses }: Made, clear: number, rounded: number): number[] {
  const [first, last] = [Math.min(...all.map(({ from }) => from)), Math.max(...all.map(({ to }) => to))];
  return [0.03, 0.15, 0.32, 0.5, 0.68, 0.85, 0.97]
    .map((share) => zone.from + share * (zone.to - zone.from))
    .filter((u) => Math.min(u - zone.from, zone.to - u) > clear && Math.min(u - first, last - u) > rounded)
    .filter((u) => crosses.every(({ at, thickness }) => Math.abs(at - u) >= 0.6 * thickness + clear));
}

/** Both ends, halfway up, are where they should be: plumb, or square to the slope. */
function expectEnds(
  ring: Laid['inboard'],
  { front, rear, run }: Asked,
  corner: number,
  line: (u: number) => number,
): number {
  let seen = 0;
  for (const [end, high, which] of [
    [front, line(0), 0],
    [rear, line(run), -1],
  ] as const) {
    // prettier-ignore
    if (high < 2.6 * corner) continue;
    expect(alongLine(ring, [0, high / 2], [1, 0]).at(which)).toBeCloseTo(end(high / 2), DIGITS);
    seen += 1;
  }
  return seen;
}

/** Between windows and the finished slope is as much wood as was asked for, also where the slope was sanded down. */
function expectWebs(
  { from, to, windows }: Laid,
  made: Made,
  line: (across: number) => (u: number) => number,
  web: number,
): number {
  for (const across of [from + 0.001 * (to - from), to - 0.001 * (to - from)]) {
    const steep = Math.hypot(1, line(across)(1) - line(across)(0));
    for (const [u, z] of windows) expect(((made.top(across, u) ?? NaN) - z) / steep).toBeGreaterThan(web - 1e-6);
  }
  return windows.length;
}

/** Slots and recesses begin and end at their own places. */
function expectMouths(ring: Laid['inboard'], { tops, undersides }: Asked): void {
  const base = [...undersides].sort((a, b) => a.from - b.from);
  const corners = base.slice(1).map((after, i) => {
    const before = base[i] ?? after;
    return [after.from, Math.min(before.z(after.from), after.z(after.from))] as const;
  });
  const [front, rear] = tops;
  if (front && rear) corners.push([front.to, front.z(front.to)], [rear.from, rear.z(rear.from)]);
  for (const [u, z] of corners) {
    const off = Math.min(...ring.map(([x, y]) => Math.hypot(x - u, y - z)));
    expect(off).toBeLessThan(1e-6);
  }
}

/** The stop's bare side touches the cabinet; it is as thick and as high over the cabinet's bottom as asked for. */
function expectStop({ inboard }: Laid, where: Where): number {
  const { settings, depth } = where;
  const { stop, pad, ends } = settings;
  if (!stop) return 0;
  const slope = slopeIn(where);
  const cover = coverIn(where);
  const rear = slope.low === 'rear';
  const [inner, outer] = rear ? [depth + cover.top, depth + stop.thickness] : [-cover.top, -stop.thickness];
  const beyond = rear ? slope.rear - outer : outer - slope.front;
  // Where the stop's outer face runs on into the end, it has the end's veneer.
  const runsOn = Math.abs(beyond) < 1e-9 && (ends === 'square' || Math.abs(where.stance.tilt) < 1e-9);
  const outside = runsOn ? (rear ? cover.rear : cover.front) : cover.top;
  const faces = [inner, outer - (rear ? outside : -outside)].sort((a, b) => a - b);
  const half = (stop.height - cover.top - (pad + cover.top)) / 2;
  const met = alongLine(inboard, slope.at(0, half), slope.along);
  expect(met).toHaveLength(2);
  met.forEach((s, i) => expect(s).toBeCloseTo(faces[i] ?? NaN, DIGITS));
  const middle = ((faces[0] ?? 0) + (faces[1] ?? 0)) / 2;
  expect(alongLine(inboard, slope.at(middle, 0), slope.up).at(-1)).toBeCloseTo(stop.height - cover.top, DIGITS);
  return 1;
}
