import { onGrid, type KeptCurve } from '$lib/proof/heard/onGrid.ts';
import type { Commas } from './columns.ts';
import { readResponse, type ReadFile, type ResponseReading } from './responseText.ts';

/** What was read of a file, and the curve that a project keeps of it. */
export interface KeptFile extends Omit<ReadFile, 'curve'> {
  readonly kept: KeptCurve;
  /** Different frequencies that were measured, the lowest and the highest, Hz. */
  readonly rows: number;
  readonly lowest: number;
  readonly highest: number;
  /** Whether a phase stands beside the levels. It is not kept: nothing here asks for it. */
  readonly phased: boolean;
}

/** As of a reading; of what is read, no more than a project keeps. */
export type KeptReading = ({ readonly kind: 'kept' } & KeptFile) | Exclude<ResponseReading, { readonly kind: 'read' }>;

/** A measured response of a text file as a project keeps it: see `readResponse`. Refused, too, where it covers less than an octave. */
export function* readKept(bytes: Uint8Array, commas: Commas | null): Generator<number, KeptReading> {
  const reading = yield* readResponse(bytes, commas);
  if (reading.kind !== 'read') return reading;
  const { curve, separator, decimalCommas, columns, passedOver, atZero, repeated, sorted } = reading;
  const [lowest, highest] = [curve.frequencies[0] ?? 0, curve.frequencies.at(-1) ?? 0];
  const kept = onGrid(curve);
  if (!kept) {
    return {
      kind: 'refused',
      message: `expected an octave or more between 20 Hz and 20 kHz, got ${Number(lowest.toPrecision(4))} to ${Number(highest.toPrecision(4))} Hz`,
    };
  }
  const found = { separator, decimalCommas, columns, passedOver, atZero, repeated, sorted };
  return { kind: 'kept', ...found, kept, rows: curve.frequencies.length, lowest, highest, phased: curve.phases !== null };
} // prettier-ignore
