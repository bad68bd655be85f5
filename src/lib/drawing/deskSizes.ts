import type { Point } from '$lib/geometry/point.ts';
import { outlines } from '$lib/project/fields/desk.ts';
import type { DeskOutline } from '$lib/project/project.ts';
import type { Range } from '$lib/project/range.ts';

/** One size of a desk's top as its drawing gives it: from where to where, and by which of its edges it is moved. */
export interface DeskSize {
  /** Keys within the outline. */
  readonly steps: readonly string[];
  readonly value: number;
  readonly range: Range;
  /** `desk width`. */
  readonly name: string;
  /** Ends of its dimension; `run` along an axis or between them. */
  readonly from: Point;
  readonly to: Point;
  readonly run: 'across' | 'up' | 'aligned';
  readonly edges: readonly DeskEdge[];
}

/** What is taken hold of to change a size. */
export interface DeskEdge {
  /** Unique among the desk's edges. */
  readonly id: string;
  readonly name: string;
  readonly body: readonly [Point, Point];
  /** The axis it moves along, and what the size gains for each mm. */
  readonly along: 'across' | 'up';
  readonly rate: number;
}

type Rule<Name extends DeskOutline['rule']> = Extract<DeskOutline, { readonly rule: Name }>;

/** The sizes by which a rule draws a desk; none for one drawn corner by corner. */
export function deskSizes(outline: DeskOutline): readonly DeskSize[] {
  switch (outline.rule) {
    case 'rectangle':
      return plainSizes(outline, outlines.rectangle, 0);
    case 'bowed':
      return [...plainSizes(outline, outlines.bowed, outline.bow), bowSize(outline)];
    case 'corner':
      return cornerSizes(outline);
    case 'l':
      return lSizes(outline);
    case 'outline':
      return [];
  }
}

interface Plain {
  readonly width: number;
  readonly depth: number;
}

/** Width and depth of a desk that is the same on both sides. @param front y of the front's two ends. */
function plainSizes(
  { width, depth }: Plain,
  ranges: Readonly<Record<'width' | 'depth', Range>>,
  front: number,
): DeskSize[] {
  const half = width / 2;
  return [
    {
      steps: ['width'],
      value: width,
      range: ranges.width,
      name: 'desk width',
      from: [-half, front],
      to: [half, front],
      run: 'across',
      edges: [
        { id: 'left', name: 'Left edge of the desk', body: [[-half, front], [-half, depth]], along: 'across', rate: -2 }, // prettier-ignore
        { id: 'right', name: 'Right edge of the desk', body: [[half, front], [half, depth]], along: 'across', rate: 2 }, // prettier-ignore
      ],
    },
    {
      steps: ['depth'],
      value: depth,
      range: ranges.depth,
      name: 'desk depth',
      from: [-half, 0],
      to: [-half, depth],
      run: 'up',
      edges: [{ id: 'rear', name: 'Back edge of the desk', body: [[-half, depth], [half, depth]], along: 'up', rate: 1 }], // prettier-ignore
    },
  ];
}

const bowSize = ({ width, bow }: Rule<'bowed'>): DeskSize => ({
  steps: ['bow'],
  value: bow,
  range: outlines.bowed.bow,
  name: 'bow of the front edge',
  from: [width / 2, 0],
  to: [width / 2, bow],
  run: 'up',
  edges: [{ id: 'bow', name: 'Front corner of the desk', body: [[width / 2, bow], [width / 2, bow]], along: 'up', rate: 1 }], // prettier-ignore
});

/** The wings lie at 45°, so that an edge gains a wing √2 mm for each mm across; what keeps its place is the front. */
function cornerSizes(outline: Rule<'corner'>): DeskSize[] {
  const { left, right, leftDepth, rightDepth, front } = outline;
  const cut = front * Math.SQRT1_2;
  const [a, b] = [rightDepth + cut / 2, leftDepth + cut / 2];
  // A place in the walls' own frame, the corner at its origin, the left wing along the first axis.
  const at = (x: number, y: number): Point => [(y - b - (x - a)) * Math.SQRT1_2, (a - x + (b - y)) * Math.SQRT1_2];
  const corner = at(0, 0);
  const size = (
    key: 'left' | 'right' | 'leftDepth' | 'rightDepth',
    name: string,
    from: Point,
    to: Point,
    edge: DeskEdge,
  ): DeskSize => ({
    steps: [key],
    value: outline[key],
    range: outlines.corner[key],
    name,
    from,
    to,
    run: 'aligned',
    edges: [edge],
  });
  const across = (id: string, name: string, body: readonly [Point, Point], rate: number): DeskEdge => ({
    id,
    name,
    body,
    along: 'across',
    rate,
  });
  return [
    size(
      'left',
      'left wing along its wall',
      corner,
      at(left, 0),
      across('left', 'End of the left wing', [at(left, 0), at(left, leftDepth)], -Math.SQRT2),
    ),
    size(
      'right',
      'right wing along its wall',
      at(0, right),
      corner,
      across('right', 'End of the right wing', [at(0, right), at(rightDepth, right)], Math.SQRT2),
    ),
    size(
      'leftDepth',
      'depth of the left wing',
      at(left, 0),
      at(left, leftDepth),
      across('left-wall', 'Wall side of the left wing', [corner, at(left, 0)], -Math.SQRT2),
    ),
    size(
      'rightDepth',
      'depth of the right wing',
      at(rightDepth, right),
      at(0, right),
      across('right-wall', 'Wall side of the right wing', [at(0, right), corner], Math.SQRT2),
    ),
    {
      steps: ['front'],
      value: front,
      range: outlines.corner.front,
      name: 'front edge before the seat',
      from: [-front / 2, 0],
      to: [front / 2, 0],
      run: 'across',
      edges: [{ id: 'front', name: 'End of the front edge', body: [[front / 2, 0], [front / 2, 0]], along: 'across', rate: 2 }], // prettier-ignore
    },
  ];
}

function lSizes({ width, depth, return: { side, width: wide, length } }: Rule<'l'>): DeskSize[] {
  const out = side === 'right' ? 1 : -1;
  const free = (width - wide) / 2;
  const [far, near] = [-out * free, out * (free + wide)];
  const [left, right] = [Math.min(far, near), Math.max(far, near)];
  const inner = out * free;
  const ranges = outlines.l;
  return [
    {
      steps: ['width'],
      value: width,
      range: ranges.width,
      name: 'desk width',
      from: [left, depth],
      to: [right, depth],
      run: 'across',
      edges: [{ id: 'side', name: 'Plain end of the desk', body: [[far, 0], [far, depth]], along: 'across', rate: -out * 2 }], // prettier-ignore
    },
    {
      steps: ['depth'],
      value: depth,
      range: ranges.depth,
      name: 'desk depth',
      from: [far, 0],
      to: [far, depth],
      run: 'up',
      edges: [{ id: 'rear', name: 'Back edge of the desk', body: [[left, depth], [right, depth]], along: 'up', rate: 1 }], // prettier-ignore
    },
    {
      steps: ['return', 'width'],
      value: wide,
      range: ranges.return.width,
      name: 'width of the return',
      from: [Math.min(inner, near), -length],
      to: [Math.max(inner, near), -length],
      run: 'across',
      edges: [{ id: 'return', name: 'Inner edge of the return', body: [[inner, -length], [inner, 0]], along: 'across', rate: -out * 2 }], // prettier-ignore
    },
    {
      steps: ['return', 'length'],
      value: length,
      range: ranges.return.length,
      name: 'length of the return',
      from: [near, -length],
      to: [near, 0],
      run: 'up',
      edges: [{ id: 'return-end', name: 'End of the return', body: [[inner, -length], [near, -length]], along: 'up', rate: -1 }], // prettier-ignore
    },
  ];
}
