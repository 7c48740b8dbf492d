/** Observed cases in files of a block each, written whole or not at all: an evaluation cut short goes on where it stopped. */
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { CaseSet } from "../cases/draw-case.ts";
import { fromText, type Observation, observe, toText } from "./observed-case.ts";

export const BLOCK = 25;

export function block(folder: string, set: CaseSet, index: number): Observation[] {
  const file = join(folder, `${set}-${String(index).padStart(4, "0")}.ndjson`);
  if (!existsSync(file)) {
    mkdirSync(folder, { recursive: true });
    const lines = Array.from({ length: BLOCK }, (_, i) => toText(observe(set, index * BLOCK + i)));
    const unfinished = `${file}.${process.pid}`;
    writeFileSync(unfinished, `${lines.join("\n")}\n`);
    renameSync(unfinished, file);
  }
  return readFileSync(file, "utf8").trimEnd().split("\n").map(fromText);
}
