import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { areaVector, facesOf, type Body } from '$lib/drawing/space/body.ts';
import { bodiesOf } from '$lib/drawing/space/bodies.ts';
import type { SpaceLine } from '$lib/drawing/space/space.ts';
import { spaceScene } from '$lib/drawing/space/spaceScene.ts';
import { add, cross, distance, dot, length, mirrorX, scale, subtract, vec3, type Vec3 } from '$lib/geometry/point.ts';
import { deskShape } from '$lib/project/deskShape.ts';
import { sideNames } from '$lib/project/project.ts';
import { solve } from '$lib/solution/solve.ts';
import { firstLayout, project } from '../../projects.ts';
import { runs } from '../../runs.ts';
import { scenes } from '../arbitraries.ts';
import { scene } from '../scene.ts';

/** Rounding in lengths of a few metres, mm. */
const DUST = 1e-6;

const middleOf = (points: readonly Vec3[]): Vec3 => scale(points.reduce(add, vec3(0, 0, 0)), 1 / points.length);
const close = (a: Vec3, b: Vec3): boolean => distance(a, b) < DUST;
const linesOf = (lines: readonly SpaceLine[], subject: SpaceLine['subject']): SpaceLine[] =>
  lines.filter((line) => line.subject === subject);

/** How far a point lies from the straight line through another in a direction of length 1. */
const aside = (point: Vec3, through: Vec3, direction: Vec3): number =>
  length(cross(subtract(point, through), direction));

const planOf = (changes: Readonly<Record<string, unknown>>) => {
  const made = project(changes);
  const solved = solve(made, firstLayout(made));
  if (!solved.ok) throw new Error('the demo stands so too');
  return solved.value;
};

const squareBase = () => planOf({ '/layouts/0/stand/base': 'square-to-desk', '/layouts/0/placement/left/x': -380 });

describe('the scene', () => {
  it('has loudspeakers, axes, head and desk where the plan has them', () => {
    fc.assert(
      fc.property(scenes, ({ plan, layout, project: { speaker } }) => {
        const { faces, lines } = spaceScene(plan);
        const corners = (subject: string): Vec3[] =>
          faces.filter((face) => face.subject === subject).flatMap((face) => face.corners);
        for (const name of sideNames) {
          const side = plan.sides[name];
          for (const corner of side.cabinet) expect(corners('cabinet').some((one) => close(one, corner))).toBe(true);
          const [outboard, inboard] = side.cabinet;
          if (!outboard || !inboard) throw new Error('a cabinet has corners');
          const front = middleOf([outboard, inboard]);
          expect(Math.hypot(front.x - side.mark.x, front.y - side.mark.y)).toBeLessThan(DUST);
          for (const [x, y] of plan.stand[name].footprint) {
            expect(corners('stand').some((one) => Math.hypot(one.x - x, one.y - y) < DUST)).toBe(true);
          }
          side.drivers.forEach((driver, index) => {
            const rim = faces.find(
              (face) => face.subject === 'driver' && close(middleOf(face.corners), driver.position),
            );
            expect(rim).toBeDefined();
            expect(distance(rim?.corners[0] ?? vec3(0, 0, 0), driver.position)).toBeCloseTo(
              (speaker.drivers[index]?.diameter ?? NaN) / 2,
              6,
            );
            expect(dot(rim?.normal ?? vec3(0, 0, 0), side.axis)).toBeCloseTo(1, 9);
          });
          const axis = linesOf(lines, 'axis').filter(({ from }) => aside(from, side.aimedPoint, side.axis) < DUST);
          expect(axis.length).toBeGreaterThan(5);
          expect(axis[0]?.from).toEqual(side.aimedPoint);
          for (const { to } of axis) expect(aside(to, side.aimedPoint, side.axis)).toBeLessThan(DUST);
          const past = Math.max(...axis.map(({ to }) => dot(subtract(to, side.nearest), side.axis)));
          expect(past).toBeGreaterThan(100);
          const ear = bodiesOf(plan).find(
            ({ subject, solid }) => subject === 'head' && close(middleOf(solid.corners), plan.ears[name]),
          );
          expect(ear).toBeDefined();
        }
        for (const [x, y] of deskShape(layout.desk).plate) expect(corners('desk')).toContainEqual(vec3(x, y, 0));
      }),
      { numRuns: runs(40) },
    );
  });

  it('draws each way by a surface from its driver over its place to the head', () => {
    const { plan } = scene();
    const ways = linesOf(spaceScene(plan).lines, 'reflection');
    for (const name of sideNames) {
      const desk = plan.sides[name].reflections.find(
        ({ surface, driver }) => surface === 'desk' && driver === 'woofer',
      );
      if (!desk) throw new Error('a desk sends sound back');
      const woofer = plan.sides[name].drivers.find((one) => one.name === 'woofer');
      expect(ways.some(({ from }) => close(from, woofer?.position ?? plan.head))).toBe(true);
      expect(ways.filter(({ from }) => close(from, desk.point))).toHaveLength(1);
      const ring = ways.filter(({ pen, from }) => pen === 'narrow' && distance(from, desk.point) < 40);
      expect(ring.length).toBeGreaterThan(8);
      // Flat on the desk.
      for (const { from, to } of ring) for (const { z } of [from, to]) expect(Math.abs(z)).toBeLessThan(DUST);
    }
    // A way may end in a gap between two dashes.
    expect(ways.filter(({ to }) => distance(to, plan.head) < 40).length).toBeGreaterThanOrEqual(4);
  });

  it('shuts every body, its normals outwards, and turns walls to the room', () => {
    const both = [scene().plan, squareBase(), planOf({ '/speaker/lying': 'tweeter-inboard' })];
    for (const plan of both) for (const body of bodiesOf(plan)) expectOutwards(body, plan.head);
    fc.assert(
      fc.property(scenes, ({ plan }) => {
        for (const body of bodiesOf(plan)) expectOutwards(body, plan.head);
      }),
      { numRuns: runs(30) },
    );
  });

  it('is mirrored with the arrangement', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 300, max: 600 }),
        fc.integer({ min: 300, max: 600 }),
        fc.integer({ min: 200, max: 350 }),
        fc.integer({ min: -60, max: 60 }),
        (a, b, y, offset) => {
          const one = spaceScene(scene({ left: { x: -a, y: 250 }, right: { x: b, y }, offset }).plan);
          const other = spaceScene(scene({ left: { x: -b, y }, right: { x: a, y: 250 }, offset: -offset }).plan);
          expect(one.radius).toBeCloseTo(other.radius, 6);
          expect(placesOf(one.faces.map(({ corners }) => corners.map(mirrorX)))).toEqual(
            placesOf(other.faces.map(({ corners }) => corners)),
          );
          expect(placesOf(one.lines.map(({ from, to }) => [from, to].map(mirrorX)))).toEqual(
            placesOf(other.lines.map(({ from, to }) => [from, to])),
          );
        },
      ),
      { numRuns: runs(20) },
    );
  });

  it('stands a compound wedge under the cabinet’s bottom', () => {
    const plan = squareBase();
    for (const name of sideNames) {
      const side = plan.sides[name];
      const [a, b, , d] = side.cabinet;
      if (!a || !b || !d) throw new Error('a cabinet has corners');
      const square = cross(subtract(b, a), subtract(d, a));
      const normal = scale(square, 1 / length(square));
      const stand = bodiesOf(plan).filter(({ subject }) => subject === 'stand')[name === 'left' ? 0 : 1];
      const above = (stand?.solid.corners ?? []).slice(4);
      expect(above).toHaveLength(4);
      for (const corner of above) expect(dot(subtract(corner, a), normal)).toBeCloseTo(0, 6);
    }
  });
});

function expectOutwards(body: Body, head: Vec3): void {
  const { solid, subject } = body;
  for (const face of facesOf(body)) {
    expect(length(face.normal)).toBeCloseTo(1, 9);
    const area = areaVector(face.corners);
    expect(dot(area, face.normal)).toBeCloseTo(length(area), 3);
    // Flat.
    for (const corner of face.corners) {
      expect(Math.abs(dot(subtract(corner, face.corners[0] ?? corner), face.normal))).toBeLessThan(DUST);
    }
  }
  if (subject === 'wall') {
    const [{ normal, corners } = { normal: head, corners: [] }] = facesOf(body);
    expect(dot(normal, subtract(head, corners[0] ?? head))).toBeGreaterThan(0);
  }
  if (solid.faces.length === 1) return;
  // The areas of a shut body cancel; its volume is counted with its outside out.
  const faces = facesOf(body);
  expect(length(faces.map(({ corners }) => areaVector(corners)).reduce(add, vec3(0, 0, 0)))).toBeLessThan(1e-3);
  const volume = faces.reduce((sum, { corners }) => sum + dot(areaVector(corners), corners[0] ?? head), 0);
  expect(volume).toBeGreaterThan(0);
}

/** Corners of figures to a hundredth of a millimetre, in an order of their own: which corner is the first does not count. */
const placesOf = (figures: readonly (readonly Vec3[])[]): string[] =>
  figures
    .map((figure) =>
      figure
        .map(({ x, y, z }) => [x, y, z].map((value) => (Math.round(value * 100) + 0).toString()).join(' '))
        .sort()
        .join(', '),
    )
    .sort();
