import { expect } from 'vitest';
import { cross, dot, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { SideName, Workshop } from '$lib/project/project.ts';
import type { Block, Template } from '$lib/stand/body.ts';
import type { BlockFace, SawCut } from '$lib/stand/saw.ts';
import { box, sawn, type Faces, type HalfSpace } from './solid.ts';

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

/** The line of the slope on a template: between its two highest corners, left to right. */
function slopeLine({ outline: { vertices } }: Template): [{ x: number; y: number }, { x: number; y: number }] {
  const tops = vertices.filter(({ y }) => y > 1e-9);
  const [a, b, ...more] = [...tops].sort((p, q) => p.x - q.x);
  if (vertices.length !== 4 || more.length > 0 || !a || !b) throw new Error('a plain wedge has four corners');
  return [a, b];
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
  const [a, b] = slopeLine(template).map(({ x, y }) => place(x, y));
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

/** Square to the slope and along its width, through the end's line on a side's template; the side of the block is kept. */
function endHalf(block: Block, cut: SawCut, side: SideName, slope: HalfSpace): HalfSpace {
  expect([cut.down, cut.bevel, cut.mitre]).toEqual(['slope', 0, 0]);
  const [template] = block.templates;
  if (!template) throw new Error('a side has a template');
  const place = onFace(template, block, side);
  const end = cut.makes === 'front end' ? 'front' : 'rear';
  const [left] = template.ends;
  const [a, b] = slopeLine(template);
  const corner = left === end ? a : b;
  const along = outward(end, side);
  const off = dot(along, slope.normal) / dot(slope.normal, slope.normal);
  const normal = subtract(along, times(slope.normal, off));
  return { normal, limit: dot(normal, place(corner.x, corner.y)) };
}

/** What is left of a block's blank after its cuts and the plane: in the blank's frame. */
export function sawnBlock(block: Block, side: SideName, tools: Workshop): Faces {
  const { blank, cuts } = block;
  let body = box(vec3(0, 0, 0), vec3(blank.width, blank.length, blank.height));
  let slope: HalfSpace | null = null;
  for (const cut of cuts) {
    expectWithin(cut, tools);
    if (cut.makes === 'slope') {
      slope = slopeHalf(block, cut, side);
      // The saw stays outside the line, the plane goes down to it.
      const sawnOff = sawn(body, { ...slope, limit: slope.limit + cut.leave * size(slope.normal) });
      body = sawn(sawnOff, slope);
    } else if (slope) body = sawn(body, endHalf(block, cut, side, slope));
    else throw new Error('ends are sawn from the slope');
  }
  return body;
}
