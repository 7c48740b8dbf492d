/**
 * recording: a file of measured channels over time, as it was logged.
 * In: bytes of delimited text in any layout. Out: a `Recording` with names, units and values exactly as written, the time
 * of every row and how it was found, and a warning for everything that did not fit.
 * Refuses: to recognise, convert, smooth or bridge anything; files that are no text (Parquet, MDF, spreadsheets, archives).
 */
export { MAX_BYTES, MAX_COLUMNS, MAX_LINE_BYTES } from "./limits.ts";
export { openRecordingReader, type ReaderOptions, type RecordingReader, readRecording } from "./reader.ts";
export type {
  ColumnForm,
  RawColumn,
  ReadOptions,
  Recording,
  RecordingReason,
  RowStretch,
  TextCells,
  TextLine,
  TimeBase,
  TimeKind,
} from "./recording.ts";
