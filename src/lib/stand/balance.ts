import { add, along, vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { Pose } from '$lib/layout/pose.ts';
import type { Speaker, StandSettings } from '$lib/project/project.ts';
import type { StandBody } from './build.ts';
import { contactEdgesOf } from './contactEdges.ts';
import { gripUnderCabinet, gripUnderStand, type Grip } from './grip.ts';
import { slideOf, type Slide } from './sliding.ts';
import type { Span } from './span.ts';
import { edgeNames, edgesOf, marginsOf, type EdgeMargin, type EdgeName } from './tipping.ts';
import { cabinetCentre, together, type Weight } from './weights.ts';
import { lowEnd, pushesOf, type Push } from './push.ts';
import { verdictOf, type Verdict } from './verdict.ts';

/**
 * How one loudspeaker stands: desk frame, mm, radians, kg and N. Without the cabinet's mass nobody knows where between
 * the cabinet's and the stand's centre of mass the joint one lies, so margins and angles come as spans over all masses,
 * and what needs the mass itself is null. Feet have no place in a project, so the base counts as carrying to its edges;
 * feet set inwards leave less.
 */
export interface Balance {
  readonly cabinet: Vec3;
  readonly wood: Weight;
  /** Both as one; null without the cabinet's mass. */
  readonly joint: Weight | null;
  /** Cabinet and stand as one on the desk. Between two edges a tilt has to be greater than over either of them. */
  readonly base: Readonly<Record<EdgeName, { readonly margin: Span; readonly angle: Span }>>;
  /** The cabinet alone on the stand's slope; a stop's help is left out. */
  readonly contact: Readonly<Record<EdgeName, EdgeMargin>>;
  /** The steepest plane on which nothing tips, whichever way it is turned; radians, negative when it tips on the level. */
  readonly survives: Span;
  /** What gives way first: over which edge, and whether the cabinet leaves its stand or takes it along. */
  readonly weakest: { readonly what: 'cabinet' | 'both'; readonly edge: EdgeName };
  /** Pushes at the cabinet's top edge; null without its mass. */
  readonly push: Readonly<Record<EdgeName, Push>> | null;
  readonly slide: Slide;
  /** What holds the cabinet on its stand, and the stand on the desk. */
  readonly grip: { readonly cabinet: Grip<'pad'>; readonly base: Grip<'feet'> };
  readonly verdict: Verdict;
}

/** What of a stand the balance depends on. */
export type Carrier = Pick<StandBody, 'centre' | 'mass' | 'footprint' | 'contact' | 'width'>;

export function balanceOf(speaker: Speaker, pose: Pose, stand: Carrier, settings: StandSettings): Balance {
  const cabinet = cabinetCentre(speaker, pose);
  // Rods, glue, veneer, feet and pad count as weightless.
  const wood = { centre: stand.centre, mass: stand.mass };
  const joint = speaker.mass === null ? null : together({ centre: cabinet, mass: speaker.mass }, wood);

  const baseEdges = edgesOf(
    stand.footprint.map(([x, y]) => vec3(x, y, pose.mark.z)),
    pose.side,
  );
  const one = marginsOf(joint?.centre ?? cabinet, baseEdges, UP);
  const other = joint ? one : marginsOf(wood.centre, baseEdges, UP);
  const base = {
    front: spans(one.front, other.front),
    rear: spans(one.rear, other.rear),
    inboard: spans(one.inboard, other.inboard),
    outboard: spans(one.outboard, other.outboard),
  };
  const whole = edgesOf(contactCorners(pose, speaker, Math.min(speaker.width, stand.width)), pose.side);
  const contactEdges = stand.contact ? contactEdgesOf(stand.contact, pose, whole, cabinet) : whole;
  const contact = marginsOf(cabinet, contactEdges, pose.bottomNormal);
  const { survives, weakest } = leastOf(base, contact);
  const grip = { cabinet: gripUnderCabinet(settings), base: gripUnderStand(settings) };
  const slide = slideOf(pose.tilt, grip.cabinet.friction, settings.stop !== null);
  const push = joint && pushesOf({ pose, speaker, joint, cabinet, baseEdges, contactEdges, slide });
  return {
    cabinet,
    wood,
    joint,
    base,
    contact,
    survives,
    weakest,
    push,
    slide,
    grip,
    verdict: verdictOf({
      tips: survives,
      weakest,
      slide,
      low: lowEnd(pose),
      base: grip.base.friction,
      push,
      mass: speaker.mass,
      together: joint && joint.mass,
    }),
  };
}

const UP = vec3(0, 0, 1);

/**
 * The joint centre lies on the straight line between the two; margin and height run along it evenly and the tangent of
 * the angle is their ratio, so neither has a turning point between the ends.
 */
const spans = (a: EdgeMargin, b: EdgeMargin) => ({ margin: span(a.margin, b.margin), angle: span(a.angle, b.angle) });

const span = (a: number, b: number): Span => ({ least: Math.min(a, b), most: Math.max(a, b) });

/** The corners of the cabinet's bottom that rest on a stand which carries it over its whole depth. */
function contactCorners({ mark, frontEdgeHeight, inboard, rearSlope, side }: Pose, speaker: Speaker, width: number) {
  const front = add(mark, vec3(0, 0, frontEdgeHeight));
  const half = ((side === 'right' ? -1 : 1) * width) / 2;
  const [right, left] = [along(front, inboard, half), along(front, inboard, -half)];
  return [right, along(right, rearSlope, speaker.depth), along(left, rearSlope, speaker.depth), left];
}

function leastOf(base: Balance['base'], contact: Balance['contact']): Pick<Balance, 'survives' | 'weakest'> {
  let [least, most] = [Infinity, Infinity];
  let weakest: Balance['weakest'] = { what: 'both', edge: 'front' };
  const gives = (what: 'both' | 'cabinet', edge: EdgeName, angle: Span): void => {
    if (angle.least < least) {
      least = angle.least;
      weakest = { what, edge };
    }
    most = Math.min(most, angle.most);
  };
  for (const edge of edgeNames) {
    const alone = contact[edge].angle;
    gives('both', edge, base[edge].angle);
    gives('cabinet', edge, { least: alone, most: alone });
  }
  return { survives: { least, most }, weakest };
}
