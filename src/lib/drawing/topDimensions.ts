import { vec3, type Point } from '$lib/geometry/point.ts';
import type { Plan } from '$lib/solution/document.ts';
import { deskShape } from '$lib/project/deskShape.ts';
import { sideNames, type Layout, type SideName, type Wall } from '$lib/project/project.ts';
import type { StoodSpeaker } from '$lib/project/stood.ts';
import { widthSays } from './frontDimensions.ts';
import { reachOf, towards, wallText } from '$lib/project/wall.ts';
import { cornerOf } from './cabinetFrame.ts';
import { deskSizes, type DeskSize } from './deskSizes.ts';
import { inputsOf } from './inputs.ts';
import { angular, linear } from './makeDimension.ts';
import { fromAbove } from './projection.ts';
import { wallsDrawn } from './roomFromAbove.ts';
import { surfaceSizes } from './surfaceItems.ts';
import type { AngleDimension, Dimension } from './view.ts';

/** Differences that no drawing of a desk shows: then one dimension speaks for both sides. mm and degrees. */
const SAME = 0.05;
/** Radii of the arcs, as shares of the distance to the head. */
const TOE_RADIUS = 0.32;
const TRIANGLE_RADIUS = 0.22;

const same = (a: number, b: number): boolean => Math.abs(a - b) < SAME;

interface Scene {
  readonly speaker: StoodSpeaker;
  readonly layout: Layout;
  readonly plan: Plan;
  readonly inputs: ReturnType<typeof inputsOf>;
}

/** Everything with a number on the top view. Values come from the project and the plan. */
export function topDimensions(
  speaker: StoodSpeaker,
  layout: Layout,
  layoutIndex: number,
  plan: Plan,
): (Dimension | AngleDimension)[] {
  const scene: Scene = { speaker, layout, plan, inputs: inputsOf(layout, layoutIndex) };
  return [
    ...depths(scene),
    ...marksAlong(scene),
    ...widths(scene),
    ...otherSizes(scene),
    ...triangle(scene),
    ...toes(scene),
    cabinetWidth(scene),
    ...surfaceSizes(layout, layoutIndex),
  ];
}

/** Along the desk's depth: setback, desk and the gap to a wall straight behind it in one chain at the left. */
function depths({ layout, plan, inputs }: Scene): Dimension[] {
  const { desk, listener, placement } = layout;
  const { extent, depth } = deskShape(desk);
  const row = same(placement.left.y, placement.right.y) ? -1 : -2;
  const edge = extent.left;
  const common = { subject: 'desk', run: 'up', row } as const;
  const straight = layout.room.walls.findIndex(({ bearing }) => bearing === 0);
  return [
    linear({
      ...common,
      id: 'setback',
      subject: 'head',
      // Beside the head, so that its extension line does not run through it.
      from: [plan.head.x - listener.headWidth, plan.head.y],
      to: [edge, 0],
      value: listener.setback,
      name: 'head in front of the desk’s edge',
      input: inputs.listener('setback'),
      inputSign: 1,
      beside: 'from',
    }),
    ...deskSizes(desk.outline)
      .filter(isDepth)
      .map(({ value, name, steps }) =>
        linear({
          ...common,
          id: 'desk-depth',
          from: [edge, 0],
          to: [edge, depth],
          value,
          name,
          input: inputs.desk('outline', ...steps),
        }),
      ),
    ...wallsDrawn(layout).map(({ wall, index }) => {
      const gap = gapOf(layout, inputs, wall, index);
      return index === straight
        ? linear({ ...gap, ...common, subject: 'wall', from: [edge, extent.top], to: [edge, wall.distance] })
        : linear(gap);
    }),
  ];
}

const isDepth = ({ steps }: DeskSize): boolean => steps.join() === 'depth';
const isWidth = ({ steps }: DeskSize): boolean => steps.join() === 'width';

/** The sizes of a desk that is no plain rectangle, along its own edges. */
const otherSizes = ({ layout, inputs }: Scene): Dimension[] =>
  deskSizes(layout.desk.outline)
    .filter((one) => !isDepth(one) && !isWidth(one))
    .map(({ steps, value, name, from, to, run }) =>
      linear({
        id: `desk-${steps.join('-')}`,
        subject: 'desk',
        from,
        to,
        run,
        row: run === 'aligned' ? -1 : 0,
        // The bow counts by its sign, a dimension by its size.
        value: Math.abs(value),
        inputSign: value < 0 ? -1 : 1,
        name,
        input: inputs.desk('outline', ...steps),
        rank: 2,
      }),
    );

/** From the corner of the desk that is nearest to a wall, square to the wall. */
function gapOf(
  { desk }: Layout,
  inputs: Scene['inputs'],
  { name, bearing, distance }: Wall,
  index: number,
): Omit<Dimension, 'kind'> {
  const [right, ahead] = towards(bearing);
  const { points } = deskShape(desk);
  const reach = reachOf([right, ahead], points);
  const [x, y] = points.find(([px, py]) => px * right + py * ahead === reach) ?? [0, 0];
  const value = distance - reach;
  return {
    id: `wall-gap-${index}`,
    subject: 'wall',
    from: [x, y],
    to: [x + right * value, y + ahead * value],
    run: 'aligned',
    row: 0,
    value,
    name: `desk to the ${wallText(name)}`,
    input: inputs.wall(index),
    inputZero: reach,
  };
}

/** Bare desk beside a cabinet that holds its mark's dimension, as a share of the desk's width. */
const BESIDE = 0.1;

/**
 * From the desk's front edge to the marks: the right one at the right; the left one at the left, where it differs. In a
 * narrow room beside the cabinet, where the desk is bare there: a row outside the desk would cost the plan its scale.
 */
function marksAlong({ layout, plan, inputs }: Scene): Dimension[] {
  const { desk, placement } = layout;
  const equal = same(placement.left.y, placement.right.y);
  const shown = equal ? (['right'] as const) : sideNames;
  return shown.flatMap((side) => {
    const out = side === 'right' ? 1 : -1;
    const { x, y } = placement[side];
    const { left, right } = deskShape(desk).extent;
    const outermost = Math.max(...[0, 1].map((corner) => out * cornerOf(plan.sides[side], corner).x));
    const bare = (side === 'right' ? right : -left) - outermost;
    const common = {
      subject: 'stand',
      to: [x, y],
      run: 'up',
      row: out,
      value: y,
      each: equal,
      name: equal ? 'desk’s front edge to each mark' : `desk’s front edge to the ${side} mark`,
      input: inputs.mark(side, 'y'),
    } as const;
    const outside = linear({ ...common, id: `mark-${side}-y`, from: [side === 'right' ? right : left, 0] });
    if (bare < BESIDE * (right - left)) return [outside];
    const beside = { id: `mark-${side}-y-beside`, from: [x, 0], base: out * (outermost + bare / 4), upTo: 1 } as const;
    return [linear({ ...common, ...beside }), { ...outside, rank: 2 }];
  });
}

/** Across the desk, under the view: listener's offset when there is one, marks from the middle, width. */
function widths({ layout, plan, inputs }: Scene): Dimension[] {
  const { desk, listener, placement } = layout;
  const { left, right } = deskShape(desk).extent;
  const common = { subject: 'stand', run: 'across' } as const;
  const offset = listener.offset === 0 ? 0 : 1;
  /** The desk's middle, behind the head, so that its extension line does not run through it. */
  const middle: Point = [0, plan.head.y - listener.headWidth];
  const equal = same(-placement.left.x, placement.right.x);
  const mark = (side: SideName): Dimension => {
    const { x, y } = placement[side];
    const towards = side === 'right' ? 1 : -1;
    return linear({
      ...common,
      id: `mark-${side}-x`,
      from: middle,
      to: [x, y],
      row: -1 - offset,
      value: towards * x,
      each: equal,
      name: equal ? 'middle of the desk to each mark' : `middle of the desk to the ${side} mark`,
      input: inputs.mark(side, 'x'),
      inputSign: towards,
      beside: 'to',
    });
  };
  const head = linear({
    ...common,
    id: 'listener-offset',
    subject: 'head',
    from: middle,
    to: [plan.head.x, middle[1]],
    row: -1,
    value: Math.abs(listener.offset),
    name: `head to the ${listener.offset < 0 ? 'left' : 'right'} of the middle`,
    input: inputs.listener('offset'),
    inputSign: listener.offset < 0 ? -1 : 1,
  });
  const width = deskSizes(desk.outline)
    .filter(isWidth)
    .map(({ value, name, steps }) =>
      linear({
        ...common,
        id: 'desk-width',
        subject: 'desk',
        from: [left, 0],
        to: [right, 0],
        row: -2 - offset,
        value,
        name,
        input: inputs.desk('outline', ...steps),
      }),
    );
  return [...width, ...(equal ? (['right'] as const) : sideNames).map(mark), ...(offset ? [head] : [])];
}

/** Base, distances and the angle at the head: results, all of them. */
function triangle({ plan }: Scene): (Dimension | AngleDimension)[] {
  const { left, right } = plan.sides;
  const head = fromAbove.flat(plan.head);
  const [a, b] = [fromAbove.flat(left.aimedPoint), fromAbove.flat(right.aimedPoint)];
  const { base, leftDistance, rightDistance, angle } = plan.triangle;
  const reach = { left: leftDistance, right: rightDistance };
  const shown = same(leftDistance, rightDistance) ? (['left'] as const) : sideNames;
  const from = (end: Point): Point => [end[0] - head[0], end[1] - head[1]];
  return [
    linear({
      id: 'base',
      subject: 'triangle',
      from: b,
      to: a,
      run: 'aligned',
      row: 0,
      value: base,
      name: 'base of the triangle, aimed point to aimed point',
      rank: 3,
    }),
    ...shown.map((side) =>
      linear({
        id: `distance-${side}`,
        subject: 'triangle',
        from: head,
        to: side === 'left' ? a : b,
        run: 'aligned',
        row: side === 'left' ? 1 : -1,
        value: reach[side],
        name: same(leftDistance, rightDistance) ? 'aimed point to head' : `${side} aimed point to head`,
        rank: 3,
      }),
    ),
    angular({
      id: 'triangle-angle',
      subject: 'triangle',
      corner: head,
      reference: from(b),
      line: from(a),
      draw: 'none',
      radius: TRIANGLE_RADIUS * Math.min(leftDistance, rightDistance),
      value: angle,
      name: 'angle of the triangle at the head',
      about: 'triangle-angle',
    }),
  ];
}

/** From straight ahead to the axis: the right one, and the left one where it differs. */
function toes({ plan, inputs }: Scene): AngleDimension[] {
  const { left, right } = plan.sides;
  const shown =
    same(left.toe, right.toe) && same(plan.triangle.leftDistance, plan.triangle.rightDistance)
      ? (['right'] as const)
      : sideNames;
  return shown.map((side) => {
    const { aimedPoint, axis, toe } = plan.sides[side];
    const distance = plan.triangle[side === 'left' ? 'leftDistance' : 'rightDistance'];
    return angular({
      id: `toe-${side}`,
      subject: 'axis',
      corner: fromAbove.flat(aimedPoint),
      reference: [0, -1],
      line: fromAbove.flat(vec3(axis.x, axis.y, axis.z)),
      draw: 'reference',
      radius: TOE_RADIUS * distance,
      value: toe,
      ...(shown.length > 1 ? { textBeyond: 'reference' as const } : {}),
      name: shown.length === 1 ? 'toe, each' : `toe, ${side}`,
      rank: 2,
      ...inputs.toe,
    });
  });
}

/** Over the rear of the right cabinet, clear of what happens in front of it. */
function cabinetWidth({ speaker, plan }: Scene): Dimension {
  const { right } = plan.sides;
  return linear({
    id: 'speaker-width',
    subject: 'cabinet',
    from: fromAbove.flat(cornerOf(right, 3)),
    to: fromAbove.flat(cornerOf(right, 2)),
    run: 'aligned',
    row: -1,
    value: speaker.width,
    ...widthSays(speaker),
    rank: 4,
  });
}
