import { describe, expect, it } from "vitest";
import { TRACE_COLUMNS } from "../../src/model-engine/index.ts";
import { drawCase, recordCase } from "./draw-case.ts";

describe("recordCase", () => {
  it("runs every drawn engine through its drive without leaving the validity of the model, truth finite throughout", () => {
    for (const set of ["tuning", "final"] as const) {
      for (let number = 0; number < 120; number++) {
        const { truth } = recordCase(drawCase(set, number));
        for (const column of TRACE_COLUMNS) {
          expect(truth[column].every(Number.isFinite), `${set} ${number} ${column}`).toBe(true);
        }
        expect(Math.max(...truth.speed.subarray(1000, 3000)), `${set} ${number} runs`).toBeGreaterThan(8);
      }
    }
  }, 600_000);
});
