import { printer as fields } from './fields/machines.ts';
import { startOf } from './fields/starts.ts';
import type { Printer, Project } from './project.ts';

const COMMON: Printer = startOf(fields);

/** The project's printer, or a common one where it names none. */
export const printerOf = ({ printer }: Pick<Project, 'printer'>): Printer => printer ?? COMMON;
