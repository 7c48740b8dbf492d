/** A table as read, before its rows have a time: columns, the line of each row, and the rows at which recording began anew. */
import type { Table } from "./delimited/table-reader.ts";
import type { RawColumn } from "./recording.ts";

export type RawTable = {
  readonly columns: readonly RawColumn[];
  readonly rows: number;
  readonly lines: Uint32Array;
  readonly restarts: readonly number[];
};

export function rawTableOf({ layout, store, restarts }: Table): RawTable {
  const columns = layout.columns.map(
    (column, i): RawColumn => ({
      position: i + 1,
      header: column.header,
      headerText: column.headerText,
      unitText: column.unitText,
      form: column.form,
      ...store.column(i),
    }),
  );
  return { columns, rows: store.rows, lines: store.lines.subarray(0, store.rows), restarts };
}
