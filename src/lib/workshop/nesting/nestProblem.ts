import { arrangeApartSteps, finishedArea, HAIR, offcutsOf, partsOf, spacingForSteps, usable } from './arrange.ts';
import { claimOf } from './nestable.ts';
import { differing, Pairs, shapesOf } from './nestShapes.ts';
import { once } from '$lib/project/once.ts';
import { success, type Result } from '$lib/project/fault.ts';
import type { Board, Body, Item } from './nestBoard.ts';
import type { Part, Placement, Sheet } from '$lib/workshop/part.ts';
import type { Room } from './rows.ts';
import type { Spaces } from './arrangeFaults.ts';
import type { Stock } from '$lib/project/project.ts';

/** All that nesting one stock asks again and again. Lengths in mm. */
export interface Problem {
  readonly stock: Stock;
  readonly index: number;
  readonly margin: number;
  readonly items: readonly Item[];
  readonly pairs: Pairs;
  /** What the margin leaves of a whole sheet, and of each offcut. */
  readonly room: Room;
  readonly offcuts: readonly Room[];
}

/** Quarter turns that parts of a stock may make. */
export const turnsOn = ({ grain }: Pick<Stock, 'grain'>): readonly number[] =>
  grain === 'along' ? [0, 2] : [0, 1, 2, 3];

/** The problem of one stock, with a pause after each part. Faults as `arrange` has them for the kerf. */
export function* problemOf(
  parts: readonly Part[],
  stock: Stock,
  index: number,
  cutter: Spaces,
): Generator<undefined, Result<Problem>> {
  const own = partsOf(parts, stock);
  const apart = yield* spacingForSteps(own, stock, index, cutter);
  if (!apart.ok) return apart;
  const spacing = apart.value + HAIR;
  let count = 0;
  const items: Item[] = [];
  for (const part of own) {
    const shapes = shapesOf(part, turnsOn(stock), count);
    count += shapes.length;
    const tried = once(() => differing(shapes));
    items.push({
      part,
      shapes,
      get tried() {
        return tried();
      },
      claim: claimOf(part, spacing),
    });
    yield;
  }
  return success({
    stock,
    index,
    margin: cutter.margin,
    items,
    pairs: new Pairs(
      spacing,
      items.flatMap(({ shapes }) => shapes),
    ),
    room: usable(stock.sheet, cutter.margin),
    offcuts: offcutsOf(stock).map((offcut) => usable(offcut, cutter.margin)),
  });
}

/** The boards of a first answer in rows: all copies but those already held in place. Faults as `arrange` has them. */
export function* boardsInRows(problem: Problem, parts: readonly Part[]): Generator<undefined, Result<Board[]>> {
  const { stock, index, margin, pairs } = problem;
  const sheets = yield* arrangeApartSteps(parts, stock, index, margin, pairs.spacing);
  return sheets.ok ? success(sheets.value.map((sheet) => boardOf(sheet, problem))) : sheets;
}

function boardOf(sheet: Sheet, problem: Problem): Board {
  const bodies = sheet.placements.flatMap((placement) => {
    const body = bodyOf(placement, problem, false);
    return body === null ? [] : [body];
  });
  const { number, offcut = false } = sheet;
  return { number, offcut, bodies, room: usable(sheet, problem.margin) };
}

/** A placement as a body; null where the part is not of this stock or may not be turned like that. */
export function bodyOf(placement: Placement, { items, margin }: Problem, fixed: boolean): Body | null {
  const item = items.find(({ part }) => part.name === placement.part);
  const quarters = Math.round(placement.turn / (Math.PI / 2));
  const shape = item?.shapes.find((one) => one.quarters === quarters);
  if (item === undefined || shape === undefined) return null;
  const [originX, originY] = shape.origin;
  const body = { item, shape, x: placement.x - margin - originX, y: placement.y - margin - originY, fixed };
  return fixed ? { ...body, held: [placement.x, placement.y] } : body;
}

/** A board as a sheet. */
export function sheetOf({ number, offcut, bodies }: Board, { stock, margin }: Problem): Sheet {
  const { width, height } = (offcut ? offcutsOf(stock)[number - 1] : undefined) ?? stock.sheet;
  const placements = bodies.map(({ item, shape, x, y, held }): Placement => {
    const [originX, originY] = shape.origin;
    const [atX, atY] = held ?? [margin + x + originX, margin + y + originY];
    return {
      part: item.part.name,
      x: atX,
      y: atY,
      turn: (shape.quarters * Math.PI) / 2,
    };
  });
  const used = bodies.reduce((sum, { item }) => sum + finishedArea(item.part), 0);
  const sheet = { stock: stock.name, number, width, height, placements, fill: used / (width * height) };
  return offcut ? { ...sheet, offcut } : sheet;
}
