/**
 * A recording read as its bytes arrive. `push` takes chunks of any size, `finish` gives the recording; between two pushes
 * the caller may show progress or stop. Memory: the columns, unfinished lines, and the head until the layout is known.
 */
import { type Failure, failure, type Result } from "../quantities/index.ts";
import { assembleRecording } from "./assemble.ts";
import { joined } from "./bytes.ts";
import { lineTooLong, takeLines } from "./delimited/line.ts";
import { sniffLayout } from "./delimited/sniff.ts";
import { TableReader } from "./delimited/table-reader.ts";
import { refuseForeignFormat } from "./foreign-format.ts";
import { MAX_BYTES, MAX_LINE_BYTES } from "./limits.ts";
import type { ReadOptions, Recording, RecordingReason } from "./recording.ts";
import { detectEncoding, type Encoding } from "./text/encoding.ts";
import { type Recoder, utf16Recoder } from "./text/utf16.ts";

export type ReaderOptions = ReadOptions & {
  /** bytes in all, where known: room for the rows is then taken once */
  readonly size?: number;
  /** false: the careful reader alone, to compare the two */
  readonly scanner?: boolean;
};

export type RecordingReader = {
  /** A failure ends the reading; further pushes repeat it. */
  push(chunk: Uint8Array): Failure<RecordingReason> | null;
  finish(): Result<Recording, RecordingReason>;
};

/** Bytes that tell the encoding and whether this is text; bytes and lines that tell the layout. */
const SIGN_BYTES = 4_096;
const HEAD_BYTES = 262_144;
const HEAD_LINES = 1_000;
/** Rows are not foreseen for more memory than this; beyond it the columns grow as they fill. */
const FORESEEN_BYTES = 1.5e9;

export function openRecordingReader(options: ReaderOptions): RecordingReader {
  const file = options.name;
  let head: Uint8Array = new Uint8Array(0);
  let encoding: Encoding | null = null;
  let recode: Recoder | null = null;
  let table: TableReader | null = null;
  let total = 0;
  let failed: Failure<RecordingReason> | null = null;

  function push(chunk: Uint8Array): Failure<RecordingReason> | null {
    if (failed !== null || chunk.length === 0) return failed;
    total += chunk.length;
    if (Math.max(total, options.size ?? 0) > MAX_BYTES) failed = tooLarge(file);
    else if (encoding !== null) failed = take(recode === null ? chunk : recode(chunk), false);
    else {
      head = joined(head, chunk);
      if (head.length >= SIGN_BYTES) failed = begin(false);
    }
    return failed;
  }

  /** The first bytes decide the encoding, or that this is no text. */
  function begin(whole: boolean): Failure<RecordingReason> | null {
    const found = detectEncoding(head.subarray(0, HEAD_BYTES));
    encoding = found.encoding;
    const bytes = head.subarray(found.markLength);
    head = new Uint8Array(0);
    if (encoding === "utf-16le" || encoding === "utf-16be") {
      recode = utf16Recoder(encoding === "utf-16le");
      return take(recode(bytes), whole);
    }
    return refuseForeignFormat(bytes.subarray(0, SIGN_BYTES), file) ?? take(bytes, whole);
  }

  /** Text in ASCII, UTF-8 or Windows-1252. */
  function take(text: Uint8Array, whole: boolean): Failure<RecordingReason> | null {
    if (table !== null) return table.push(text);
    head = joined(head, text);
    return whole || head.length >= HEAD_BYTES ? openTable(whole) : null;
  }

  function openTable(whole: boolean): Failure<RecordingReason> | null {
    if (head.every((byte) => byte <= 32)) return whole ? emptyFile(file) : null;
    const { text: lines, starts, numbers, end } = takeLines(head, 0, HEAD_LINES, HEAD_BYTES, whole);
    if (lines.length < 4 && (!whole || end < head.length)) {
      // Long lines: wait for more of them, unless one can't be a row any more.
      return head.length - end > MAX_LINE_BYTES ? lineTooLong(file, lines.length + 1) : null;
    }
    const layout = sniffLayout(
      lines,
      numbers.map((i) => i + 1),
      file,
    );
    if (!layout.ok) return layout;
    const { firstRow, columns } = layout.value;
    const first = starts[firstRow] ?? end;
    const bytesPerRow = Math.max(2, (end - first) / Math.max(1, lines.length - firstRow));
    const textBytes = Math.max(head.length, (options.size ?? 0) * (recode === null ? 1 : 0.5));
    const expected = Math.min((1.02 * textBytes) / bytesPerRow + 64, FORESEEN_BYTES / (9 * columns.length));
    table = new TableReader(
      layout.value,
      Math.ceil(expected),
      (numbers[firstRow] ?? numbers.length) + 1,
      file,
      options.scanner ?? true,
    );
    const rows = head.subarray(first);
    head = new Uint8Array(0);
    return table.push(rows);
  }

  function finish(): Result<Recording, RecordingReason> {
    if (failed === null && encoding === null) failed = total === 0 ? emptyFile(file) : begin(true);
    if (failed === null && table === null) failed = openTable(true);
    if (failed === null && table !== null) failed = table.finish();
    if (failed !== null || table === null) return failed ?? emptyFile(file);
    return assembleRecording(table, encoding ?? "utf-8", options);
  }

  return { push, finish };
}

/** A whole file in memory. */
export function readRecording(bytes: Uint8Array, options: ReaderOptions): Result<Recording, RecordingReason> {
  if (bytes.length > MAX_BYTES) return tooLarge(options.name);
  const reader = openRecordingReader({ ...options, size: bytes.length });
  const failed = reader.push(bytes);
  return failed ?? reader.finish();
}

function emptyFile(file: string): Failure<RecordingReason> {
  const remedy = "Check that the recording was saved, and give that file.";
  return failure("empty-file", "The file is empty.", remedy, { file });
}

function tooLarge(file: string): Failure<RecordingReason> {
  return failure(
    "too-large",
    `The file is larger than ${MAX_BYTES / 1e9} GB, the most that is read.`,
    "Split the recording, or export a shorter stretch of it.",
    { file },
  );
}
