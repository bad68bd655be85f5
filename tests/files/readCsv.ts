/** Cells of a CSV text as the grammar of RFC 4180, section 2, reads them; another separator reads it as a reader set to that. */
export function readCsv(text: string, separator = ','): string[][] {
  const rows: string[][] = [[]];
  let at = 0;
  while (at < text.length) {
    let cell = '';
    if (text[at] === '"') {
      at += 1;
      for (; at < text.length; at += 1) {
        if (text[at] !== '"') cell += text[at];
        else if (text[at + 1] === '"') {
          cell += '"';
          at += 1;
        } else break;
      }
      at += 1;
    }
    for (; at < text.length && text[at] !== separator && !text.startsWith('\r\n', at); at += 1) cell += text[at];
    rows.at(-1)?.push(cell);
    if (text.startsWith('\r\n', at)) {
      at += 2;
      if (at < text.length) rows.push([]);
    } else at += 1;
  }
  return rows;
}
