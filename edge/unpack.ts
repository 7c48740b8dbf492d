/**
 * Recordings that arrive packed: gzip, or a zip archive with one file in it. Unpacked in memory up to a stated size, so that
 * a small file that swells without end (by mistake or malice) is refused.
 */
import { gunzipSync } from "node:zlib";
import { unzipSync } from "fflate";
import { failure, type Result, success } from "../src/quantities/index.ts";

/** What a packed recording may unpack to; larger ones are to be unpacked by hand and read as they are. */
export const MOST_UNPACKED_BYTES = 1_000_000_000;

export type Packing = "gzip" | "zip" | null;
export type UnpackReason = "unpack-too-large" | "unpack-broken" | "unpack-not-one-file";

export function packingOf(head: Uint8Array): Packing {
  if (head[0] === 0x1f && head[1] === 0x8b) return "gzip";
  if (head[0] === 0x50 && head[1] === 0x4b && head[2] === 0x03 && head[3] === 0x04) return "zip";
  return null;
}

/** The unpacked bytes; those handed in where they are not packed. */
export function unpack(name: string, bytes: Uint8Array, most = MOST_UNPACKED_BYTES): Result<Uint8Array, UnpackReason> {
  const packing = packingOf(bytes);
  if (packing === null) return success(bytes);
  try {
    return packing === "gzip" ? success(gunzipSync(bytes, { maxOutputLength: most })) : unzip(name, bytes, most);
  } catch (error) {
    if ((error as { code?: string }).code === "ERR_BUFFER_TOO_LARGE") return tooLarge(name, most);
    return failure(
      "unpack-broken",
      `${name} looks like a ${packing} file but cannot be unpacked (${error instanceof Error ? error.message : String(error)}).`,
      "It may be cut short: copy it again, or unpack it by hand.",
    );
  }
}

function unzip(name: string, bytes: Uint8Array, most: number): Result<Uint8Array, UnpackReason> {
  const entries: { name: string; size: number }[] = [];
  unzipSync(bytes, {
    filter: (entry) => {
      if (!entry.name.endsWith("/") && !entry.name.startsWith("__MACOSX/"))
        entries.push({ name: entry.name, size: entry.originalSize });
      return false;
    },
  });
  const [only, ...others] = entries;
  if (only === undefined || others.length > 0) {
    const names = entries
      .slice(0, 6)
      .map((e) => e.name)
      .join(", ");
    return failure(
      "unpack-not-one-file",
      only === undefined
        ? `The archive ${name} holds no file.`
        : `The archive ${name} holds ${entries.length} files: ${names}.`,
      "Spreadsheets are archives too: export them as text. Of an archive with several recordings, unpack it and name the recordings.",
    );
  }
  if (only.size > most) return tooLarge(name, most);
  // The size is what the archive claims of itself; the unpacker writes no more than that.
  return success(unzipSync(bytes, { filter: (entry) => entry.name === only.name })[only.name]!);
}

function tooLarge(name: string, most: number): Result<Uint8Array, UnpackReason> {
  return failure(
    "unpack-too-large",
    `${name} unpacks to more than ${Math.round(most / 1e6)} MB.`,
    "Unpack it by hand and, if it is right, cut it into parts.",
  );
}
