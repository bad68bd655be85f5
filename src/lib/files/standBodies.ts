import type { Plan } from '$lib/plan/document.ts';
import { extruded, type Body } from '$lib/workshop/body.ts';

/**
 * Each stand that differs as one body, to print in one piece instead of gluing it up: the outline of its layers, rod holes
 * and all, as wide as the stand. Lies on its side, as a printer would build it.
 */
export function standBodies({ stand, parts }: Plan): Body[] {
  const bodyOf = (side: 'left' | 'right', name: string): Body[] => {
    const part = parts.find((one) => one.name === stand[side].part);
    return part ? [extruded(name, part, stand[side].width)] : [];
  };
  const alike = stand.left.part === stand.right.part && stand.left.width === stand.right.width;
  return alike ? bodyOf('left', 'stand') : [...bodyOf('left', 'stand left'), ...bodyOf('right', 'stand right')];
}
