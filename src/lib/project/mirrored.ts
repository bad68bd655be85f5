import type { Layout } from './project.ts';

/** Whether the two marks mirror each other in the middle of the desk. */
export const isMirrored = ({ left, right }: Layout['placement']): boolean => left.x === -right.x && left.y === right.y;
