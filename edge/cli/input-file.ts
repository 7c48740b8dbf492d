/** Files that a command reads. Their real paths are kept, so that no output can fall on them. */
import { createHash } from "node:crypto";
import { readFileSync, realpathSync, statSync } from "node:fs";
import { basename } from "node:path";
import { CliError } from "./cli-error.ts";

const MOST_BYTES = 2 ** 31 - 1; // what one buffer of this runtime holds, stated as 2 GB

/** Where an input is: as it was named, and its real path through all links. */
export type InputPath = { readonly path: string; readonly realPath: string };
export type InputFile = InputPath & { readonly name: string; readonly bytes: Uint8Array };

export function findInput(path: string): InputPath {
  const realPath = find(path);
  if (statSync(realPath).isDirectory()) throw new CliError(2, `${path} is a folder. Name a file.`);
  return { path, realPath };
}

export function readInput(path: string): InputFile {
  const found = findInput(path);
  const { size } = statSync(found.realPath);
  if (size > MOST_BYTES) {
    throw new CliError(3, `${path}: the file has ${size} bytes; at most 2 GB are read. Cut it into parts.`);
  }
  try {
    return { ...found, name: basename(path), bytes: readFileSync(found.realPath) };
  } catch (error) {
    throw new CliError(2, `${path} cannot be read (${reasonOf(error)}). Check its permissions.`);
  }
}

export function readTextInput(path: string): { readonly text: string; readonly file: InputFile } {
  const file = readInput(path);
  return { text: new TextDecoder("utf-8").decode(file.bytes), file };
}

export function sha256(bytes: Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}

function find(path: string): string {
  try {
    return realpathSync(path);
  } catch (error) {
    throw new CliError(2, `${path} cannot be found (${reasonOf(error)}). Check the name and the folder.`);
  }
}

export function reasonOf(error: unknown): string {
  const code = (error as { code?: string }).code;
  const words: { readonly [code: string]: string } = {
    ENOENT: "there is no such file",
    EACCES: "access is not allowed",
    ENOSPC: "the disk is full",
    EROFS: "the folder is read-only",
    ENOTDIR: "a part of the path is not a folder",
    EISDIR: "it is a folder",
    ELOOP: "its links go in a circle",
  };
  return code === undefined ? String(error) : (words[code] ?? code);
}
