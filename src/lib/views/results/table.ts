/** A table as the page shows it: words and figures only. */
export interface Table {
  readonly title: string;
  /** Headings of the columns after the first. */
  readonly columns: readonly string[];
  readonly groups: readonly Group[];
  /** What has to be said beside the numbers. */
  readonly note?: string;
}

/** Rows that belong together, under a name where they need one. */
export interface Group {
  readonly name?: string;
  readonly rows: readonly Row[];
}

export interface Row {
  readonly name: string;
  /** Whether nothing was worked out for it that could be shown. */
  readonly unknown?: boolean;
  readonly cells: readonly string[];
}
