/** Files that are no delimited text, told by their first bytes, each with what the user can do. */
import { type Failure, failure } from "../quantities/index.ts";
import type { RecordingReason } from "./recording.ts";

type Signature = { readonly bytes: readonly number[]; readonly name: string; readonly reason: RecordingReason };

const EXPORT = "Export it as delimited text (CSV) and give that file.";
const UNPACK = "Unpack it first and give the file inside.";

const SIGNATURES: readonly Signature[] = [
  { bytes: [0x50, 0x41, 0x52, 0x31], name: "a Parquet file", reason: "foreign-format" },
  { bytes: [0x4d, 0x44, 0x46, 0x20], name: "an ASAM MDF file", reason: "foreign-format" },
  { bytes: [0x55, 0x6e, 0x46, 0x69, 0x6e, 0x4d, 0x46], name: "an unfinished ASAM MDF file", reason: "foreign-format" },
  { bytes: [0xd0, 0xcf, 0x11, 0xe0], name: "a spreadsheet or another office document", reason: "foreign-format" },
  { bytes: [0x25, 0x50, 0x44, 0x46], name: "a PDF document", reason: "foreign-format" },
  { bytes: [0x89, 0x50, 0x4e, 0x47], name: "a picture", reason: "foreign-format" },
  { bytes: [0xff, 0xd8, 0xff], name: "a picture", reason: "foreign-format" },
  { bytes: [0x89, 0x48, 0x44, 0x46], name: "an HDF5 file", reason: "foreign-format" },
  { bytes: [0x53, 0x51, 0x4c, 0x69, 0x74, 0x65], name: "a SQLite database", reason: "foreign-format" },
  { bytes: [0x50, 0x4b, 0x03, 0x04], name: "a zip archive or a spreadsheet", reason: "compressed" },
  { bytes: [0x1f, 0x8b], name: "packed with gzip", reason: "compressed" },
  { bytes: [0x42, 0x5a, 0x68], name: "packed with bzip2", reason: "compressed" },
  { bytes: [0x28, 0xb5, 0x2f, 0xfd], name: "packed with Zstandard", reason: "compressed" },
  { bytes: [0xfd, 0x37, 0x7a, 0x58, 0x5a], name: "packed with xz", reason: "compressed" },
  { bytes: [0x37, 0x7a, 0xbc, 0xaf], name: "a 7z archive", reason: "compressed" },
];

export function refuseForeignFormat(head: Uint8Array, file: string): Failure<RecordingReason> | null {
  const found = SIGNATURES.find((s) => s.bytes.every((byte, i) => head[i] === byte));
  if (found !== undefined) {
    return failure(
      found.reason,
      `The file is ${found.name}, not delimited text.`,
      found.reason === "compressed" ? `${UNPACK} A spreadsheet: ${EXPORT.toLowerCase()}` : EXPORT,
      { file },
    );
  }
  const control = controlShare(head);
  if (control <= 0.02) return null;
  return failure(
    "binary-file",
    `The file is binary: ${Math.round(control * 100)} % of its first bytes are control characters.`,
    "Export the recording as delimited text (CSV).",
    { file },
  );
}

/** Share of bytes that no text holds. A few NULs are tolerated: loggers that lost power leave them behind. */
function controlShare(head: Uint8Array): number {
  if (head.length === 0) return 0;
  let count = 0;
  for (const byte of head) if (byte < 9 || (byte > 13 && byte < 32 && byte !== 0x1a) || byte === 0x7f) count++;
  return count / head.length;
}
