/**
 * Files that a command writes. Checked before any work is done: never an input (by real path, so through links too), never
 * an existing file without --force. Written beside the target and renamed, so that no half file is left.
 */
import { existsSync, mkdtempSync, realpathSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { CliError } from "./cli-error.ts";
import { type InputPath, reasonOf } from "./input-file.ts";

export type Output = { readonly path: string; readonly write: (content: string) => void };

/** Checks all outputs of a command against its inputs and each other. "-" stands for standard output. */
export function planOutputs(
  paths: readonly (string | undefined)[],
  inputs: readonly InputPath[],
  force: boolean,
): (Output | null)[] {
  const taken = new Map<string, string>(inputs.map((file) => [identity(file.realPath), `the input ${file.path}`]));
  return paths.map((path) => {
    if (path === undefined) return null;
    if (path === "-" && taken.has("-")) {
      throw new CliError(2, "Only one output can go to standard output (-). Name a file for the others.");
    }
    if (path === "-") {
      taken.set("-", "standard output");
      return { path, write: (content) => void process.stdout.write(content) };
    }
    const target = targetOf(path);
    const clash = taken.get(identity(target));
    if (clash !== undefined) throw new CliError(2, `${path} is ${clash}: it would be overwritten. Name another file.`);
    if (existsSync(target)) {
      if (statSync(target).isDirectory()) throw new CliError(2, `${path} is a folder. Name a file.`);
      if (!force) throw new CliError(2, `${path} exists. Name another file, or add --force to replace it.`);
    }
    taken.set(identity(target), `another output of this call (${path})`);
    return { path, write: (content) => writeWhole(target, path, content) };
  });
}

/** The real path of a file that may not exist yet: its folder's real path and its name. */
function targetOf(path: string): string {
  if (existsSync(path)) return realpathSync(path);
  try {
    return join(realpathSync(dirname(path)), basename(path));
  } catch (error) {
    throw new CliError(
      2,
      `${path} cannot be written: its folder cannot be found (${reasonOf(error)}). Make the folder first.`,
    );
  }
}

/** Device and inode where the file exists (hard links are one file too), else the path. */
function identity(path: string): string {
  if (!existsSync(path)) return path;
  const { dev, ino } = statSync(path);
  return `${dev}:${ino}`;
}

function writeWhole(target: string, path: string, content: string): void {
  let folder: string | null = null;
  try {
    folder = mkdtempSync(join(dirname(target), ".airtally-"));
    const draft = join(folder, "draft");
    writeFileSync(draft, content, { flush: true });
    renameSync(draft, target);
  } catch (error) {
    throw new CliError(2, `${path} cannot be written (${reasonOf(error)}). Name a place that can be written to.`);
  } finally {
    if (folder !== null) rmSync(folder, { recursive: true, force: true });
  }
}
