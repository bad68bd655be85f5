import { failure, pointerTo, success, type Fault, type Result } from '$lib/project/fault.ts';
import { got } from '$lib/project/got.ts';
import { aimMeasures } from './aimMeasures.ts';
import type { Measure } from './measure.ts';
import { soundMeasures } from './soundMeasures.ts';
import { standMeasures } from './standMeasures.ts';

/** Everything that a layout is measured by. */
export const measures: readonly Measure[] = [...aimMeasures, ...standMeasures, ...soundMeasures];

/** What says something of a layout by itself: all but how far it has been moved. */
export const comparedBy: readonly Measure[] = measures.filter(({ name }) => name !== 'move');

const byName: ReadonlyMap<string, Measure> = new Map(measures.map((measure) => [measure.name, measure]));

/** The measure of a name, or the fault that lists the known ones. @param pointer Where the name stands. */
export function measureNamed(name: unknown, pointer: string): Result<Measure> {
  const found = typeof name === 'string' ? byName.get(name) : undefined;
  if (found) return success(found);
  const known = measures.map((measure) => measure.name).join(', ');
  return failure({ pointer, message: `expected the name of a measure (${known}), got ${got(name)}` });
}

/** The measures of a list of names, each once, or the faults of those that are none. @param at Steps to the list. */
export function measuresNamed(names: readonly unknown[], ...at: readonly (string | number)[]): Result<Measure[]> {
  const faults: Fault[] = [];
  const found = new Set<Measure>();
  names.forEach((name, index) => {
    const measure = measureNamed(name, pointerTo(...at, index));
    if (measure.ok) found.add(measure.value);
    else faults.push(...measure.faults);
  });
  return faults.length > 0 ? { ok: false, faults } : success([...found]);
}
