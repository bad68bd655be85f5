import type { StandSettings } from '$lib/project/project.ts';
import type { Stance } from '$lib/stand/buildRequest.ts';

/** One stand as it was asked for. */
export interface Where {
  readonly stance: Stance;
  readonly depth: number;
  readonly settings: StandSettings;
  /** Thickness of board on the ribs' top and front, mm. */
  readonly skin: number;
}

/** A stretch of a section in which its top, or its underside, runs straight: heights over the base, u from the base's front. */
export interface Zone {
  readonly what: 'slope' | 'mat' | 'base' | 'slot';
  readonly from: number;
  readonly to: number;
  readonly z: (u: number) => number;
}

/** What a section of the wood must look like, worked out from the settings and the pose alone. */
export interface Asked {
  readonly run: number;
  /** u of both ends at a height over the base. */
  readonly front: (z: number) => number;
  readonly rear: (z: number) => number;
  readonly tops: readonly Zone[];
  readonly undersides: readonly Zone[];
}

/** What covers the wood, mm. */
export function coverIn({ settings: { veneer, veneerFaces }, skin }: Where) {
  const on = (face: keyof StandSettings['veneerFaces']): number => (veneerFaces[face] ? veneer : 0);
  return { top: on('top') + skin, front: on('front') + skin, rear: on('rear'), base: on('base') };
}

/** The slope's own axes, for a base turned with the cabinet: s along it from the cabinet's front edge, w square to it. */
export function slopeIn(where: Where) {
  const { stance, depth, settings } = where;
  const { tilt, lift } = stance;
  const [sin, cos, tan] = [Math.sin(tilt), Math.cos(tilt), Math.tan(tilt)];
  const cover = coverIn(where);
  const low = tilt >= 0 ? ('rear' as const) : ('front' as const);
  const lip = settings.stop?.thickness ?? 0;
  const front = -Math.max(settings.frontMargin, low === 'front' ? lip : 0);
  const rear = depth + Math.max(settings.rearMargin, low === 'rear' ? lip : 0);
  const high = lift + Math.max(0, depth * sin);
  const base = settings.feet + cover.base;
  // The wood's ends: plumb from the finished top's corners, less the veneer; or square to the slope.
  const plumb = (s: number, inwards: number): number => s * cos - settings.pad * sin + inwards;
  const square = (s: number): number => s / cos + tan * (base - high);
  const [from, to] =
    settings.ends === 'plumb'
      ? [plumb(front, cover.front), plumb(rear, -cover.rear)]
      : [square(front + cover.front), square(rear - cover.rear)];
  return {
    low,
    front,
    rear,
    run: to - from,
    lean: settings.ends === 'plumb' ? 0 : tan,
    /** A point of the slope's axes in the wood's. */
    at: (s: number, w: number): [number, number] => [s * cos + w * sin - from, high - s * sin + w * cos - base],
    along: [cos, -sin] as const,
    up: [sin, cos] as const,
  };
}

/** @param line The wood's top at this place across: over the base. */
export function askedSection(where: Where, line: (u: number) => number): Asked {
  const { settings, stance, depth } = where;
  const cover = coverIn(where);
  const turned = settings.base === 'turned' ? slopeIn(where) : null;
  const margins = settings.frontMargin + settings.rearMargin;
  const run = turned?.run ?? depth * Math.cos(stance.tilt) + margins - cover.front - cover.rear;
  const lean = turned?.lean ?? 0;
  const [level, m] = [line(0), line(1) - line(0)];
  const corner = (u: number): number => (u + level * lean) / (1 - m * lean);
  let [from, to] = [corner(0), corner(run)];
  if (turned && settings.stop) {
    // The wood's top ends where the wood of the stop begins: its veneer is on the bare side.
    const w = -settings.pad - cover.top;
    if (turned.low === 'rear') [to] = turned.at(depth + cover.top, w);
    else [from] = turned.at(-cover.top, w);
  }
  const tops: Zone[] = [];
  const { recess, cable } = settings;
  const steep = Math.hypot(1, m);
  if (recess?.face === 'top') {
    const mouth = [from + recess.border / steep, to - recess.border / steep] as const;
    const skew = (recess.depth * m) / steep;
    tops.push({ what: 'slope', from, to: mouth[0], z: line }, { what: 'slope', from: mouth[1], to, z: line });
    tops.push({ what: 'mat', from: mouth[0] + Math.max(0, skew), to: mouth[1] + Math.min(0, skew), z: (u) => line(u) - recess.depth * steep }); // prettier-ignore
  } else tops.push({ what: 'slope', from, to, z: line });
  const undersides: Zone[] = [];
  const flat = (what: Zone['what'], a: number, b: number, z: number): void => {
    if (!cable) undersides.push({ what, from: a, to: b, z: () => z });
    else {
      const [near, far] = [run - cable.fromRear - cable.width / 2, run - cable.fromRear + cable.width / 2];
      if (near > a && far < b) {
        undersides.push({ what, from: a, to: near, z: () => z }, { what, from: far, to: b, z: () => z });
        undersides.push({ what: 'slot', from: near, to: far, z: () => cable.depth });
      } else undersides.push({ what, from: a, to: b, z: () => z });
    }
  };
  if (recess?.face === 'base') {
    flat('base', 0, recess.border, 0);
    flat('mat', recess.border, run - recess.border, recess.depth);
    flat('base', run - recess.border, run, 0);
  } else flat('base', 0, run, 0);
  return { run, front: (z) => z * lean, rear: (z) => run + z * lean, tops, undersides };
}
