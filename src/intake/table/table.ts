// The shape of a table of cells, wherever it came from.

export type TableRow = {
  /** Line of the file, as an editor counts it. */
  readonly row: number;
  readonly cells: readonly string[];
};

export type Table = {
  readonly file: string;
  readonly header: TableRow;
  readonly rows: readonly TableRow[];
};
