import type { AngleDimension, Dimension } from './view.ts';

/** A dimension from rim to rim: its number carries the sign of a diameter (ISO 129-1). */
interface DiameterDimension extends Dimension {
  readonly sign: '⌀';
}

export const diameter = (dimension: Dimension): DiameterDimension => ({ ...dimension, sign: '⌀' });

/** The sign before a dimension's number; empty for most. */
export const signOf = (dimension: Dimension | AngleDimension): string =>
  'sign' in dimension && dimension.sign === '⌀' ? '⌀' : '';
