/**
 * The whole command on an hour's recording: 36,000 rows of 20 channels at 10 Hz, from process start to the last byte of JSON.
 * Goal: under 1 s of wall time. The answer is asserted, so a fast wrong one fails.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { writeHour } from "./make-hour.ts";

const ROUNDS = 7;
const GOAL_S = 1;
const PROGRAM = join(process.cwd(), "dist/cli/airtally.js");

const folder = mkdtempSync(join(tmpdir(), "airtally-speed-"));
try {
  const recording = join(folder, "hour.csv");
  const engine = writeHour(recording);
  const seconds: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const from = process.hrtime.bigint();
    const done = spawnSync(process.execPath, [PROGRAM, "check", recording, "--engine", engine, "--json", "-"], {
      encoding: "utf8",
      maxBuffer: 2 ** 28,
    });
    seconds.push(Number(process.hrtime.bigint() - from) / 1e9);
    const result = JSON.parse(done.stdout) as { answer: string; findings: { cause: string }[] };
    if (result.findings[0]?.cause !== "manifold-leak")
      throw new Error(`Assertion failed: the hour's leak was not found but ${result.findings[0]?.cause}`);
  }
  const empty = timeOf(() => spawnSync(process.execPath, ["-e", "0"]));
  seconds.sort((a, b) => a - b);
  const median = seconds[seconds.length >> 1]!;
  process.stdout.write(
    `check, one hour at 10 Hz, 20 channels: median ${median.toFixed(2)} s, best ${seconds[0]!.toFixed(2)} s (goal ${GOAL_S} s); an empty Node process ${empty.toFixed(2)} s, ratio ${(median / empty).toFixed(1)}\n`,
  );
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function timeOf(work: () => void): number {
  const from = process.hrtime.bigint();
  work();
  return Number(process.hrtime.bigint() - from) / 1e9;
}
