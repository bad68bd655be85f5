import { strToU8, zlibSync } from 'fflate';
import { HATCH_GAP } from '$lib/drawing/viewPrimitives.ts';
import { checksum } from '$lib/files/checksum.ts';
import { fixed } from '$lib/files/number.ts';
import { PRINTED } from '$lib/files/scaledView.ts';
import { FONT, HATCH, hex, pageContent, POINT, type PdfPage } from './content.ts';
import { joined } from './joined.ts';
import { CAPITAL, EM, FONT_NAME, fontTable, type Letter } from './pageFont.ts';
import { fontSubset } from './subset.ts';

/** A fixed time with a fixed zone, so that the same pages always give the same bytes. */
const MADE = "D:19800101000000+00'00'";

/**
 * The pages as a PDF document (ISO 32000-1, version 1.4): text that can be searched and copied, in the page's own font, of which
 * it holds the letters that it needs. It asks readers not to scale when printing; not all of them listen.
 *
 * @throws RangeError naming the title when a length is not finite, or where there are no pages.
 */
export function pdfFile(title: string, pages: readonly PdfPage[]): Uint8Array {
  if (pages.length === 0) throw new RangeError(`${title}: expected pages, got none`);
  const letters: Letter[] = [];
  const numbers = new Map<Letter, number>();
  const glyphOf = (letter: Letter): number => {
    const known = numbers.get(letter);
    if (known !== undefined) return known;
    numbers.set(letter, letters.push(letter));
    return letters.length;
  };
  const contents = pages.map((page) => pageContent(page, title, glyphOf));
  const objects: (string | Uint8Array)[] = [];
  const add = (object: string | Uint8Array): string => `${objects.push(object)} 0 R`;
  const pattern = add(hatching());
  const font = add(fontObject(letters, add));
  const parent = `${objects.length + 2 * pages.length + 1} 0 R`;
  const kids = pages.map(({ width, height }, i) => {
    const content = add(stream('', strToU8(contents[i] ?? '')));
    const box = `[0 0 ${points(width)} ${points(height)}]`;
    const resources = `<< /Font << ${FONT} ${font} >> /Pattern << ${HATCH} ${pattern} >> >>`;
    return add(`<< /Type /Page /Parent ${parent} /MediaBox ${box} /Resources ${resources} /Contents ${content} >>`);
  });
  add(`<< /Type /Pages /Kids [${kids.join(' ')}] /Count ${kids.length} >>`);
  const root = add(`<< /Type /Catalog /Pages ${parent} /ViewerPreferences << /PrintScaling /None >> >>`);
  const info = add(`<< /Title ${textString(title)} /Creator (Wedgewright) /CreationDate (${MADE}) >>`);
  return written(objects, `/Root ${root} /Info ${info}`);
}

const points = (mm: number): string => fixed(mm / POINT, 'page', 6);

/** A line a gap apart in the middle of its tile, turned by an eighth. */
function hatching(): Uint8Array {
  const [gap, turned] = [HATCH_GAP, Math.SQRT1_2 / POINT];
  const cell = `/PatternType 1 /PaintType 1 /TilingType 1 /BBox [0 0 ${gap} ${gap}] /XStep ${gap} /YStep ${gap} `;
  const matrix = `/Matrix [${turned} ${turned} ${-turned} ${turned} 0 0] /Resources << >>`;
  return stream(`/Type /Pattern ${cell}${matrix}`, strToU8(`${PRINTED.narrow} w ${gap / 2} 0 m ${gap / 2} ${gap} l S`));
}

/** The font with its letters: glyphs are named by their numbers, and a table says which text each stands for. */
function fontObject(letters: readonly Letter[], add: (object: string | Uint8Array) => string): string {
  const share = (units: number): string => fixed((1000 * units) / EM, FONT_NAME);
  const name = `/${tagOf(letters)}+${FONT_NAME}`;
  const hhea = new DataView(fontTable('hhea').buffer, fontTable('hhea').byteOffset);
  const [ascent, descent] = [share(hhea.getInt16(4)), share(hhea.getInt16(6))];
  const subset = fontSubset(letters);
  const file = add(stream(`/Length1 ${subset.length}`, subset));
  const descriptor = add(
    `<< /Type /FontDescriptor /FontName ${name} /Flags 4 /FontBBox [-500 ${descent} 1500 ${ascent}] /ItalicAngle 0 /Ascent ${ascent} /Descent ${descent} /CapHeight ${1000 * CAPITAL} /StemV 85 /FontFile2 ${file} >>`,
  );
  const widths = `/W [1 [${letters.map(({ advance }) => share(advance)).join(' ')}]]`;
  const system = '/CIDSystemInfo << /Registry (Adobe) /Ordering (Identity) /Supplement 0 >>';
  const descendant = add(
    `<< /Type /Font /Subtype /CIDFontType2 /BaseFont ${name} ${system} /FontDescriptor ${descriptor} ${widths} /CIDToGIDMap /Identity >>`,
  );
  const unicode = add(stream('', strToU8(toUnicode(letters))));
  return `<< /Type /Font /Subtype /Type0 /BaseFont ${name} /Encoding /Identity-H /DescendantFonts [${descendant}] /ToUnicode ${unicode} >>`;
}

/** Six capitals that tell one subset from another. */
function tagOf(letters: readonly Letter[]): string {
  let rest = checksum(strToU8(letters.map(({ text }) => text).join('\n')));
  return Array.from({ length: 6 }, () => {
    const capital = String.fromCharCode(65 + (rest % 26));
    rest = Math.floor(rest / 26);
    return capital;
  }).join('');
}

/** At most so many lines stand in one block of the table. */
const BLOCK = 100;

function toUnicode(letters: readonly Letter[]): string {
  const lines = letters.map(({ text }, i) => `<${hex(i + 1)}> <${utf16(found(text))}>`);
  const blocks = Array.from({ length: Math.ceil(lines.length / BLOCK) }, (_, i) => {
    const block = lines.slice(i * BLOCK, (i + 1) * BLOCK);
    return [`${block.length} beginbfchar`, ...block, 'endbfchar'];
  });
  return [
    '/CIDInit /ProcSet findresource begin 12 dict begin begincmap',
    '/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def',
    '/CMapName /Adobe-Identity-UCS def /CMapType 2 def',
    '1 begincodespacerange <0000> <FFFF> endcodespacerange',
    ...blocks.flat(),
    'endcmap CMapName currentdict /CMap defineresource pop end end',
  ].join('\n');
}

/** What somebody types who looks for it: spaces of all widths are spaces; what is no text is a replacement character. */
const found = (letter: string): string => letter.replace(/\p{Zs}/gu, ' ').replace(/[\p{Cs}\p{Cc}]/gu, '\ufffd');

const utf16 = (text: string): string => Array.from({ length: text.length }, (_, i) => hex(text.charCodeAt(i))).join('');

/** A text for readers to show: plain where it is ASCII, else in UTF-16. */
const textString = (text: string): string =>
  /^[\x20-\x7e]*$/.test(text) ? `(${text.replace(/[\\()]/g, '\\$&')})` : `<FEFF${utf16(found(text))}>`;

function stream(dictionary: string, bytes: Uint8Array): Uint8Array {
  const packed = zlibSync(bytes, { level: 9 });
  const head = `<< ${dictionary}${dictionary === '' ? '' : ' '}/Length ${packed.length} /Filter /FlateDecode >>\nstream\n`;
  return joined([strToU8(head), packed, strToU8('\nendstream')]);
}

/** Header, objects numbered from 1, the table of their places, and the trailer with an id made of all that. */
function written(objects: readonly (string | Uint8Array)[], trailer: string): Uint8Array {
  // Four bytes over 127 tell readers that it is no text.
  const parts = [new Uint8Array([...strToU8('%PDF-1.4\n%'), 0xe2, 0xe3, 0xcf, 0xd3, 0x0a])];
  const places: number[] = [];
  let at = parts[0]?.length ?? 0;
  objects.forEach((object, i) => {
    const body = typeof object === 'string' ? strToU8(object) : object;
    const part = joined([strToU8(`${i + 1} 0 obj\n`), body, strToU8('\nendobj\n')]);
    places.push(at);
    at += part.length;
    parts.push(part);
  });
  const id = checksum(joined(parts)).toString(16).padStart(8, '0').repeat(4);
  const table = places.map((place) => `${String(place).padStart(10, '0')} 00000 n \n`).join('');
  const size = objects.length + 1;
  return joined([
    ...parts,
    strToU8(`xref\n0 ${size}\n0000000000 65535 f \n${table}`),
    strToU8(`trailer\n<< /Size ${size} ${trailer} /ID [<${id}> <${id}>] >>\nstartxref\n${at}\n%%EOF\n`),
  ]);
}
