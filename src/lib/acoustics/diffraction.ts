import { along, cross, distance, dot, scale, subtract, type Vec3 } from '$lib/geometry/point.ts';
import type { Transfer } from './branches.ts';
import { heightOver, onOneSide, type Plate } from './plate.ts';

/** A wave that a plate's edge or corner sends to the head. */
export interface EdgeWave {
  /** Where it comes from: the point of an edge on the shortest way by it, or a corner. */
  readonly point: Vec3;
  /** Source to head by that point, mm. */
  readonly length: number;
  /** θ of `alongDescent` at its nodes, per mm: the wave is e^(−jk·length) times that, a source of strength 1 is e^(−jkr)/r. */
  readonly theta: Transfer;
}

/** What a thin rigid plate does to the sound of a small source: added to the direct sound, all there is. */
export interface Scattering {
  /** Whether the mirror image's sound counts: source and head are on one side, and its way meets the plate. */
  readonly mirrors: boolean;
  /** Whether the direct sound is taken away: its way meets the plate. */
  readonly blocks: boolean;
  readonly edges: readonly EdgeWave[];
}

/**
 * The sound that bends round the edges of a plate, each edge as long as it is, to first order (what has bent once does not
 * bend again). Every edge adds, for the direct sound and for that of the mirror image, R away each,
 *
 *     ∓1/2π · ∫ e^(−jkL)/L · c/(q² + c²) dq,   L² = R₁² + 4rr′q²,   R² = R₁² − 4rr′c²
 *
 * from end to end, with r and r′ the distances from its line, R₁ the shortest way by that line and L that by a point of it.
 * The line integral of U. P. Svensson, R. I. Fred and J. Vanderkooy, JASA 106(5), 1999; for an endless edge it is
 * Macdonald's exact field of a half plane. Without e^(−jkL) it has the antiderivative θ = atan(qR/cL)/R, used in
 * `alongDescent`, here from the shortest way by each edge and from its ends. Mirror image, direct sound and edges each
 * jump where the way of one meets an edge; their sum does not.
 *
 * @param kept the share of the pressure that the plate sends back, 0…1; what it takes away from what passes is all of it.
 * @param detours the nodes of `alongDescent`, mm.
 */
export function scatteringOf(plate: Plate, source: Vec3, head: Vec3, kept: number, detours: Float64Array): Scattering {
  const { corners, normal, convex } = plate;
  const [over, other] = [heightOver(plate, source), heightOver(plate, head)];
  const together = onOneSide(plate, source, head);
  const heights = { source: Math.abs(over), head: together ? Math.abs(other) : -Math.abs(other) };
  const ways: Ways = {
    direct: { distance: distance(source, head), share: together ? kept : 1 },
    mirrored: { distance: distance(source, along(head, normal, -2 * other)), share: kept },
  };
  const atCorners = corners.map((point) => ({
    point,
    length: distance(source, point) + distance(point, head),
    theta: nothingAt(detours),
  }));
  const edges: EdgeWave[] = [];
  const isBeside = besideLine(corners, normal, source, head);
  let inside = convex;
  corners.forEach((start, index) => {
    const next = (index + 1) % corners.length;
    const [first, last] = [atCorners[index], atCorners[next]];
    if (!first || !last) return;
    const reach = distance(start, last.point);
    const direction = scale(subtract(last.point, start), 1 / reach);
    const inward = cross(normal, direction);
    const seen = (point: Vec3, height: number): Seen => {
      const from = subtract(point, start);
      return { along: dot(from, direction), in: dot(from, inward), height };
    };
    const edge = edgeOf(seen(source, heights.source), seen(head, heights.head), ways);
    if (convex) inside &&= edge.inside;
    else if (isBeside(start) !== isBeside(last.point) && isBeside(last.point) === edge.inside) inside = !inside;
    const within = edge.apex > 0 && edge.apex < reach;
    if (within) {
      const wave = { point: along(start, direction, edge.apex), length: edge.shortest, theta: nothingAt(detours) };
      addFrom(wave, 0, 2, edge, detours);
      edges.push(wave);
    }
    // From an end outwards, away from the nearer one: what the edge lacks of an endless one.
    addFrom(first, squareAt(edge, 0), edge.apex <= 0 ? 1 : -1, edge, detours);
    addFrom(last, squareAt(edge, reach), edge.apex >= reach ? 1 : -1, edge, detours);
  });
  return {
    mirrors: inside && together,
    blocks: inside && !together,
    edges: [...edges, ...atCorners],
  };
}

/**
 * On which side of a line in a plate's plane a point lies: the line runs along the first edge through the place where the way
 * by the plane meets it. The edges that cross it tell whether that place is on the plate (even and odd, as seen one way).
 */
function besideLine(
  [first, second]: readonly Vec3[],
  normal: Vec3,
  source: Vec3,
  head: Vec3,
): (point: Vec3) => boolean {
  if (!first || !second) return () => false;
  const across = cross(normal, subtract(second, first));
  const height = (point: Vec3): number => Math.abs(dot(subtract(point, first), normal));
  const [over, other] = [height(source), height(head)];
  const at = (point: Vec3): number => dot(subtract(point, first), across);
  const share = over + other === 0 ? 0.5 : over / (over + other);
  const met = at(source) + (at(head) - at(source)) * share;
  return (point) => at(point) > met;
}

const nothingAt = (detours: Float64Array): Transfer => ({
  re: new Float64Array(detours.length),
  im: new Float64Array(detours.length),
});

/** A way from the source to the head or to its mirror image: how long, mm, and by how much its edge waves count. */
interface Way {
  readonly distance: number;
  readonly share: number;
}
type Ways = Readonly<Record<'direct' | 'mirrored', Way>>;

/** A point as seen from an edge: along it from its start, into the plate, and over it on the source's side; mm. */
interface Seen {
  readonly along: number;
  readonly in: number;
  readonly height: number;
}

interface Edge {
  readonly source: Seen;
  readonly head: Seen;
  /** Distances of source and head from its line, r and r′. */
  readonly fromSource: number;
  readonly fromHead: number;
  /** The shortest way by its line, R₁, and where along it that passes. */
  readonly shortest: number;
  readonly apex: number;
  /** Whether the way that meets the plate's plane does so on the plate's side of the line. */
  readonly inside: boolean;
  /** For each of the ways: its length R, √(R₁² − R²) = 2c√(rr′), and the factor of its integral, sign and all. */
  readonly bounds: readonly { readonly distance: number; readonly root: number; readonly factor: number }[];
}

/** A head in the very place of the source's mirror image: the integral's limit, to a millionth of a millionth. */
const LEAST_WAY = 1e-6;

function edgeOf(source: Seen, head: Seen, { direct, mirrored }: Ways): Edge {
  const fromSource = Math.hypot(source.in, source.height);
  const fromHead = Math.hypot(head.in, head.height);
  const both = fromSource + fromHead;
  const share = both === 0 ? 0.5 : fromSource / both;
  const across = source.in * Math.abs(head.height) + source.height * head.in;
  // With both in the plane the way meets it anywhere; as the bounce does, this takes the middle.
  const inside = (source.height === 0 && head.height === 0 ? source.in + head.in : across) >= 0;
  const together = head.height >= 0;
  const shortest = Math.hypot(both, source.along - head.along);
  const rootFor = (height: number): number => {
    const aligned = source.in * head.in + source.height * height;
    const size = fromSource * fromHead;
    if (aligned >= 0) return Math.sqrt(2 * (size + aligned));
    // The same without the difference of two nearly equal numbers.
    return Math.abs(source.in * height - source.height * head.in) * Math.sqrt(2 / (size - aligned));
  };
  const bound = (way: Way, height: number, meets: boolean, sign: 1 | -1) => ({
    distance: Math.max(way.distance, LEAST_WAY * shortest),
    root: rootFor(height),
    factor: (sign * (meets && inside ? -1 : 1) * way.share) / (2 * Math.PI),
  });
  return {
    source,
    head,
    fromSource,
    fromHead,
    shortest,
    apex: source.along + (head.along - source.along) * share,
    inside,
    bounds: [bound(direct, head.height, !together, -1), bound(mirrored, -head.height, together, 1)],
  };
}

/** L² − R₁² of the way by a place along the edge, mm². */
function squareAt({ source, head, fromSource, fromHead }: Edge, place: number): number {
  const [back, on] = [place - source.along, place - head.along];
  const product = Math.hypot(fromSource, back) * Math.hypot(fromHead, on);
  const aligned = fromSource * fromHead - back * on;
  if (aligned <= 0) return 2 * (product - aligned);
  return (2 * (fromSource * on + fromHead * back) ** 2) / (product + aligned);
}

/**
 * Adds θ of an edge from a place on it outwards, `times` over: `square` is L² − R₁² at that place, and L there is the
 * wave's own length. With L − js for L both sides of the antiderivative are complex; its argument qR/cL stays in the right
 * half plane, where the arc tangent is smooth.
 */
function addFrom(wave: EdgeWave, square: number, times: number, { bounds }: Edge, detours: Float64Array): void {
  const { length, theta } = wave;
  const terms = bounds.map(({ distance: straight, root, factor }) => ({
    straight,
    root,
    weight: (times * factor) / straight,
    start: Math.atan2(Math.sqrt(square) * straight, root * length),
  }));
  for (let i = 0; i < detours.length; i++) {
    const s = detours[i] ?? 0;
    // √(L² − R₁²), whose imaginary part is under 0.
    const x = square - s * s;
    const y = -2 * length * s;
    const size = Math.sqrt(x * x + y * y);
    const large = Math.sqrt((size + Math.abs(x)) / 2);
    const small = y / (2 * large);
    const re = x >= 0 ? large : -small;
    const im = x >= 0 ? small : -large;
    let [sumRe, sumIm] = [theta.re[i] ?? 0, theta.im[i] ?? 0];
    for (const { straight, root, weight, start } of terms) {
      // atan(N/D) = ½·arg z − ½j·ln|z| with z = (D + jN)/(D − jN).
      const n = re * straight;
      const m = im * straight;
      const d = root * length;
      const e = -root * s;
      const turn = Math.abs(Math.atan2(2 * (n * d + m * e), d * d + e * e - n * n - m * m));
      const growth = (4 * (n * e - m * d)) / ((d + m) * (d + m) + (e - n) * (e - n));
      sumRe += weight * (turn / 2 - start);
      sumIm -= (weight / 4) * Math.log1p(growth);
    }
    theta.re[i] = sumRe;
    theta.im[i] = sumIm;
  }
}
