import { asMm, type Quantity } from '$lib/project/sentence.ts';

/**
 * What two lengths may differ by and still count as equal, mm. Sums of lengths of a few metres carry rounding of about
 * 1e-12 mm; nothing on a bench can tell a millionth of a millimetre.
 */
export const SLACK = 1e-9;

/** A length for a sentence, to 0.1 mm, never more than it is: for what was found or what would still fit. */
export const shownDown = (length: number): Quantity => asMm(Math.floor((length + SLACK) * 10) / 10);

/** A length for a sentence, to 0.1 mm, never less than it is: for what is missing, so that following it is enough. */
export const shownUp = (length: number): Quantity => asMm(Math.ceil((length - SLACK) * 10) / 10);
