import type { Crossover, Driver } from '$lib/project/project.ts';
import { isHighPass } from './alignment.ts';
import { frequencies } from './grid.ts';

/** A transfer function at each frequency of the grid, real and imaginary part. */
export interface Transfer {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** One filter that a driver gets. */
interface Filter {
  readonly frequency: number;
  readonly alignment: Crossover['alignment'];
  readonly high: boolean;
}

/**
 * What the crossover sends to each driver, in the drivers' order: the product of its filters. In phase they are
 * Linkwitz-Riley of fourth order (a Butterworth of second order, twice), in quadrature Butterworth of third order, both
 * drivers in the same polarity; each pair sums flat. A driver in no crossover gets everything.
 *
 * The same filter named twice (a tweeter crossed to two woofers alike) counts once, and drivers with the same filters
 * share the level between them, so that drivers in one place still sum flat. With three bands the lowest lacks the
 * turn in phase that the upper crossover gives the others, as in a crossover without all-pass filters: small when the
 * two frequencies are far apart.
 */
export function branches(drivers: readonly Driver[], crossovers: readonly Crossover[]): Transfer[] {
  const filters = drivers.map((driver) => filtersOf(driver, drivers, crossovers));
  const keys = filters.map((list) => list.map(keyOf).sort().join());
  return filters.map((list, index) => {
    const sharers = keys.filter((key) => key === keys[index]).length;
    return transferOf(list, 1 / sharers);
  });
}

const keyOf = ({ frequency, alignment, high }: Filter): string => `${frequency} ${alignment} ${high}`;

/** The filters that the crossovers give a driver, each once. */
export function filtersOf(driver: Driver, drivers: readonly Driver[], crossovers: readonly Crossover[]): Filter[] {
  const all = crossovers.flatMap((crossover) => {
    const { between, frequency, alignment } = crossover;
    if (!between.includes(driver.name)) return [];
    const other = drivers.find(({ name }) => name !== driver.name && between.includes(name));
    return other ? [{ frequency, alignment, high: isHighPass(crossover, driver, other) }] : [];
  });
  return all.filter((filter, i) => all.findIndex((one) => keyOf(one) === keyOf(filter)) === i);
}

function transferOf(filters: readonly Filter[], gain: number): Transfer {
  const re = new Float64Array(frequencies.length).fill(gain);
  const im = new Float64Array(frequencies.length);
  for (const filter of filters) apply(filter, re, im);
  return { re, im };
}

/**
 * Multiplies by sⁿ/D(s) or 1/D(s), s = jf/f₀. With u = f/f₀, D = (1 − u² + j√2·u)² in phase, whose high-pass has s⁴ = u⁴
 * over it; (1 + ju)(1 − u² + ju) in quadrature, with s³ = −ju³.
 */
function apply({ frequency, alignment, high }: Filter, re: Float64Array, im: Float64Array): void {
  for (let i = 0; i < re.length; i++) {
    const u = (frequencies[i] ?? 0) / frequency;
    const square = 1 - u * u;
    const inPhase = alignment === 'in-phase';
    const dRe = inPhase ? square * square - 2 * u * u : square - u * u;
    const dIm = inPhase ? 2 * Math.SQRT2 * u * square : u * (square + 1);
    const over = 1 / (dRe * dRe + dIm * dIm);
    // The conjugate of D over |D|², times the power of s on top.
    let [hRe, hIm] = [dRe * over, -dIm * over];
    if (high && inPhase) [hRe, hIm] = [hRe * u ** 4, hIm * u ** 4];
    else if (high) [hRe, hIm] = [hIm * u ** 3, -hRe * u ** 3];
    const [a, b] = [re[i] ?? 0, im[i] ?? 0];
    re[i] = a * hRe - b * hIm;
    im[i] = a * hIm + b * hRe;
  }
}
