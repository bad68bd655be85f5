import { readKept } from '$lib/files/response/readKept.ts';
import { toTheEnd } from '$lib/project/toTheEnd.ts';
import { medianTime, seeded, type Measured } from './measure.ts';

const LINES = 100_000;

/** A measured response as programs write one: a head, and rows of frequency, level and phase with tabs between. */
function file(): Uint8Array {
  const next = seeded(20260315);
  const rows = Array.from({ length: LINES }, (_, i) => {
    const f = 20 + (i * 19_980) / LINES;
    return `${f.toFixed(4)}\t${(80 + 12 * next()).toFixed(3)}\t${(360 * next() - 180).toFixed(2)}`;
  });
  return new TextEncoder().encode(`* measured at the seat\n* Hz\tdB\tdegrees\n${rows.join('\n')}\n`);
}

/** A file of 100,000 lines to the curve that a project keeps. */
export function benchResponse(): Measured {
  const bytes = file();
  let sum = 0;
  const run = (): void => {
    const reading = toTheEnd(readKept(bytes, null));
    if (reading.kind !== 'kept') throw new Error('a benchmark file is not read');
    sum = reading.kept.levels.reduce((so, level) => so + level, reading.kept.from);
  };
  const median = medianTime(run, 9, 1);
  return { name: 'a measured response of 100,000 lines', median, limit: 300, checksum: sum.toFixed(6) };
}
