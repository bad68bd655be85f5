import { overlapConvex } from '$lib/geometry/clipConvex.ts';
import { vec3, type Point } from '$lib/geometry/point.ts';
import { asTyped, needs, onPage, says } from '$lib/project/sentence.ts';
import type { BuildRequest } from './buildRequest.ts';
import { coverOf } from './cover.ts';
import type { StandSurface, Section } from './standSurface.ts';
import { built, noAnswer, unsound, type Outcome } from './outcome.ts';
import { shownDown, shownUp, SLACK } from './slack.ts';

/**
 * The surface of a stand whose base is parallel to the desk's edges and whose top is the cabinet's bottom: a compound
 * wedge, slopes tan θ · sin ψ across and tan θ · cos ψ along for a tilt θ and a toe ψ. As deep as the turned stand would be
 * in plan, its margins added, and centred under the middle of the cabinet's bottom; all its ends are plumb.
 *
 * No answer with a stop or square ends, which need a turned base; unsound where a corner is thinner than the least edge.
 *
 * @param width Finished width, mm.
 */
export function squareSurface(
  { stance, speaker, settings }: Pick<BuildRequest, 'stance' | 'speaker' | 'settings'>,
  width: number,
): Outcome<StandSurface> {
  if (settings.stop) {
    return noAnswer(
      '/stand/stop',
      onPage(
        'expected no stop on a base square to the desk, got one: the cabinet lies across it',
        'A base square to the desk takes no stop: the cabinet lies across it',
      ),
    );
  }
  if (settings.ends === 'square') {
    return noAnswer('/stand/ends', needs('plumb ends for a base square to the desk', 'ends square to the slope'));
  }
  const { tilt, toe, lift, mark, side } = stance;
  const [sin, cos, tan] = [Math.sin(toe), Math.cos(toe), Math.tan(tilt)];
  const cover = coverOf(settings);
  const run = speaker.depth * Math.cos(tilt);
  /** Of the cabinet's bottom, outboard and back from the mark. */
  const middle = { across: (run / 2) * sin, u: (run / 2) * cos };
  const ends = { from: middle.u - run / 2 - settings.frontMargin, to: middle.u + run / 2 + settings.rearMargin };
  const wood = { from: ends.from + cover.front, to: ends.to - cover.rear };
  const slope = { across: 0 - tan * sin, along: 0 - tan * cos };
  const middleHeight = lift + Math.abs(Math.sin(tilt)) * (speaker.depth / 2);
  /** Square to the slope, pad and veneer stand on the wood: plumb, they are higher. */
  const plumb = 1 / Math.cos(tilt);
  const bottom = (across: number, u: number): number =>
    middleHeight + slope.across * across + slope.along * (u - middle.u);
  const finished = (across: number, u: number): number => bottom(across, u) - settings.pad * plumb;
  const top = (across: number, u: number): number => finished(across, u) - cover.top * plumb;
  const base = settings.feet + cover.base;

  if (wood.to - wood.from <= SLACK) {
    return noAnswer(
      '/stand/veneer',
      needs(
        'a veneer that leaves wood between the ends',
        says`${asTyped(settings.veneer)} on each of ${shownDown(ends.to - ends.from)}`,
      ),
    );
  }
  const half = width / 2 - cover.side;
  const thinnest = Math.min(...[-half, half].flatMap((a) => [top(a, wood.from), top(a, wood.to)])) - base;
  const missing = settings.minimumEdge - thinnest;
  if (missing > SLACK) {
    return unsound(
      '/stand/lift',
      needs(
        says`a thin corner of at least ${asTyped(settings.minimumEdge)} with the base square to the desk`,
        shownDown(thinnest),
        says`raise the lift by ${shownUp(missing)}`,
      ),
    );
  }

  const sectionAt = (across: number): Section => {
    const slice: Point[] = [
      [wood.from, base],
      [wood.to, base],
      [wood.to, top(across, wood.to)],
      [wood.from, top(across, wood.from)],
    ];
    return { slice, core: slice };
  };
  const mirror = side === 'right' ? 1 : -1;
  const place = (across: number, u: number): Point => [mark.x + mirror * (middle.across + across), mark.y + u];
  const rectangle = (wide: number): Point[] => {
    const [right, left] = [(mirror * wide) / 2, (-mirror * wide) / 2];
    return [place(right, ends.from), place(right, ends.to), place(left, ends.to), place(left, ends.from)];
  };
  const cabinet = (): Point[] => {
    const corner = (across: number, back: number): Point =>
      place(across * cos + back * sin - middle.across, back * cos - across * sin);
    const [right, left] = [(mirror * speaker.width) / 2, (-mirror * speaker.width) / 2];
    return [corner(right, 0), corner(right, run), corner(left, run), corner(left, 0)];
  };
  return built({
    outline: [
      [ends.from, settings.feet],
      [ends.to, settings.feet],
      [ends.to, finished(0, ends.to)],
      [ends.from, finished(0, ends.from)],
    ],
    frontHeight: finished(0, ends.from) - settings.feet,
    rearHeight: finished(0, ends.to) - settings.feet,
    layer: (from, to) => sectionAt(slope.across > 0 ? to : from),
    section: sectionAt,
    base,
    top,
    slope,
    footprint: rectangle,
    contact: (wide) => overlapConvex(cabinet(), rectangle(wide)),
    at: (across, u, z) => {
      const [x, y] = place(across, u);
      return vec3(x, y, mark.z + z);
    },
  });
}
