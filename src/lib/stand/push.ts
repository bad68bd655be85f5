import type { Vec3 } from '$lib/geometry/point.ts';
import type { Pose } from '$lib/layout/pose.ts';
import type { Speaker } from '$lib/project/project.ts';
import { slidingForce, type Slide } from './sliding.ts';
import { GRAVITY, tippingForce, type Edge, type EdgeName } from './tipping.ts';
import type { Weight } from './weights.ts';

/** What a horizontal push at the cabinet's top edge does, outwards over one edge. N. */
export interface Push {
  /** The least that tips the cabinet, with its stand or off it. */
  readonly tips: number;
  /** Whether it then leaves the stand behind. */
  readonly off: boolean;
  /** What starts it sliding on its stand, with the least friction; null when a stop or the slope keeps it from sliding that way. */
  readonly slides: number | null;
}

interface Pushed {
  readonly pose: Pose;
  readonly speaker: Pick<Speaker, 'mass'>;
  readonly joint: Weight;
  readonly cabinet: Vec3;
  readonly baseEdges: Readonly<Record<EdgeName, Edge>>;
  readonly contactEdges: Readonly<Record<EdgeName, Edge>>;
  readonly slide: Slide;
}

/** The end that the slope falls to. */
export const lowEnd = ({ tilt }: Pick<Pose, 'tilt'>): 'front' | 'rear' => (tilt >= 0 ? 'rear' : 'front');

export function pushesOf(pushed: Pushed): Record<EdgeName, Push> {
  const top = pushed.pose.cabinet.slice(4);
  const to = (edge: EdgeName) => pushOver(pushed, edge, top);
  return { front: to('front'), rear: to('rear'), inboard: to('inboard'), outboard: to('outboard') };
}

function pushOver(
  { pose, speaker, joint, cabinet, baseEdges, contactEdges, slide }: Pushed,
  edge: EdgeName,
  top: readonly Vec3[],
): Push {
  const mass = speaker.mass ?? 0;
  const whole = tippingForce(joint.centre, joint.mass, baseEdges[edge], top);
  const alone = tippingForce(cabinet, mass, contactEdges[edge], top);
  const low = lowEnd(pose);
  const way = edge === low ? 'down' : edge === 'front' || edge === 'rear' ? 'up' : 'across';
  return {
    tips: Math.min(whole, alone),
    off: alone < whole,
    slides: slidingForce(slide, mass * GRAVITY, way),
  };
}
