/** A sheet of paper in true millimetres. */
export interface PaperSheet {
  readonly svg: string;
  /** mm. */
  readonly width: number;
  readonly height: number;
}

/** Marks the page while a sheet of its own is printed in its stead; `PrintDialog` holds the style. */
const PRINTING = 'data-prints-sheet';

/** Prints one sheet at its true size instead of the page, and gives the page back. */
export async function printPaper({ svg, width, height }: PaperSheet): Promise<void> {
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  const image = new Image();
  image.alt = '';
  image.className = 'printed-sheet';
  image.src = address;
  image.style.inlineSize = `${width}mm`;
  image.style.blockSize = `${height}mm`;
  const size = new CSSStyleSheet();
  size.replaceSync(`@page { size: ${width}mm ${height}mm; margin: 0 }`);
  await image.decode();
  const root = document.documentElement;
  const restore = (): void => {
    root.removeAttribute(PRINTING);
    image.remove();
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== size);
    URL.revokeObjectURL(address);
  };
  window.addEventListener('afterprint', restore, { once: true });
  document.body.append(image);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, size];
  root.setAttribute(PRINTING, '');
  window.print();
}
