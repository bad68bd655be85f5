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

/** A table of both sides that are alike to the last digit shown has one column for each of them. */
export function eachAsOne(table: Table): Table {
  const { columns, groups } = table;
  const isAlike = groups.every(({ rows }) =>
    rows.every(({ cells: [first, ...rest] }) => rest.every((one) => one === first)),
  );
  if (columns.length < 2 || !isAlike) return table;
  return {
    ...table,
    columns: ['Each'],
    groups: groups.map((group) => ({
      ...group,
      rows: group.rows.map((row) => ({ ...row, cells: row.cells.slice(0, 1) })),
    })),
  };
}
