import type { Point } from '$lib/geometry/point.ts';
import type { StandSettings } from '$lib/project/project.ts';
import { SLACK } from './slack.ts';
import type { Slope } from './slope.ts';

/** What of the settings shapes the ends. */
type Ends = Pick<StandSettings, 'ends' | 'stop'>;

/**
 * The finished side view in (u, z), counter-clockwise from the base's front corner: base, rear end, top, front end. A
 * stop stands square to the slope on the low end, from the wood's top to its height over the cabinet's bottom. No two
 * neighbouring edges lie in one line.
 */
export function outlineOf(slope: Slope, settings: Ends, depth: number): readonly Point[] {
  const [front, rear] = [slope.at(slope.front, slope.top), slope.at(slope.rear, slope.top)];
  const feet = [footOf(front, slope, settings), footOf(rear, slope, settings)];
  const { stop } = settings;
  if (!stop) return [...feet, rear, front];
  return slope.low === 'rear'
    ? [...feet, ...stopChain(slope, settings, stop.height, depth, depth + stop.thickness, slope.rear).reverse(), front]
    : [...feet, rear, ...stopChain(slope, settings, stop.height, 0, -stop.thickness, slope.front)];
}

/** Where the end under a corner of the top meets the base: plumb below it, or square to the slope. */
function footOf([u, z]: Point, slope: Slope, settings: Ends): Point {
  return [settings.ends === 'plumb' ? u : u - (z - slope.base) * Math.tan(slope.tilt), slope.base];
}

/** The top's low end, outwards: the stop's two faces, then what lies beyond it. `s` of its faces and of the end. */
function stopChain(slope: Slope, settings: Ends, height: number, inner: number, outer: number, end: number): Point[] {
  const faces = [slope.at(inner, slope.top), slope.at(inner, height), slope.at(outer, height)];
  if (Math.abs(end - outer) > SLACK) return [...faces, slope.at(outer, slope.top), slope.at(end, slope.top)];
  const lean = (height - slope.top) * Math.abs(Math.sin(slope.tilt));
  return settings.ends === 'square' || lean <= SLACK ? faces : [...faces, slope.at(end, slope.top)];
}
