import { pointerTo, type Fault } from '$lib/project/fault.ts';
import type { Nested } from './nest.ts';

/**
 * What a project wants that its sheets are not: a fault for each stock that is short, and for each locked part that lies
 * elsewhere. `at`: pointer of the layout's arrangement.
 */
export const unmetBy = ({ short, released }: Nested, at: string): readonly Fault[] => [
  ...short,
  ...released.map(({ index, message }) => ({ pointer: at + pointerTo('locked', index), message })),
];
