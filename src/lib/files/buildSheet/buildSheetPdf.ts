import { papers, type PaperName } from '$lib/files/paper.ts';
import { words, type Stroke, type StrokePage } from '$lib/files/stroke.ts';
import { strokePdf } from '$lib/files/strokePdf.ts';
import type { Block, Section } from './block.ts';
import { buildSheet } from './buildSheet.ts';
import { gap, laidHeading, laidList, laidTable, laidText, laidTitle, type Laid } from './laid.ts';
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
export async function buildSheetPdf(subject: Subject, paper: PaperName): Promise<Uint8Array> {
  const title = `${subject.project.title}, ${subject.layout.name}: build sheet`;
  return strokePdf(title, pagesOf(title, buildSheet(subject), subject, paper));
}

/** Everything in its order, a page filled before the next is begun. */
export function pagesOf(
  title: string,
  sections: readonly Section[],
  { project }: Pick<Subject, 'project'>,
  paper: PaperName,
): readonly StrokePage[] {
  const { width, height } = papers[paper];
  const room = { width: width - FILING - BORDER, height: height - 2 * BORDER - HEAD };
  const laid = sections.flatMap(({ title: name, blocks }) => [
    laidTitle(name, room.width),
    ...blocks.flatMap((block) => laidBlock(block, room, project.display, height)),
    gap(4),
  ]);
  const pages = paged(laid, room.height);
  return pages.map((items, i) => ({
    width,
    height,
    within: null,
    strokes: [...head(title, `${i + 1} / ${pages.length}`, width, height), ...set(items, height - BORDER - HEAD)],
  }));
}

function laidBlock(
  block: Block,
  room: { width: number; height: number },
  display: Subject['project']['display'],
  page: number,
): readonly Laid[] {
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
      return laidDrawing(block, room.width, room.height * DRAWING_SHARE, display, page);
  }
}

/** What must stay together goes to the next page together. */
function paged(laid: readonly Laid[], room: number): readonly (readonly Laid[])[] {
  const pages: Laid[][] = [[]];
  let used = 0;
  for (let i = 0; i < laid.length;) {
    const end = laid.findIndex((one, at) => at >= i && !one.keep);
    const run = laid.slice(i, end < 0 ? laid.length : end + 1);
    const height = run.reduce((sum, one) => sum + one.height, 0);
    if (used > 0 && used + height > room) {
      pages.push([]);
      used = 0;
    }
    pages.at(-1)?.push(...run);
    used += height;
    i += run.length;
  }
  return pages;
}

function set(items: readonly Laid[], top: number): Stroke[] {
  let y = top;
  return items.flatMap(({ height, strokes }) => {
    const drawn = strokes(FILING, y);
    y -= height;
    return [...drawn];
  });
}

const head = (title: string, number: string, width: number, height: number): Stroke[] => [
  ...words(title, { height: 2.2, x: FILING, y: height - BORDER - 2.2, anchor: 'start' }, width - FILING - BORDER - 25),
  ...words(number, { height: 2.2, x: width - BORDER, y: height - BORDER - 2.2, anchor: 'end' }, 20),
];
