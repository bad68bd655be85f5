import { choice, part, text } from './kinds.ts';
import { printer } from './machines.ts';

/** Of the project as a whole. */
export const general = {
  title: text('Project', 'stands in the title block'),
  /** Length and fraction of the file's `display` as one choice. */
  display: choice('Lengths in', 'on the page and in print; files stay in mm', [
    ['mm', 'millimetres'],
    ['in', 'inches, as decimals'],
    ['in 8', 'inches, to 1/8'],
    ['in 16', 'inches, to 1/16'],
    ['in 32', 'inches, to 1/32'],
    ['in 64', 'inches, to 1/64'],
  ]),
  printer: part('Custom printer', 'off: a common bed, clearance and filament', printer),
};
