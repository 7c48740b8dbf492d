// A hundred invented recordings, from bytes to answer. The figures proper are those of `npm run evaluate` (docs/accuracy.md); this
// holds their order of magnitude, so that a change which breaks the inference fails here.
import { beforeAll, describe, expect, it } from "vitest";
import { check } from "../../src/job/index.ts";
import type { AirtallyResult } from "../../src/job/result.ts";
import { drawCase, type InventedCase, recordCase } from "../cases/draw-case.ts";

const CASES = 100;

type Told = { readonly one: InventedCase; readonly result: AirtallyResult };

const told: Told[] = [];

beforeAll(() => {
  for (let number = 0; number < CASES; number++) {
    const one = drawCase("tuning", number);
    const { name, bytes, engineFile } = recordCase(one);
    const outcome = check({
      recordings: [{ name, chunks: [bytes], sha256: () => "" }],
      engine: engineFile,
      channels: null,
      assumptions: null,
      toolVersion: "test",
      seed: 0,
    });
    if (!outcome.ok) throw new Error(`case ${number}: ${outcome.message}`);
    told.push({ one, result: outcome.value.result });
  }
}, 600_000);

const healthy = () => told.filter(({ one }) => one.faults.length === 0);
const single = () => told.filter(({ one }) => one.faults.length === 1);

describe("a hundred invented engines", () => {
  it("sum to one, every chance and interval in order", () => {
    for (const { one, result } of told) {
      const explained = result.explanations.reduce((sum, e) => sum + e.probability, 0);
      const all = result.healthyProbability + result.unexplainedProbability + result.othersProbability + explained;
      expect(all, `case ${one.number}`).toBeCloseTo(1, 2);
      for (const { sizes } of result.findings)
        for (const { low90, value, high90 } of sizes) {
          expect(low90).toBeLessThanOrEqual(value);
          expect(value).toBeLessThanOrEqual(high90);
        }
    }
  });

  it("are not accused when healthy: at most one in twenty has a cause over one half", () => {
    const accused = healthy().filter(({ result }) => result.findings.some((f) => f.probability > 0.5));
    expect(healthy().length).toBeGreaterThan(20);
    expect(accused.length).toBeLessThanOrEqual(0.05 * healthy().length);
  });

  it("have their planted cause among the first three findings in most cases, and well ahead of its prior", () => {
    const rank = ({ one, result }: Told) => result.findings.findIndex((f) => f.cause === one.faults[0]!.cause);
    const raised = single().filter((t) => rank(t) >= 0 && rank(t) < 3);
    expect(raised.length / single().length).toBeGreaterThan(0.5);
  });

  it("are rarely said to be sure of what is not so: of all said at 95 % or more, four in five are", () => {
    const sure = told.flatMap(({ one, result }) =>
      result.findings
        .filter((f) => f.probability >= 0.95)
        .map((f) => one.faults.some((fault) => fault.cause === f.cause)),
    );
    expect(sure.length).toBeGreaterThan(5);
    expect(sure.filter(Boolean).length / sure.length).toBeGreaterThanOrEqual(0.8);
  });
});
