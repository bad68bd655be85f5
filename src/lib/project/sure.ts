import { sure } from './fields/sure.ts';
import { startOf } from './fields/starts.ts';

/**
 * How sure a measured value is, mm (degrees for the rake), where nobody says. One value for the whole project, for the same
 * hand measures everywhere with the same tape.
 */
export const byTape = startOf(sure);

export type SureKey = keyof typeof byTape;

/** The span of every measured value: the project's `sure`. */
export type Sure = Readonly<Record<SureKey, number>>;
