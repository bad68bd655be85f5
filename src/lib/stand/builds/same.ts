/** Sections whose heights differ by less than this, mm, are cut as one: files are written to 0.001 mm. */
export const SAME = 1e-6;
