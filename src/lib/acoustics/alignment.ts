import type { Crossover, Driver } from '$lib/project/project.ts';

type Role = Driver['role'];
type Alignment = Crossover['alignment'];

/** Where a role sits in the band: the driver with the larger number takes the higher frequencies. */
const band: Record<Role, number> = { tweeter: 3, 'full-range': 2, midrange: 1, woofer: 0 };

/**
 * How far the high-pass branch lags the low-pass one at the crossover frequency, radians. In quadrature: of a third-order
 * Butterworth pair, s³/((s + 1)(s² + s + 1)) and 1/((s + 1)(s² + s + 1)), both drivers in the same polarity. Their ratio
 * is s³, at s = j that is −j: equal in size, the high-pass a quarter turn behind.
 */
const highPassLag: Record<Alignment, number> = { 'in-phase': 0, quadrature: Math.PI / 2 };

/**
 * How far the filter alone makes the branch of `driver` lag that of `other` at the crossover frequency, radians: 0 for
 * in-phase; in quadrature +π/2 when `driver` is the high-pass and −π/2 when it is the low-pass. The high-pass is the
 * driver whose role takes the higher frequencies (tweeter over full-range over midrange over woofer); of two alike, the
 * one that the crossover names first.
 */
export function filterLag(crossover: Crossover, driver: Driver, other: Driver): number {
  const lag = highPassLag[crossover.alignment];
  return isHighPass(crossover, driver, other) ? lag : -lag;
}

/** Whether `driver` takes the frequencies above the crossover; see `filterLag` for how that is known. */
export function isHighPass(crossover: Crossover, driver: Driver, other: Driver): boolean {
  const higher = band[driver.role] - band[other.role];
  return higher === 0 ? driver.name === crossover.between[0] : higher > 0;
}
