import { vec3 } from '$lib/geometry/point.ts';
import { uprightBox, type Solid } from '$lib/geometry/solid.ts';
import type { Monitor } from '$lib/project/project.ts';

/** A face without thickness has no volume to lie in; it is treated as a plate this thick, mm. */
const THINNEST_MONITOR = 0.1;

/** The monitor as a box: its front face at y, its depth behind that. */
export const monitorBody = ({ x, y, bottom, width, height, depth }: Monitor): Solid =>
  uprightBox(vec3(x - width / 2, y, bottom), vec3(width, Math.max(depth, THINNEST_MONITOR), height));
