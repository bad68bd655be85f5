import { vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { Desk, Layout, Listener, Posture, SideName } from '$lib/project/project.ts';
import { ridesAlong, type Surfaced } from '$lib/project/surface.ts';

/** The middle between the ears in the desk frame, mm: the desk's top is z = 0, its front edge y = 0. */
export const headOf = (listener: Listener, desk: Pick<Desk, 'height'>): Vec3 =>
  vec3(listener.offset, -listener.setback, listener.earHeight - desk.height);

/** The two ears, half a head width to each side of the head. The listener looks along +y. */
export function earsOf(listener: Listener, desk: Desk): Record<SideName, Vec3> {
  const head = headOf(listener, desk);
  const half = listener.headWidth / 2;
  return { left: vec3(head.x - half, head.y, head.z), right: vec3(head.x + half, head.y, head.z) };
}

/** The layout as it is in a posture, the only one then: the head there, the desk at its height, and with it the risers on it. */
export function sceneOf<Of extends Pick<Layout, 'desk' | 'listener' | 'surfaces'>>(layout: Of, posture: Posture): Of {
  const { desk, listener, surfaces } = layout;
  const height = posture.deskHeight ?? desk.height;
  const risen = height - desk.height;
  return {
    ...layout,
    desk: { ...desk, height },
    listener: {
      ...listener,
      setback: posture.setback,
      earHeight: posture.earHeight,
      offset: listener.offset + posture.offset,
      postures: [],
    },
    surfaces: surfaces.map((one) => (one.on === 'desk' ? { ...one, height: one.height + risen } : one)),
  };
}

/**
 * The middle between the ears in another posture as one loudspeaker meets it, which counts as standing still: where it rides
 * along with a desk that then has another height, the head is as much lower.
 */
export function headIn(posture: Posture, layout: Surfaced & Pick<Layout, 'listener'>, side: SideName): Vec3 {
  const { listener, desk } = layout;
  const height = ridesAlong(layout, side) ? (posture.deskHeight ?? desk.height) : desk.height;
  return vec3(listener.offset + posture.offset, -posture.setback, posture.earHeight - height);
}

/** The postures that the aim serves beside the seat; none where it is for the seat alone. */
export function posturesServed({
  aim: { over },
  listener: { postures },
}: Pick<Layout, 'aim' | 'listener'>): readonly Posture[] {
  if (over === null) return [];
  const names = over.postures;
  return names === 'all' ? postures : postures.filter(({ name }) => names.includes(name));
}
