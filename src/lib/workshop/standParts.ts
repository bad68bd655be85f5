import type { Circle, Path } from '$lib/geometry/contour.ts';
import { extentOf } from '$lib/geometry/extent.ts';
import { moved } from '$lib/geometry/moved.ts';
import type { SideName } from '$lib/project/project.ts';
import type { Piece, StandBody } from '$lib/stand/body.ts';
import type { Part } from './part.ts';

/** Pieces whose corners and holes agree this well are one part: files are written to 0.001 mm. */
const SAME = 1e-6;

/** The parts of two stands, and what each stand takes of them. */
export interface StandParts {
  readonly parts: readonly Part[];
  /** In the order of assembly; the part that most of the stand is made of first. */
  readonly takes: Readonly<Record<SideName, readonly Take[]>>;
}

export interface Take {
  readonly part: string;
  readonly quantity: number;
}

/** One part for pieces that both stands have, two that are told apart by name and label where they differ. */
export function standParts(stands: Readonly<Record<SideName, Pick<StandBody, 'pieces'>>>): StandParts {
  const { left, right } = stands;
  const others = new Map(right.pieces.map((piece) => [piece.name, piece]));
  const parts: Part[] = [];
  const names: Record<SideName, Map<string, string>> = { left: new Map(), right: new Map() };
  const add = (piece: Piece, name: string, quantity: number, ...sides: readonly SideName[]): void => {
    parts.push(partOf(piece, name, quantity));
    for (const side of sides) names[side].set(piece.name, name);
  };
  for (const piece of left.pieces) {
    const other = others.get(piece.name);
    if (other && alike(piece, other)) add(piece, piece.name, piece.quantity + other.quantity, 'left', 'right');
    else add(piece, `${piece.name}-left`, piece.quantity, 'left');
  }
  for (const piece of right.pieces) {
    if (!names.right.has(piece.name)) add(piece, `${piece.name}-right`, piece.quantity, 'right');
  }
  const takes = (side: SideName): Take[] =>
    stands[side].pieces.map(({ name, quantity }) => ({ part: names[side].get(name) ?? name, quantity }));
  return { parts, takes: { left: takes('left'), right: takes('right') } };
}

const alike = (a: Piece, b: Piece): boolean =>
  a.stock === b.stock &&
  a.inside.length === b.inside.length &&
  sameContour(a.outside, b.outside) &&
  a.inside.every((hole, i) => sameContour(hole, b.inside[i]));

function sameContour(a: Path | Circle, b: Path | Circle | undefined): boolean {
  const near = (x: number, y: number): boolean => Math.abs(x - y) <= SAME;
  if (a.kind === 'circle') {
    return (
      b?.kind === 'circle' &&
      near(a.radius, b.radius) &&
      near(a.centre[0], b.centre[0]) &&
      near(a.centre[1], b.centre[1])
    );
  }
  return (
    b?.kind === 'path' &&
    a.vertices.length === b.vertices.length &&
    a.vertices.every(({ x, y, bulge }, i) => {
      const other = b.vertices[i];
      return other !== undefined && near(x, other.x) && near(y, other.y) && near(bulge, other.bulge);
    })
  );
}

function partOf(piece: Piece, name: string, quantity: number): Part {
  const { left, bottom } = extentOf(piece.outside);
  const placed = <Kind extends Path | Circle>(contour: Kind): Kind => moved(contour, [-left, -bottom]);
  const outside = placed(piece.outside);
  const inside = piece.inside.map(placed);
  return {
    name,
    stock: piece.stock,
    thickness: piece.thickness,
    quantity,
    outside,
    inside,
    mark: piece.lines.map(placed),
    labels: piece.fromSide ? 'front and name' : 'name',
  };
}
