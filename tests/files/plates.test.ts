import { describe, expect, it } from 'vitest';
import { signedArea } from '$lib/geometry/area.ts';
import { circle, openPath } from '$lib/geometry/contour.ts';
import { extentOf } from '$lib/geometry/extent.ts';
import { partPlate, sheetPlate } from '$lib/files/plates.ts';
import type { Part, Placement, Sheet } from '$lib/workshop/part.ts';
import { square } from './plate.ts';
import { faultLine } from '$lib/project/fault.ts';

const SIDE = 20;
const RADIUS = 3;
const block: Part = {
  name: 'block',
  stock: 'board',
  thickness: 3,
  quantity: 2,
  outside: square(SIDE),
  inside: [circle([8, 12], RADIUS)],
  labels: [],
  mark: [openPath([[2, 2], [6, 2]])], // prettier-ignore
};

const sheetWith = (...placements: Placement[]): Sheet => ({
  stock: 'board',
  number: 2,
  width: 300,
  height: 200,
  placements,
  fill: 0,
});

describe('the plate of a part', () => {
  it('shows the part at its finished size', () => {
    const plate = partPlate(block);
    expect(plate).toMatchObject({ name: 'block', width: SIDE, height: SIDE });
    expect(plate.layers).toEqual({ outside: [block.outside], inside: block.inside, engrave: block.mark });
  });
});

describe('the plate of a sheet', () => {
  const kerf = 0.2;
  const sheet = sheetWith(
    { part: 'block', x: 10, y: 10, turn: 0 },
    { part: 'block', x: 100, y: 50, turn: Math.PI / 2 },
  );
  const result = sheetPlate(sheet, [block], { kerf });
  if (!result.ok) throw new Error('the block has an answer');
  const plate = result.value;

  it('is the sheet, with nothing on it but what is cut and engraved', () => {
    expect(plate).toMatchObject({ name: 'board-2', width: 300, height: 200 });
    expect([plate.layers.outside.length, plate.layers.inside.length, plate.layers.engrave.length]).toEqual([2, 2, 2]);
  });

  it('grows outsides and shrinks holes by half the kerf, and leaves engraving alone', () => {
    for (const outside of plate.layers.outside) expect(signedArea(outside)).toBeCloseTo((SIDE + kerf) ** 2, 9);
    for (const hole of plate.layers.inside) {
      expect(signedArea(hole)).toBeCloseTo(Math.PI * (RADIUS - kerf / 2) ** 2, 9);
    }
    expect(extentOf(...plate.layers.engrave.slice(0, 1))).toEqual({ left: 12, right: 16, bottom: 12, top: 12 });
  });

  it('turns parts counter-clockwise about their origin before it moves them', () => {
    const turned = plate.layers.outside.find((outside) => extentOf(outside).left > 50);
    // A quarter turn takes x to y and y to −x.
    const box = turned && extentOf(turned);
    expect(box?.left).toBeCloseTo(100 - SIDE - kerf / 2, 9);
    expect(box?.right).toBeCloseTo(100 + kerf / 2, 9);
    expect(box?.bottom).toBeCloseTo(50 - kerf / 2, 9);
    const hole = plate.layers.inside.find((inside) => extentOf(inside).left > 50);
    if (hole?.kind !== 'circle') throw new Error('the hole is a circle');
    expect(hole.centre[0]).toBeCloseTo(100 - 12, 9);
    expect(hole.centre[1]).toBeCloseTo(50 + 8, 9);
  });

  it('is a fault where the beam does not fit into a hole', () => {
    const tight = sheetPlate(sheet, [{ ...block, inside: [circle([8, 8], 0.05)] }], { kerf });
    expect(tight).toMatchObject({ ok: false, faults: [{ pointer: '/cutter/kerf' }] });
    expect(tight.ok ? '' : tight.faults.map(faultLine).join()).toContain('"block"');
  });

  it('throws for a part that nobody made', () => {
    const stray = sheetWith({ part: 'ghost', x: 0, y: 0, turn: 0 });
    expect(() => sheetPlate(stray, [block], { kerf })).toThrow('sheet board-2: no part is named "ghost"');
  });

  it('needs no part for an empty sheet', () => {
    expect(sheetPlate(sheetWith(), [], { kerf })).toMatchObject({ ok: true, value: { layers: { outside: [] } } });
  });
});
