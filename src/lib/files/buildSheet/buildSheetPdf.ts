import { papers, type PaperName } from '$lib/files/paper.ts';
import type { Primitive } from '$lib/drawing/primitive.ts';
import type { PdfPage } from '$lib/files/pdf/content.ts';
import { pdfFile } from '$lib/files/pdf/pdf.ts';
import { words } from '$lib/files/pdf/words.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import type { Block, Section } from './block.ts';
import { buildSheet } from './buildSheet.ts';
import { gap, laidHeading, laidList, laidTable, laidText, laidTitle, type Laid } from './laid.ts';
import { laidCode } from './laidCode.ts';
import { laidDrawing } from './laidDrawing.ts';
import type { Subject } from './subject.ts';

/** Left, to file it by, and elsewhere, mm. */
const FILING = 20;
const BORDER = 12;
/** Room for the line at the head of each page. */
const HEAD = 8;
/** A drawing takes at most this share of a page’s height, so that two find room on one. */
const DRAWING_SHARE = 0.5;

/**
 * The build sheet as a PDF, on A4 or Letter. The same project always gives the same bytes.
 *
 * @throws RangeError when a length is not finite.
 */
export function buildSheetPdf(subject: Subject, paper: PaperName): Uint8Array {
  const { plan } = subject;
  const title = `${plan.project.title}, ${plan.layout.name}: build sheet`;
  return pdfFile(title, pagesOf(title, buildSheet(subject), plan.project.display, paper));
}

/** Everything in its order, a page filled before the next is begun. */
export function pagesOf(
  title: string,
  sections: readonly Section[],
  display: LengthDisplay,
  paper: PaperName,
): readonly PdfPage[] {
  const { width, height } = papers[paper];
  const room = { width: width - FILING - BORDER, height: height - 2 * BORDER - HEAD };
  const laid = sections.flatMap(({ title: name, blocks }) => [
    laidTitle(name, room.width),
    ...blocks.flatMap((block) => laidBlock(block, room, display)),
    gap(4),
  ]);
  const pages = paged(laid, room.height);
  return pages.map((items, i) => ({
    width,
    height,
    within: null,
    primitives: [...head(title, `${i + 1} / ${pages.length}`, width), ...set(items, BORDER + HEAD)],
  }));
}

function laidBlock(block: Block, room: { width: number; height: number }, display: LengthDisplay): readonly Laid[] {
  switch (block.kind) {
    case 'text':
      return [...laidText(block.text, room.width), gap(1.5)];
    case 'list': {
      const title = block.title === null ? [] : [laidHeading(block.title, room.width)];
      return [...title, ...laidList(block, room.width), gap(1.5)];
    }
    case 'table': {
      const note = block.note === null ? [] : laidText(block.note, room.width);
      return [laidHeading(block.title, room.width), ...laidTable(block, room.width), gap(1), ...note, gap(2)];
    }
    case 'drawing':
      return laidDrawing(block, room.width, room.height * DRAWING_SHARE, display);
    case 'code':
      return laidCode(block, room.width);
  }
}

/** What must stay together goes to the next page together; a gap begins none. */
function paged(laid: readonly Laid[], room: number): readonly (readonly Laid[])[] {
  const pages: Laid[][] = [[]];
  let used = 0;
  for (let i = 0; i < laid.length;) {
    const end = laid.findIndex((one, at) => at >= i && !one.keep);
    const run = laid.slice(i, end < 0 ? laid.length : end + 1);
    const height = run.reduce((sum, one) => sum + one.height, 0);
    i += run.length;
    const isFull = used > 0 && used + height > room;
    if (isFull && run.every(({ drawn }) => drawn(0, 0).length === 0)) continue;
    if (isFull) {
      pages.push([]);
      used = 0;
    }
    pages.at(-1)?.push(...run);
    used += height;
  }
  return pages;
}

function set(items: readonly Laid[], top: number): Primitive[] {
  let y = top;
  return items.flatMap(({ height, drawn }) => {
    const at = y;
    y += height;
    return [...drawn(FILING, at)];
  });
}

const head = (title: string, number: string, width: number): Primitive[] => [
  words(title, { height: 2.2, x: FILING, y: BORDER + 2.2, anchor: 'start' }, width - FILING - BORDER - 25),
  words(number, { height: 2.2, x: width - BORDER, y: BORDER + 2.2, anchor: 'end' }, 20),
];
