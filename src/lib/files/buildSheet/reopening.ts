import { encode } from 'uqr';
import { code, text, type Section } from './block.ts';
import type { Subject } from './subject.ts';

/** What a QR code holds at most: version 40 at level L, bytes (ISO/IEC 18004, table 7). */
const MOST_BYTES = 2953;

/** White modules round a QR code (ISO/IEC 18004: four). */
const QUIET = 4;

/** How to get from the paper back to the project: a code to scan, or what to do where there can be none. */
export const reopening = ({ link = null }: Subject): Section => ({
  id: 'reopening',
  title: 'To open this project again',
  blocks: link === null ? [text(FROM_FILE)] : fits(link) ? [scanned(link), text(FROM_LINK)] : [text(tooLong(link))],
});

const fits = (link: string): boolean => new TextEncoder().encode(link).length <= MOST_BYTES;

const scanned = (link: string) => code('Project as a QR code', link, encode(link, { ecc: 'L', border: QUIET }).data);

const FROM_FILE = 'Open the project file that was saved with this sheet.';
const FROM_LINK =
  'Scan the code to open this very project, in all its numbers. The project is part of the link: nothing is fetched from a server but Wedgewright itself. Save the project as a file as well.';
const tooLong = (link: string): string =>
  `This project is too long for a QR code: its link has ${link.length} characters, a code holds ${MOST_BYTES}. Save the project as a file and keep it with this sheet.`;
