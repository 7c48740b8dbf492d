/** Runs the built command line in a folder of its own, as a person would. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const PROGRAM = fileURLToPath(new URL("../../dist/cli/airtally.js", import.meta.url));

export type Ended = { readonly status: number | null; readonly out: string; readonly err: string };

export function airtally(folder: string, ...args: readonly string[]): Ended {
  const done = spawnSync(process.execPath, [PROGRAM, ...args], { cwd: folder, encoding: "utf8", maxBuffer: 2 ** 28 });
  return { status: done.status, out: done.stdout, err: done.stderr };
}

export function folderWith(files: { readonly [name: string]: string | Uint8Array }): string {
  const folder = mkdtempSync(join(tmpdir(), "airtally-test-"));
  for (const [name, content] of Object.entries(files)) writeFileSync(join(folder, name), content);
  return folder;
}

/** An engine file of an invented engine; anything may be laid over it. */
export function engineFile(changes: { readonly [key: string]: unknown } = {}): string {
  return JSON.stringify({
    format: "airtally-engine/1",
    displacement: "1600 cm3",
    cylinders: 4,
    strokes: 4,
    fuel: "petrol",
    metering: "pressure",
    ...changes,
  });
}

/** A plain recording of an invented engine: idle, then 2,500 rev/min. */
export function plainRecording(
  columns: readonly string[] = ["manifold pressure [kPa]", "intake air temperature [degC]"],
): string {
  const value: { readonly [column: string]: (idle: boolean, i: number) => string } = {
    "manifold pressure [kPa]": (idle, i) => (idle ? 32 + (i % 3) * 0.2 : 38 + (i % 4) * 0.2).toFixed(1),
    "intake air temperature [degC]": () => "24",
    "coolant temperature [degC]": () => "90",
    "air mass flow [g/s]": (idle, i) => (idle ? 2.4 + (i % 3) * 0.02 : 11 + (i % 4) * 0.05).toFixed(2),
  };
  const rows = [["time [s]", "engine speed [rpm]", ...columns].join(",")];
  for (let i = 0; i < 600; i++) {
    const idle = i < 300;
    const speed = (idle ? 800 : 2500) + (i % 5);
    rows.push([(i * 0.2).toFixed(1), speed, ...columns.map((c) => value[c]!(idle, i))].join(","));
  }
  return `${rows.join("\n")}\n`;
}
