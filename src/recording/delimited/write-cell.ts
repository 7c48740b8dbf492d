/** One cell of text into its column. Both readers end here for what is no plain number. */
import { parseTime } from "../time/parse-time.ts";
import { parseCell } from "./cell.ts";
import type { ColumnStore } from "./column-store.ts";
import type { ColumnLayout, Layout } from "./layout.ts";

/** Writes one cell; true where it held a value. */
export function writeCell(
  text: string,
  column: ColumnLayout,
  layout: Layout,
  store: ColumnStore,
  index: number,
  row: number,
): boolean {
  if (column.form !== "number" && text.trim() !== "") {
    const bytes = Uint8Array.from(text, (c) => Math.min(c.charCodeAt(0), 255));
    const value = parseTime(bytes, 0, bytes.length, column.form, layout.dateOrder);
    if (!Number.isNaN(value)) {
      store.setNumber(index, row, value);
      return true;
    }
  }
  const cell = parseCell(text, column.form === "number" ? column.format : { ...column.format, thousands: "" });
  if (cell.kind === "missing") store.setMissing(index, row);
  else if (cell.kind === "number" && column.form === "number") {
    store.setNumber(index, row, cell.value);
    return true;
  } else store.setWord(index, row, text.trim());
  return cell.kind !== "missing";
}
