import fc from 'fast-check';
import { radians } from '$lib/geometry/angle.ts';
import { vec3, type Point } from '$lib/geometry/point.ts';
import { edgesOf, pointAt } from '$lib/geometry/edge.ts';
import type { Circle, Contour, Path } from '$lib/geometry/contour.ts';
import { COMMON_SHOP } from '$lib/project/commonShop.ts';
import { printerOf } from '$lib/project/printer.ts';
import { sentenceText } from '$lib/project/sentence.ts';
import type { StandSettings } from '$lib/project/project.ts';
import type { StandBody } from '$lib/stand/body.ts';
import { buildStand } from '$lib/stand/build.ts';
import type { Shop, Stance } from '$lib/stand/buildRequest.ts';
import { faultLine } from '$lib/project/fault.ts';
import { numberFrom } from '../../numbers.ts';
import { plain } from '../stands.ts';

export const stance: Stance = {
  side: 'right',
  mark: vec3(430, 300, 0),
  toe: radians(30),
  tilt: radians(10),
  lift: 20,
};
export const speaker = { width: 165, depth: 205 };
export const board = { name: 'MDF 3 mm', thickness: 3.05, density: 880 };
export const thick = { name: 'ply 12 mm', thickness: 11.8, density: 680 };
export const thin = { name: '1/8 in ply', thickness: 3.175, density: 680 };
export const printer = printerOf({ printer: null });
export const shop: Shop = {
  stocks: [board, thick, thin].map((one) => ({ ...one, taper: 0 })),
  printer,
  tools: COMMON_SHOP,
};

export interface Case {
  readonly settings?: Partial<StandSettings>;
  readonly stance?: Partial<Stance>;
  readonly speaker?: Partial<typeof speaker>;
  readonly board?: typeof board;
  readonly shop?: Shop;
}

const outcomeOf = (one: Case) =>
  buildStand(
    { ...stance, ...one.stance },
    { ...speaker, ...one.speaker },
    { ...plain, ...one.settings },
    one.board ?? board,
    one.shop ?? shop,
  );

const MILLIMETRES = { length: 'mm', fraction: null } as const;

/** What a stand's steps say, in mm, with plain spaces. */
export const wordsOf = ({ steps }: StandBody): string =>
  steps.map((step) => sentenceText(step, MILLIMETRES).replaceAll('\u202f', ' ')).join(' ');

/** The stand of a case that must have one. */
export function bodyOf(one: Case): StandBody {
  const outcome = outcomeOf(one);
  if (!outcome.ok) throw new Error(outcome.faults.map(faultLine).join('; '));
  return outcome.value;
}

/** The stand of a case that has one; the property skips the others. */
export function soundBody(one: Case): StandBody {
  const outcome = outcomeOf(one);
  fc.pre(outcome.ok);
  return outcome.value;
}

/** Kind and lines of the faults of a case that must have some. */
export function refusalOf(one: Case): { kind: string; lines: string[] } {
  const outcome = outcomeOf(one);
  if (outcome.ok) throw new Error('expected a refusal');
  return { kind: outcome.kind, lines: outcome.faults.map(faultLine) };
}

/** Any pose and cabinet that most stands can be built for. */
export const anyPlace = fc.record({
  stance: fc.record({
    side: fc.constantFrom('left' as const, 'right' as const),
    toe: numberFrom(-0.2, 0.9),
    tilt: fc.oneof(numberFrom(-0.4, 0.4), fc.constant(0)),
    lift: numberFrom(15, 60),
  }),
  speaker: fc.record({ width: numberFrom(80, 260), depth: numberFrom(100, 320) }),
});

/** Points of a contour, arcs in small steps, as another polygon library takes them. */
export const ring = (contour: Contour, steps = 64): { x: number; y: number }[] =>
  edgesOf(contour).flatMap((edge) =>
    Array.from({ length: edge.kind === 'arc' ? steps : 1 }, (_, i) => {
      const [x, y] = pointAt(edge, i / steps);
      return { x, y };
    }),
  );

export const pathsOf = (contours: readonly (Path | Circle)[]): Path[] =>
  contours.filter((contour) => contour.kind === 'path');

export const corners = (path: Path): Point[] => path.vertices.map(({ x, y }): Point => [x, y]);
