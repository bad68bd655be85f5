import type { Printer, Project } from './project.ts';

/**
 * A bed of 220 × 220 × 250 mm and 0.2 mm round a key are common practice, no source. PLA weighs 1240 kg/m³ (Scientific
 * Reports 2022, s41598-022-22520-6). A print counts as solid until its fill is set: an upper bound of its mass.
 */
const COMMON: Printer = {
  bed: { x: 220, y: 220, z: 250 },
  clearance: 0.2,
  density: 1240,
  fill: 1,
  rate: null,
  price: null,
};

/** The project's printer, or a common one where it names none. */
export const printerOf = ({ printer }: Pick<Project, 'printer'>): Printer => printer ?? COMMON;
