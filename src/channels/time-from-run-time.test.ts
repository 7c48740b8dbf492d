import { describe, expect, test } from "vitest";
import { readRecording } from "../recording/index.ts";
import { recogniseChannels } from "./recognise-channels.ts";
import { channel } from "./test-support/understand.ts";

/** Rows every 0.5 s, the run time in whole seconds as last polled, every 1.83 s; engine off for the first rows. */
function file(rows: number, offRows: number, restartAt = Number.POSITIVE_INFINITY): Uint8Array {
  const lines = ["RUN_TIME (),ENGINE_RPM (),COOLANT_TEMPERATURE ()"];
  for (let row = 0; row < rows; row++) {
    const since = row < offRows ? -1 : (row >= restartAt ? row - restartAt : row - offRows) * 0.5;
    const polled = Math.floor(Math.floor(Math.max(since, 0) / 1.83) * 1.83);
    lines.push(`${polled},${since < 0 ? 0 : 800 + ((row * 7) % 13)},${20 + Math.floor(row / 40)}`);
  }
  return new TextEncoder().encode(`${lines.join("\n")}\n`);
}

function understand(bytes: Uint8Array) {
  const recording = readRecording(bytes, { name: "invented.csv" });
  if (!recording.ok) throw new Error(recording.message);
  return recogniseChannels(recording.value, { engine: null, pins: null });
}

describe("a recording whose only clock is the engine's run time", () => {
  test("time is built from it, to about its resolution, and that is said", () => {
    const set = understand(file(600, 10));
    if (!set.ok) throw new Error(set.message);
    expect(set.value.timeBasis).toMatch(/no time column; built from the engine run time in column 1/);
    const { times } = channel(set.value, "engineSpeed");
    expect(times[0]).toBe(0);
    for (let row = 0; row < 600; row += 50) expect(Math.abs(times[row]! - row * 0.5)).toBeLessThan(1.5);
    expect(channel(set.value, "engineSpeed").timeSkew).toBeGreaterThan(0.5);
  });

  test("where it begins anew, a new stretch begins", () => {
    const set = understand(file(600, 10, 300));
    if (!set.ok) throw new Error(set.message);
    expect(set.value.stretches.map((s) => s.why)).toEqual([null, "the engine run time began anew"]);
    const { times } = channel(set.value, "engineSpeed");
    expect(times.some((t, i) => i > 0 && t <= times[i - 1]!)).toBe(false);
  });

  test("without any clock a rate is asked for", () => {
    const bytes = new TextEncoder().encode("Engine RPM;Manifold Pressure [kPa]\n800;33\n812;34\n830;35\n");
    expect(understand(bytes)).toMatchObject({
      ok: false,
      reason: "no-time-base",
      remedy: expect.stringContaining("--rate"),
    });
  });
});
