import { expect } from 'vitest';
import { convexHull } from '$lib/geometry/convexHull.ts';
import { edgesOf } from '$lib/geometry/edge.ts';
import { mirrored } from '$lib/geometry/mirrored.ts';
import { cross, dot, subtract, vec3, type Point, type Vec3 } from '$lib/geometry/point.ts';
import type { SideName, Workshop } from '$lib/project/project.ts';
import type { Block, StandBody, Template } from '$lib/stand/body.ts';
import type { BlockFace, SawCut } from '$lib/stand/saw.ts';
import { coverIn, slopeIn, type Where } from './asked.ts';
import type { Made } from './bench.ts';
import { areaOf, besideChords, ringOf } from './drawn.ts';
import { faceBase, faceTop, flush, volumeOf, type Laid, type Plane } from './laid.ts';
import { box, cornersOf, sawn, type Faces, type HalfSpace } from './solid.ts';

/**
 * A blank as it lies on the desk: x to the listener's right, y away, z up; inboard at the left of the right stand and at the
 * right of the left one, its front left bottom corner at the origin. Unit normals point out of its faces.
 */
function outward(face: BlockFace | 'front' | 'rear' | 'base', side: SideName): Vec3 {
  const outboard = side === 'right' ? 1 : -1;
  switch (face) {
    case 'outboard side':
      return vec3(outboard, 0, 0);
    case 'inboard side':
      return vec3(-outboard, 0, 0);
    case 'front':
      return vec3(0, -1, 0);
    case 'rear':
      return vec3(0, 1, 0);
    case 'base':
      return vec3(0, 0, -1);
    case 'slope':
      return vec3(0, 0, 1);
  }
}

const size = (a: Vec3): number => Math.hypot(a.x, a.y, a.z);
const times = (a: Vec3, f: number): Vec3 => vec3(a.x * f, a.y * f, a.z * f);
const plus = (...all: readonly Vec3[]): Vec3 =>
  all.reduce((a, b) => vec3(a.x + b.x, a.y + b.y, a.z + b.z), vec3(0, 0, 0));

/** Where a point of a template glued on its face lies on the blank, print outwards and base to base. */
function onFace({ face }: Template, { blank }: Block, side: SideName): (x: number, y: number) => Vec3 {
  const out = outward(face, side);
  // Whoever looks at the face has this at the right hand.
  const right = cross(times(out, -1), vec3(0, 0, 1));
  const corner = vec3(out.x > 0 || right.x < 0 ? blank.width : 0, out.y > 0 || right.y < 0 ? blank.length : 0, 0);
  return (x, y) => plus(corner, times(right, x), vec3(0, 0, y));
}

/** The right-hand end of a template, as it is named, lies at the right hand of whoever looks at its face. */
export function expectTrueTemplates(block: Block, side: SideName): void {
  const named = { front: 'front', rear: 'rear', inboard: 'inboard side', outboard: 'outboard side' } as const;
  for (const { face, ends } of block.templates) {
    const right = cross(times(outward(face, side), -1), vec3(0, 0, 1));
    expect([face, dot(right, outward(named[ends[1]], side))]).toEqual([face, 1]);
    expect([face, dot(right, outward(named[ends[0]], side))]).toEqual([face, -1]);
  }
}

/** The line of the slope on a template, left to right: what spans its corners, slots and recesses, on top. */
function slopeLine({ outline }: Template): [Point, Point] {
  const hull = convexHull(ringOf(outline));
  const edges = hull.map((from, i): [Point, Point] => [hull[(i + 1) % hull.length] ?? from, from]);
  return edges.reduce((best, edge) => (edge[1][0] - edge[0][0] > best[1][0] - best[0][0] ? edge : best));
}

/** Sets of the machine within what the workshop has. */
function expectWithin({ tool, depth, bevel }: SawCut, { saw, bandSaw }: Workshop): void {
  const degrees = (bevel * 180) / Math.PI;
  if (tool === 'table saw') {
    expect(depth).toBeLessThanOrEqual(saw.depth);
    expect(degrees).toBeLessThanOrEqual(saw.tiltsMost + 1e-6);
  }
  if (tool === 'band saw') {
    expect(depth).toBeLessThanOrEqual(bandSaw?.height ?? 0);
    expect(degrees).toBeLessThanOrEqual((bandSaw?.tiltsMost ?? 0) + 1e-6);
  }
}

/**
 * What a slope cut leaves, by the stated settings alone: the blank lies with the named face on the table, the named end
 * first, its base turned by the mitre until the line of the template on top runs with the feed; the blade stands in that
 * line, tilted by the bevel to the side away from the work. In the blank's own frame.
 */
function slopeHalf(block: Block, cut: SawCut, side: SideName): HalfSpace {
  const down = outward(cut.down, side);
  const lead = outward(cut.leads, side);
  const base = outward('base', side);
  const heldAt = cut.held === 'right' ? 1 : -1;
  // On the table: right, feed, up. The work lies as said in one way only, or not at all.
  const up = times(down, -1);
  const right = cross(lead, up);
  expect(dot(right, base)).toBe(heldAt);

  const template = block.templates.find(({ face }) => dot(outward(face, side), up) === 1);
  if (!template) throw new Error('the face on top has a template');
  const place = onFace(template, block, side);
  const [a, b] = slopeLine(template).map(([x, y]) => place(x, y));
  if (!a || !b) throw new Error('a line has two ends');
  const drawn = subtract(b, a);
  const feed = times(drawn, Math.sign(dot(drawn, lead)) / size(drawn));
  // The base lies against the carriage at the stated angle to the feed.
  expect(Math.asin(Math.abs(dot(feed, base)))).toBeCloseTo(cut.mitre, 9);

  // Square to the feed on the table, to the right of who feeds; the blade leans to the free side.
  const across = cross(feed, up);
  const blade = plus(times(up, Math.cos(cut.bevel)), times(across, -heldAt * Math.sin(cut.bevel)));
  const normal = cross(blade, feed);
  const towardsFree = Math.sign(dot(normal, times(across, -heldAt)));
  const waste = times(normal, towardsFree / size(normal));
  // What the blade passes, along it: the block's whole width, as it lies on its side.
  expect(block.blank.width / Math.cos(cut.bevel)).toBeCloseTo(cut.depth, 9);
  return { normal: waste, limit: dot(waste, a) };
}

/** Square to the slope and along its width, as far out as the template of a side reaches; the block's side is kept. */
function endHalf(block: Block, cut: SawCut, side: SideName, slope: HalfSpace): HalfSpace {
  expect([cut.down, cut.bevel, cut.mitre]).toEqual(['slope', 0, 0]);
  const [template] = block.templates;
  if (!template) throw new Error('a side has a template');
  const place = onFace(template, block, side);
  const along = outward(cut.makes === 'front end' ? 'front' : 'rear', side);
  const off = dot(along, slope.normal) / dot(slope.normal, slope.normal);
  const normal = subtract(along, times(slope.normal, off));
  const reach = ringOf(template.outline).map(([x, y]) => dot(normal, place(x, y)));
  return { normal, limit: Math.max(...reach) };
}

/** A sawn block, and what its slope was sawn and planed to. */
export interface Sawn {
  readonly wedge: Faces;
  readonly slope: HalfSpace | null;
}

/** What is left of a block's blank after its cuts and the plane: in the blank's frame. */
export function sawnBlock(block: Block, side: SideName, tools: Workshop, order = block.cuts.map((_, i) => i)): Sawn {
  const { blank } = block;
  let body = box(vec3(0, 0, 0), vec3(blank.width, blank.length, blank.height));
  let slope: HalfSpace | null = null;
  for (const cut of order.map((i) => block.cuts[i])) {
    if (!cut) throw new Error('a step names a cut');
    expectWithin(cut, tools);
    if (cut.makes === 'slope') {
      slope = slopeHalf(block, cut, side);
      // The saw stays outside the line, the plane goes down to it.
      const sawnOff = sawn(body, { ...slope, limit: slope.limit + cut.leave * size(slope.normal) });
      body = sawn(sawnOff, slope);
    } else if (slope) body = sawn(body, endHalf(block, cut, side, slope));
    else throw new Error('ends are sawn from the slope');
  }
  return { wedge: body, slope };
}

/** A strip glued across the slope, mm: how far its bare side is from the slope's low edge, its thickness and its height. */
export interface Strip {
  readonly from: number;
  readonly thick: number;
  readonly high: number;
}

/** A block as it leaves the bench. */
export interface Worked extends Made {
  readonly wedge: Faces;
  readonly strip: Strip | null;
}

/** Carries out the steps of a stand that is sawn from a blank, by their data and the templates alone. */
export function workBlock(body: StandBody, side: SideName, tools: Workshop): Worked {
  const [block] = body.blocks;
  if (!block) throw new Error('there is a block');
  const order: number[] = [];
  let strip: (Strip & { readonly wide: number }) | null = null;
  for (const step of body.steps) {
    const said = (name: string): number => step.quantities[name]?.value ?? NaN;
    if (step.act === 'square-up') {
      const { length, width, height } = block.blank;
      expect([said('long'), said('wide'), said('high')]).toEqual([length, width, height]);
    }
    if (step.act === 'saw') order.push(step.cut);
    if (step.act === 'glue')
      strip = { from: said('from'), thick: said('long'), high: said('high'), wide: said('wide') };
  }
  expect(order).toEqual(block.cuts.map((_, i) => i));
  expectTrueTemplates(block, side);
  const made = sawnBlock(block, side, tools, order);
  const { wedge } = made;
  const [inboard, outboard] = (['inboard side', 'outboard side'] as const).map((face) => {
    const template = block.templates.find((one) => one.face === face);
    if (!template) throw new Error('both sides have templates');
    // Seen from the listener's right, front at the left.
    return template.ends[0] === 'front' ? template.outline : mirrored(template.outline);
  });
  if (!inboard || !outboard) throw new Error('a block has two sides');
  const does = (act: string): boolean => body.steps.some((step) => step.act === act);
  const spanned = convexHull(ringOf(inboard));
  expect(does('mill')).toBe(areaOf(spanned) - areaOf(ringOf(inboard)) > 0.1);
  expect(does('round')).toBe(edgesOf(inboard).some(({ kind }) => kind === 'arc'));
  const layer: Laid = {
    name: 'block',
    from: 0,
    to: block.blank.width,
    inboard: flush(inboard).ring,
    outboard: flush(outboard).ring,
    open: -(besideChords(inboard) + besideChords(outboard)) / 2,
    bored: 0,
    rodHoles: [],
    windows: [],
  };
  const plane = topOf(made, block, side);
  const own = volumeOf(layer, plane);
  return {
    wedge,
    strip,
    layers: [layer],
    crosses: [],
    skins: [],
    width: block.blank.width,
    volume: own + (strip ? strip.thick * strip.high * strip.wide : 0),
    top: (across, u) => {
      const drawn = faceTop(layer, across, u);
      return drawn !== null && plane ? Math.min(drawn, plane(across, u)) : drawn;
    },
    underside: (_, u) => faceBase(layer, u),
    left: [],
  };
}

/** The plane of a sawn slope in the wood's own axes; null for a block that stays level. */
function topOf({ wedge, slope }: Sawn, { blank }: Block, side: SideName): Plane | null {
  if (!slope) return null;
  const { normal, limit } = slope;
  const front = frontOf(wedge);
  return (across, u) => {
    const x = side === 'right' ? across : blank.width - across;
    return (limit - normal.x * x - normal.y * (u + front)) / normal.z;
  };
}

/** Where the base's front corner lies on the blank. */
export const frontOf = (wedge: Faces): number =>
  Math.min(
    ...cornersOf(wedge)
      .filter(({ z }) => z < 1e-6)
      .map(({ y }) => y),
  );

/** A strip glued on as said stands where the cabinet's low edge is, as thick and as high as asked for: 1 for one looked at. */
export function expectStrip({ from, thick, high }: Strip, where: Where): number {
  const { settings, depth } = where;
  const { stop, pad } = settings;
  if (!stop) throw new Error('there is a strip without a stop');
  const slope = slopeIn(where);
  const cover = coverIn(where);
  const rear = slope.low === 'rear';
  // The slope's low edge, along the slope: where the wood's end meets the wood's top.
  const [u, z] = slope.at(0, -pad - cover.top);
  const [cos, sin] = slope.along;
  // (u + s·cos) − (z + s·sin)·lean = end
  const low = ((rear ? slope.run : 0) + z * slope.lean - u) / (cos - sin * slope.lean);
  expect(rear ? low - from : low + from).toBeCloseTo(rear ? depth + cover.top : -cover.top, 6);
  const beyond = rear ? slope.rear - depth : -slope.front;
  const runsOn = Math.abs(beyond - stop.thickness) < 1e-9 && (settings.ends === 'square' || where.stance.tilt === 0);
  expect(thick).toBeCloseTo(stop.thickness - cover.top - (runsOn ? (rear ? cover.rear : cover.front) : cover.top), 6);
  expect(high).toBeCloseTo(stop.height + pad, 9);
  return 1;
}
