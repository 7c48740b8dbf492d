/**
 * A recording of the command line as the job room takes it: read in chunks, hashed as it is read, so that a file of any size
 * takes no more memory than its columns; a packed one is unpacked first. Large ones show their progress on a terminal.
 */
import { createHash } from "node:crypto";
import { closeSync, openSync, readSync, statSync } from "node:fs";
import { basename } from "node:path";
import type { RecordingInput } from "../../src/job/index.ts";
import { packingOf, unpack } from "../unpack.ts";
import { CliError, unusable } from "./cli-error.ts";
import { findInput, type InputPath, readInput, reasonOf, sha256 } from "./input-file.ts";

const CHUNK_BYTES = 4 * 1024 * 1024;
const SHOWN_FROM_BYTES = 50_000_000;

export type RecordingFile = InputPath & { readonly input: RecordingInput };

export function recordingFile(path: string, rate: number | null): RecordingFile {
  const found = findInput(path);
  const name = basename(path);
  const size = statSync(found.realPath).size;
  const more = rate === null ? {} : { rate };
  if (packingOf(headOf(path, found.realPath)) !== null) {
    const { bytes } = readInput(path);
    const unpacked = unpack(name, bytes);
    if (!unpacked.ok) throw unusable(unpacked, path);
    return {
      ...found,
      input: { name, chunks: [unpacked.value], size: unpacked.value.length, sha256: () => sha256(bytes), ...more },
    };
  }
  const hash = createHash("sha256");
  let digest: string | null = null;
  const sha256Once = () => {
    digest ??= hash.digest("hex");
    return digest;
  };
  return {
    ...found,
    input: { name, chunks: chunksOf(path, found.realPath, size, hash), size, sha256: sha256Once, ...more },
  };
}

function headOf(path: string, realPath: string): Uint8Array {
  const head = new Uint8Array(4);
  const file = open(path, realPath);
  try {
    readSync(file, head, 0, head.length, 0);
    return head;
  } finally {
    closeSync(file);
  }
}

function* chunksOf(
  path: string,
  realPath: string,
  size: number,
  hash: { update: (bytes: Uint8Array) => unknown },
): Generator<Uint8Array> {
  const file = open(path, realPath);
  const shown = process.stderr.isTTY === true && size >= SHOWN_FROM_BYTES;
  let read = 0;
  try {
    for (;;) {
      const chunk = new Uint8Array(Math.max(1, Math.min(CHUNK_BYTES, size - read || CHUNK_BYTES)));
      const length = readSync(file, chunk, 0, chunk.length, null);
      if (length === 0) break;
      read += length;
      const bytes = chunk.subarray(0, length);
      hash.update(bytes);
      if (shown)
        process.stderr.write(`\rReading ${basename(path)}: ${Math.round((100 * read) / size)} % (Ctrl+C stops)`);
      yield bytes;
    }
  } finally {
    closeSync(file);
    if (shown) process.stderr.write("\r\u001b[K");
  }
}

function open(path: string, realPath: string): number {
  try {
    return openSync(realPath, "r");
  } catch (error) {
    throw new CliError(2, `${path} cannot be read (${reasonOf(error)}). Check its permissions.`);
  }
}

/** Rows a second as given; null where not given. */
export function rateOf(text: string | undefined): number | null {
  if (text === undefined) return null;
  const rate = Number(text);
  if (!(rate > 0 && Number.isFinite(rate)))
    throw new CliError(2, `--rate ${text} is not a number of rows a second. Give for example --rate 10.`);
  return rate;
}
