import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { signedArea } from '$lib/geometry/area.ts';
import { circle, openPath, type Path } from '$lib/geometry/contour.ts';
import { edgesOf } from '$lib/geometry/edge.ts';
import { flawOf, volumeOf, type Mesh } from '$lib/files/mesh.ts';
import { CHORD_ERROR } from '$lib/files/ring.ts';
import { bodyMesh } from '$lib/files/solid.ts';
import { extruded, type Body, type Level } from '$lib/workshop/body.ts';
import { anyPlateBody, anySteppedBody, rectangle } from './bodies.ts';
import { runs } from '../runs.ts';

/** Material of a level, its contours nested one in the other at most. */
const exactArea = ({ contours: [outside, ...holes] }: Level): number =>
  holes.reduce((area, hole) => area - Math.abs(signedArea(hole)), Math.abs(outside ? signedArea(outside) : 0));

/** A chord cuts off less than two thirds of its sagitta times the arc; a corner moves by up to half a step each way. */
function slack({ contours }: Level): number {
  const edges = contours.flatMap((contour) => edgesOf(contour));
  return edges.reduce((sum, edge) => {
    if (edge.kind === 'arc') {
      const arc = edge.radius * Math.abs(edge.sweep);
      return sum + arc * ((2 / 3) * CHORD_ERROR * 1.01 + 0.001);
    }
    return sum + 0.001 * Math.hypot(edge.end[0] - edge.start[0], edge.end[1] - edge.start[1]);
  }, 0);
}

function expectVolume(body: Body): Mesh {
  const mesh = bodyMesh(body);
  expect(flawOf(mesh)).toBeNull();
  const exact = body.levels.reduce((sum, level) => sum + exactArea(level) * level.height, 0);
  const allowed = body.levels.reduce((sum, level) => sum + slack(level) * level.height, 0);
  expect(Math.abs(volumeOf(mesh) - exact)).toBeLessThan(allowed);
  return mesh;
}

describe('a body that leans', () => {
  const wedge = { name: 'wedge', levels: [{ height: 10, contours: [rectangle(0, 0, 30, 20)] }] };

  it('has sloping walls: the mean of both ends is what it holds', () => {
    const mesh = bodyMesh({ ...wedge, roof: leaned(rectangle(0, 0, 30, 20), 6) });
    expect(flawOf(mesh)).toBeNull();
    expect(volumeOf(mesh)).toBeCloseTo(30 * (20 + 3) * 10, 9);
    expect(Math.max(...mesh.vertices.map(({ y, z }) => (z === 0 ? y : 0)))).toBe(20);
    expect(Math.max(...mesh.vertices.map(({ y }) => y))).toBe(26);
  });

  it('is refused where its ends have not the same vertices, or its top is not finite', () => {
    const odd = { ...rectangle(0, 0, 30, 20), vertices: rectangle(0, 0, 30, 20).vertices.slice(1) };
    expect(() => bodyMesh({ ...wedge, roof: odd })).toThrow(
      'wedge: expected an outline with as many vertices at the top as at the bottom, got others',
    );
    expect(() => bodyMesh({ ...wedge, roof: leaned(rectangle(0, 0, 30, 20), Infinity) })).toThrow(RangeError);
  });
});

/** The same outline with its upper side higher. */
const leaned = (path: Path, by: number): Path => ({
  ...path,
  vertices: path.vertices.map((vertex) => (vertex.y > 0 ? { ...vertex, y: vertex.y + by } : vertex)),
});

describe('the mesh of a body', () => {
  it('is closed and holds area times height, for any outline and holes', () => {
    fc.assert(
      fc.property(anyPlateBody, (body) => void expectVolume(body)),
      { numRuns: runs(400) },
    );
  });

  it('is closed and holds the sum of its levels, for any pockets', () => {
    fc.assert(
      fc.property(anySteppedBody, (body) => void expectVolume(body)),
      { numRuns: runs(400) },
    );
  });

  it('of a block is exact: eight corners, twelve triangles', () => {
    const mesh = bodyMesh(extruded('block', { outside: rectangle(-5, 2, 30, 20), inside: [] }, 3.05));
    expect([mesh.vertices.length, mesh.triangles.length]).toEqual([8, 12]);
    expect(volumeOf(mesh)).toBeCloseTo(30 * 20 * 3.05, 9);
  });

  it('has Euler characteristic 2 − 2 · holes', () => {
    // Euler and Poincaré: corners − edges + faces of a closed surface with so many holes through it.
    const holes = [circle([20, 20], 5), rectangle(40, 10, 20, 20), circle([80, 20], 5)];
    const { vertices, triangles } = bodyMesh(
      extruded('drilled', { outside: rectangle(0, 0, 100, 40), inside: holes }, 10),
    );
    expect(vertices.length - (triangles.length * 3) / 2 + triangles.length).toBe(2 - 2 * holes.length);
  });

  it('keeps chords within the chord error of a circle', () => {
    const radius = 40;
    const { vertices } = bodyMesh({ name: 'disc', levels: [{ height: 5, contours: [circle([0, 0], radius)] }] });
    const rim = vertices.filter(({ z }) => z === 0);
    for (const [i, here] of rim.entries()) {
      const next = rim[(i + 1) % rim.length] ?? here;
      // Half a micrometre of grid in each direction.
      expect(Math.abs(Math.hypot(here.x, here.y) - radius)).toBeLessThan(0.00071);
      const middle = Math.hypot((here.x + next.x) / 2, (here.y + next.y) / 2);
      expect(radius - middle).toBeLessThan(CHORD_ERROR + 0.00071);
    }
  });

  it('runs a wall through levels that share it, and nests bodies in holes', () => {
    const bore = circle([50, 50], 10);
    const flange: Body = {
      name: 'flange',
      levels: [
        { height: 4, contours: [rectangle(0, 0, 100, 100), bore] },
        { height: 6, contours: [circle([50, 50], 30), bore] },
      ],
    };
    const { vertices } = expectVolume(flange);
    // The bore has no corners at the step between the levels.
    const atStep = vertices.filter(({ x, y, z }) => z === 4 && Math.hypot(x - 50, y - 50) < 11);
    expect(atStep).toEqual([]);
    const island: Body = {
      name: 'island',
      levels: [
        { height: 2, contours: [rectangle(0, 0, 50, 50), rectangle(10, 10, 30, 30), rectangle(20, 20, 10, 10)] },
      ],
    };
    expect(volumeOf(bodyMesh(island))).toBeCloseTo((50 * 50 - 30 * 30 + 10 * 10) * 2, 9);
  });
});

describe('what cannot be a body', () => {
  const outline = rectangle(0, 0, 50, 50);
  const level = (...contours: Level['contours']): Body => ({ name: 'odd <one>', levels: [{ height: 3, contours }] });

  it.each<[string, Body, string]>([
    [
      'a hole over the edge',
      level(outline, circle([50, 25], 5)),
      'expected contours that do not touch, got two that do',
    ],
    [
      'a hole that touches',
      level(outline, rectangle(10, 0, 5, 5)),
      'expected contours that do not touch, got two that do',
    ],
    ['an outline twice', level(outline, outline), 'expected contours that do not touch, got one twice'],
    ['an open outline', level(openPath([[0, 0], [9, 0], [9, 9]])), 'expected a closed contour, got an open one'], // prettier-ignore
    ['a line', level(rectangle(0, 0, 50, 0)), 'expected a contour with an area, got one without'],
    ['no number', level(rectangle(0, 0, NaN, 5)), 'expected finite lengths, got NaN, 0'],
    [
      'a bow tie',
      level({ ...outline, vertices: outline.vertices.toSorted((a, b) => a.x * a.y - b.x * b.y) }),
      'expected',
    ],
    ['nothing', { name: 'odd <one>', levels: [] }, 'expected a closed body, got a surface that encloses nothing'],
    [
      'no height',
      { name: 'odd <one>', levels: [{ height: 0, contours: [outline] }] },
      'expected a height over 0.001 mm, got 0',
    ],
    [
      'endless height',
      { name: 'odd <one>', levels: [{ height: Infinity, contours: [outline] }] },
      'expected a height over 0.001 mm, got Infinity',
    ],
    [
      'levels that meet along an edge only',
      {
        name: 'odd <one>',
        levels: [
          { height: 3, contours: [outline, rectangle(10, 10, 20, 20)] },
          { height: 3, contours: [rectangle(10, 10, 20, 20)] },
        ],
      },
      'expected levels that share faces, got two that meet along an edge only',
    ],
  ])('%s is refused by name', (_, body, message) => {
    expect(() => bodyMesh(body)).toThrow(RangeError);
    expect(() => bodyMesh(body)).toThrow(`odd <one>: ${message}`);
  });
});

describe('the check of a mesh', () => {
  const { vertices, triangles } = bodyMesh(extruded('block', { outside: rectangle(0, 0, 3, 2), inside: [] }, 1));
  const [first, ...rest] = triangles;
  if (!first) throw new Error('a block has faces');

  it.each<[string, Mesh, string]>([
    ['one face left out', { vertices, triangles: rest }, 'an edge with one triangle only'],
    [
      'one face turned',
      { vertices, triangles: [[first[0], first[2], first[1]], ...rest] },
      'an edge that two triangles run along the same way',
    ],
    [
      'one face twice',
      { vertices, triangles: [first, ...triangles] },
      'an edge that two triangles run along the same way',
    ],
    ['a corner missing', { vertices: vertices.slice(0, 7), triangles }, 'a corner that is not there'],
    ['a face without width', { vertices, triangles: [[0, 0, 1], ...triangles] }, 'a triangle with a corner used twice'],
    [
      'all faces turned',
      { vertices, triangles: triangles.map(([a, b, c]) => [a, c, b] as const) },
      'a surface that encloses nothing, or is inside out',
    ],
  ])('finds %s', (_, mesh, flaw) => {
    expect(flawOf({ vertices, triangles })).toBeNull();
    expect(flawOf(mesh)).toBe(flaw);
  });
});
