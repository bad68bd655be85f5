import { vec3, type Vec3 } from '$lib/geometry/point.ts';
import type { Desk, Layout, Listener, Posture, SideName } from '$lib/project/project.ts';

/** The middle between the ears in the desk frame, mm: the desk's top is z = 0, its front edge y = 0. */
export const headOf = (listener: Listener, desk: Desk): Vec3 =>
  vec3(listener.offset, -listener.setback, listener.earHeight - desk.height);

/** The two ears, half a head width to each side of the head. The listener looks along +y. */
export function earsOf(listener: Listener, desk: Desk): Record<SideName, Vec3> {
  const head = headOf(listener, desk);
  const half = listener.headWidth / 2;
  return { left: vec3(head.x - half, head.y, head.z), right: vec3(head.x + half, head.y, head.z) };
}

/** The middle between the ears in another posture: as far sideways as in the seat. */
export const headIn = ({ setback, earHeight }: Posture, listener: Listener, desk: Desk): Vec3 =>
  headOf({ ...listener, setback, earHeight }, desk);

/** The postures that the aim serves beside the seat; none where it is for the seat alone. */
export function posturesServed({
  aim: { over },
  listener: { postures },
}: Pick<Layout, 'aim' | 'listener'>): readonly Posture[] {
  if (over === null) return [];
  const names = over.postures;
  return names === 'all' ? postures : postures.filter(({ name }) => names.includes(name));
}
