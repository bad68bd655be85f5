import { moved } from '$lib/geometry/moved.ts';
import { extentOf } from '$lib/geometry/extent.ts';
import { momentsOf } from '$lib/geometry/moments.ts';
import type { Circle, Path } from '$lib/geometry/contour.ts';
import type { Point } from '$lib/geometry/point.ts';
import type { Printer } from '$lib/project/project.ts';
import { asFineMm, asTyped, bare, needs, onPage, says, type Words } from '$lib/project/sentence.ts';
import type { Printed } from '$lib/stand/body.ts';
import type { BuildRequest } from '$lib/stand/buildRequest.ts';
import { massOf } from '$lib/stand/pointMasses.ts';
import { built, noAnswer, type Outcome } from '$lib/stand/outcome.ts';
import { pocketCentres } from '$lib/stand/pockets.ts';
import { shapeOf, type Shape } from '$lib/stand/shape.ts';
import type { Layer } from '$lib/stand/layer.ts';
import { shownDown, shownUp, SLACK } from '$lib/stand/slack.ts';
import { step, type Step } from '$lib/stand/step.ts';
import { onBed, planOf, type Plan } from './bed.ts';
import { dovetailCut, type DovetailCut } from './dovetail.ts';

export interface CoreRequest {
  readonly request: BuildRequest;
  readonly layer: Layer;
  /** The layer without windows; the lowest one where they differ. */
  readonly shape: Shape;
  /** Of the core, mm. */
  readonly thickness: number;
  /** The outsides at the bottom and the top of the core as it lies on the bed: one and the same for a prism. */
  readonly outsides: Outsides;
  /** What the halves of a core that leans are told apart by: the side of the stand that lies on the bed, the other one. */
  readonly sides: readonly [string, string];
}

/** Two outsides with the same edges, one over the other. */
export type Outsides = readonly [Path, Path];

export interface Core {
  readonly bodies: readonly Printed[];
  /** mm² of the windows through it. */
  readonly open: number;
  /** mm³ of the whole core, the middle of it in the profile's axes, and how far that lies over half its thickness. */
  readonly volume: number;
  readonly centre: Point;
  readonly rise: number;
  readonly notes: readonly Words[];
  /** How its halves are joined, as a step; null for a core in one piece. */
  readonly key: Step | null;
}

/** Left under a pocket, mm: common practice, no source. */
const FLOOR = 1;

/**
 * The core as bodies to print, lying on their side: in one piece where the bed takes it, else in two keyed halves, split
 * across its length by a dovetail or across its width, keyed by the rods. No answer where no half fits the bed.
 */
export function printedCore(coreRequest: CoreRequest): Outcome<Core> {
  const { request, shape, thickness } = coreRequest;
  const { printer } = request.shop;
  const [size, highest] = largest(coreRequest.outsides);
  const low = thickness <= printer.bed.z + SLACK;
  if (low && onBed(size, printer)) return wholeCore(coreRequest);
  if (onBed(size, printer) && thickness / 2 <= printer.bed.z + SLACK) return halvedAcross(coreRequest);
  const cut = low ? dovetailCut(coreRequest.layer, shape.outside, highest, request.settings, printer) : null;
  if (cut) return dovetailed(coreRequest, cut);
  return tooLarge(size, thickness, printer);
}

/** The higher of two outsides and what it takes of the bed: they have their bases in common. */
function largest([floor, roof]: Outsides): readonly [Plan, Path] {
  const [low, high] = [planOf(floor), planOf(roof)];
  return high.y > low.y ? [high, roof] : [low, floor];
}

/** Between the two outsides of a core, at a share of the way up. */
function outsideAt([floor, roof]: Outsides, share: number): Path {
  if (floor === roof) return floor;
  const vertices = floor.vertices.map(({ x, y, bulge }, i) => {
    const above = roof.vertices[i]?.y ?? y;
    return { x, y: y + (above - y) * share, bulge };
  });
  return { ...floor, vertices };
}

function tooLarge({ x, y }: Plan, thickness: number, { bed }: Printer): Outcome<never> {
  const have = says`${bare(asTyped(bed.x))} × ${bare(asTyped(bed.y))} × ${asTyped(bed.z)}`;
  const need = says`${bare(shownUp(x))} × ${bare(shownUp(y))} × ${shownUp(thickness)}`;
  return noAnswer(
    '/stand/build',
    needs(
      'a printer’s bed that takes the core or keyed halves of it',
      says`${have} for a core of ${need}`,
      'use a larger bed, thicker cheeks or another build',
    ),
  );
}

type Openings = Pick<Shape, 'windows' | 'notes'> & { readonly pockets: readonly Circle[] };

/** Windows and pockets of the core; a stretch for a cut between halves stays free of them. */
function openings(
  { request, layer, shape, thickness }: CoreRequest,
  cut: { from: number; to: number } | null,
): Outcome<Openings> {
  const { settings } = request;
  const { pockets } = settings;
  if (pockets && pockets.depth > thickness - FLOOR + SLACK) {
    return noAnswer(
      '/stand/pockets/depth',
      needs(
        says`pockets of at most ${shownDown(thickness - FLOOR)} in a core of ${shownDown(thickness)}`,
        asTyped(pockets.depth),
      ),
    );
  }
  const kept = cut ? [cut] : [];
  const found = pocketCentres(layer, shape.outside, settings, kept);
  if (!found.ok) return found;
  const bored = found.value;
  const stretches = bored.map(({ centre: [u], radius }) => ({ from: u - radius, to: u + radius }));
  const relieved = shapeOf(layer, settings, { relieved: true, kept: [...kept, ...stretches] });
  if (!relieved.ok) return relieved;
  const { windows, notes } = relieved.value;
  return built({ windows, pockets: bored, notes: notes });
}

/** A body with its holes, as high as the core or a part of it, and pockets in its upper face. */
function bodyOf(
  name: string,
  quantity: number,
  { printer }: BuildRequest['shop'],
  [floor, roof]: Outsides,
  holes: readonly (Path | Circle)[],
  thickness: number,
  pockets: readonly Circle[],
  depth: number,
): Printed {
  const { left, bottom } = extentOf(floor, ...holes);
  const placed = <Kind extends Path | Circle>(one: Kind): Kind => moved(one, [-left, -bottom]);
  const plain = [floor, ...holes].map(placed);
  const bored = pockets.map(placed);
  const leans = floor !== roof;
  // Its edges rise evenly, so the mean of both ends is that of all sections.
  const area = leans ? (momentsOf(floor, holes).area + momentsOf(roof, holes).area) / 2 : momentsOf(floor, holes).area;
  const levels =
    pockets.length === 0
      ? [{ height: thickness, contours: plain }]
      : [
          { height: thickness - depth, contours: plain },
          { height: depth, contours: [...plain, ...bored] },
        ];
  const volume = area * thickness - depth * bored.reduce((sum, { radius }) => sum + Math.PI * radius ** 2, 0);
  return {
    name,
    quantity,
    levels,
    ...(leans ? { roof: placed(roof) } : {}),
    size: { ...largest([floor, roof])[0], z: thickness },
    volume,
    mass: massOf(volume, printer.density) * printer.fill,
  };
}

const openOf = (windows: readonly Path[]): number => windows.reduce((sum, one) => sum + momentsOf(one).area, 0);

function wholeCore(coreRequest: CoreRequest): Outcome<Core> {
  const opened = openings(coreRequest, null);
  if (!opened.ok) return opened;
  const { request, shape, thickness, outsides } = coreRequest;
  const { windows, pockets, notes } = opened.value;
  const depth = request.settings.pockets?.depth ?? 0;
  const holes = [...shape.holes, ...windows];
  const body = bodyOf('core', 1, request.shop, outsides, holes, thickness, pockets, depth);
  return built({
    bodies: [body],
    open: openOf(windows),
    volume: body.volume,
    ...middleOf(coreRequest, windows),
    notes,
    key: null,
  });
}

/**
 * Pockets count as filled with what they hold. What a section holds, and its moments, change with its height at most
 * squared, so three sections tell the whole (Simpson's rule).
 */
function middleOf(
  { shape, outsides, thickness }: CoreRequest,
  windows: readonly Path[],
): Pick<Core, 'centre' | 'rise'> {
  const holes = [...shape.holes, ...windows];
  if (outsides[0] === outsides[1]) return { centre: momentsOf(outsides[0], holes).centre, rise: 0 };
  const shares = [
    { share: 0, weight: 1 },
    { share: 1 / 2, weight: 4 },
    { share: 1, weight: 1 },
  ].map(({ share, weight }) => {
    const { area, centre } = momentsOf(outsideAt(outsides, share), holes);
    return { weighed: weight * area, centre, rise: (share - 1 / 2) * thickness };
  });
  const whole = shares.reduce((sum, { weighed }) => sum + weighed, 0);
  const mean = (of: (one: (typeof shares)[number]) => number): number =>
    shares.reduce((sum, one) => sum + one.weighed * of(one), 0) / whole;
  return { centre: [mean(({ centre }) => centre[0]), mean(({ centre }) => centre[1])], rise: mean(({ rise }) => rise) };
}

function halvedAcross(coreRequest: CoreRequest): Outcome<Core> {
  const { request, shape, thickness } = coreRequest;
  const { settings } = request;
  if (!settings.rods) {
    const rods = says`rods to key the halves of a core that is ${shownDown(thickness)} wide on a bed ${asTyped(request.shop.printer.bed.z)} high`;
    return noAnswer('/stand/rods', onPage(says`expected ${rods}, got none`, says`Needs ${rods}`));
  }
  if (settings.pockets && settings.pockets.depth > thickness / 2 - FLOOR + SLACK) {
    return noAnswer(
      '/stand/pockets/depth',
      needs(
        says`pockets of at most ${shownDown(thickness / 2 - FLOOR)} in half a core of ${shownDown(thickness)}`,
        asTyped(settings.pockets.depth),
      ),
    );
  }
  const opened = openings(coreRequest, null);
  if (!opened.ok) return opened;
  const { windows, pockets, notes } = opened.value;
  const holes = [...shape.holes, ...windows];
  const depth = settings.pockets?.depth ?? 0;
  const half = (name: string, outsides: Outsides, bored: readonly Circle[]) =>
    bodyOf(name, 1, request.shop, outsides, holes, thickness / 2, bored, bored.length > 0 ? depth : 0);
  const bodies = halves(coreRequest, pockets, half);
  const volume = bodies.reduce((sum, body) => sum + body.volume * body.quantity, 0);
  const key = step(
    { act: 'glue', parts: bodies.map(({ name }) => name) },
    'Glue the core’s two halves, {wide} wide each, face to face, lined up on waxed rods; draw the rods out again before the glue sets.',
    { wide: asFineMm(thickness / 2) },
  );
  return built({ bodies, open: openOf(windows), volume, ...middleOf(coreRequest, windows), notes, key });
}

/** Two alike, or one with pockets; of a core that leans a lower and a higher one, as it lies on the bed. */
function halves(
  { outsides, sides }: CoreRequest,
  pockets: readonly Circle[],
  half: (name: string, outsides: Outsides, bored: readonly Circle[]) => Printed,
): readonly Printed[] {
  const [floor, roof] = outsides;
  if (floor !== roof) {
    const between = outsideAt(outsides, 1 / 2);
    const [lower, upper] = sides;
    return [half(`core-half-${lower}`, [floor, between], []), half(`core-half-${upper}`, [between, roof], pockets)];
  }
  const plain = half('core-half', outsides, []);
  return pockets.length === 0 ? [{ ...plain, quantity: 2 }] : [plain, half('core-half-pockets', outsides, pockets)];
}

function dovetailed(coreRequest: CoreRequest, cut: DovetailCut): Outcome<Core> {
  const opened = openings(coreRequest, cut.stretch);
  if (!opened.ok) return opened;
  const { request, shape, thickness } = coreRequest;
  const { windows, pockets, notes } = opened.value;
  const depth = request.settings.pockets?.depth ?? 0;
  const inFront = (contour: Path | Circle): boolean => extentOf(contour).right <= cut.at;
  const holes = [...shape.holes, ...windows];
  const [floor, roof] = coreRequest.outsides;
  const below = cut.halvesOf(floor);
  const above = floor === roof ? below : cut.halvesOf(roof);
  const half = (name: string, outsides: Outsides, front: boolean): Printed => {
    const bored = pockets.filter((pocket) => inFront(pocket) === front);
    return bodyOf(
      name,
      1,
      request.shop,
      outsides,
      holes.filter((hole) => inFront(hole) === front),
      thickness,
      bored,
      bored.length > 0 ? depth : 0,
    );
  };
  const bodies = [
    half('core-front', [below.front, above.front], true),
    half('core-rear', [below.rear, above.rear], false),
  ];
  const key = step(
    { act: 'glue', parts: bodies.map(({ name }) => name) },
    'Glue the core’s two halves together on a flat board, sliding the dovetail into its socket, which has {play} of clearance all round.',
    { play: asFineMm(cut.clearance) },
  );
  const volume = bodies.reduce((sum, body) => sum + body.volume, 0);
  return built({ bodies, open: openOf(windows), volume, ...middleOf(coreRequest, windows), notes, key });
}
