/** What every user of a pointer must read before it is on. */
export const SIGHT_CARE: readonly string[] = [
  'Pointer: only one that is marked laser class 1 or 2 (IEC 60825-1); its maker’s instructions go before this.',
  'Nobody sits in the chair while it is on; nobody looks into the beam or along it.',
  'Cover screens and other shiny things, or turn them off the line. A string shows the same without any light.',
];
