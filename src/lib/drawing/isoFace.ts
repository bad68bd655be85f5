import type { Vec3 } from '$lib/geometry/point.ts';
import { isometric } from './isometric.ts';
import type { Outline } from './view.ts';

/** A face of a stand, and a line on one, as isometric shows them. */

export const isoFace = (id: string, corners: readonly Vec3[]): Outline => ({
  kind: 'outline',
  id,
  subject: 'stand',
  pen: 'wide',
  points: corners.map(isometric.flat),
  closed: true,
  filled: true,
});

export const isoLine = (id: string, ends: readonly Vec3[]): Outline => ({
  kind: 'outline',
  id,
  subject: 'stand',
  pen: 'narrow',
  points: ends.map(isometric.flat),
  closed: false,
  filled: false,
});
