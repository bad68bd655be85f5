import type { View } from '$lib/drawing/view.ts';

/** A build sheet as data: page and PDF show the same. All text is plain text. */
export interface Section {
  /** Unique in the sheet; no spaces. */
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly Block[];
}

export type Block = TextBlock | ListBlock | TableBlock | DrawingBlock | CodeBlock;

export interface TextBlock {
  readonly kind: 'text';
  readonly text: string;
}

export interface ListBlock {
  readonly kind: 'list';
  /** Whether the order matters. */
  readonly numbered: boolean;
  readonly title: string | null;
  readonly items: readonly string[];
}

export interface TableBlock {
  readonly kind: 'table';
  readonly title: string;
  readonly columns: readonly string[];
  /** As many cells as columns. The first is text, the others are figures. */
  readonly rows: readonly (readonly string[])[];
  /** What has to be said beside the numbers. */
  readonly note: string | null;
}

export interface DrawingBlock {
  readonly kind: 'drawing';
  readonly title: string;
  readonly view: View;
  /** What has to be said under it. */
  readonly note: string | null;
}

/** A QR code, rows of modules from its upper left, dark ones true, with the white round it. */
export interface CodeBlock {
  readonly kind: 'code';
  readonly title: string;
  /** What a reader reads off it. */
  readonly says: string;
  readonly modules: readonly (readonly boolean[])[];
}

export const text = (words: string): TextBlock => ({ kind: 'text', text: words });

export const list = (items: readonly string[], title: string | null = null): ListBlock => ({
  kind: 'list',
  numbered: false,
  title,
  items,
});

export const steps = (items: readonly string[], title: string | null = null): ListBlock => ({
  kind: 'list',
  numbered: true,
  title,
  items,
});

export const table = (
  title: string,
  columns: readonly string[],
  rows: readonly (readonly string[])[],
  note: string | null = null,
): TableBlock => ({ kind: 'table', title, columns, rows, note });

export const drawing = (view: View, note: string | null = null): DrawingBlock => ({
  kind: 'drawing',
  title: view.name,
  view,
  note,
});

export const code = (title: string, says: string, modules: CodeBlock['modules']): CodeBlock => ({
  kind: 'code',
  title,
  says,
  modules,
});
