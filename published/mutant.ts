/**
 * A module with one coefficient moved: what proves that a check can fail. The source is copied with the text of the number
 * replaced, so that production code needs no knob for it, and loaded beside the real module.
 */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { expect } from "vitest";

const ROOT = resolve(import.meta.dirname, "..");
const FOLDER = resolve(ROOT, ".cache/mutants");

/**
 * Loads `file` (from the root of the project) with the number that ends `text` multiplied by `factor`. The text must occur
 * exactly once in the code: a coefficient that was renamed or reformatted fails loudly instead of proving nothing.
 */
export async function mutant<Module>(file: string, text: string, factor: number): Promise<Module> {
  const path = resolve(ROOT, file);
  const source = readFileSync(path, "utf8");
  const parts = source.split("*/");
  const code = parts.slice(1).join("*/");
  if (code.split(text).length !== 2)
    throw new Error(`"${text}" occurs ${code.split(text).length - 1} times in ${file}`);
  const number = /[\d.][\d._]*(?:e[+-]?\d+)?$/i.exec(text)?.[0];
  if (number === undefined) throw new Error(`"${text}" does not end with a number`);
  const moved = `${text.slice(0, -number.length)}${Number(number.replaceAll("_", "")) * factor}`;
  const changed = code
    .replace(text, moved)
    .replace(/from "(\.[^"]*)"/g, (_, relative: string) => `from "${resolve(dirname(path), relative)}"`);
  mkdirSync(FOLDER, { recursive: true });
  const name = `${file}-${text}-${factor}`.replace(/[^\w.-]/g, "_");
  const copy = resolve(FOLDER, `${name}.ts`);
  writeFileSync(copy, changed);
  return (await import(/* @vite-ignore */ copy)) as Module;
}

/** The check passes with the module as it is, and fails with the coefficient moved either way. */
export async function expectCoefficientMatters<Module>(
  file: string,
  text: string,
  by: number,
  check: (module: Module) => void,
): Promise<void> {
  check(await mutant<Module>(file, text, 1));
  for (const factor of [1 + by, 1 - by]) {
    const moved = await mutant<Module>(file, text, factor);
    let failed = false;
    try {
      check(moved);
    } catch {
      failed = true;
    }
    expect(failed, `the check still passes with ${text} in ${file} multiplied by ${factor}`).toBe(true);
  }
}
