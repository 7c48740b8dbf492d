import { describe, expect, it } from "vitest";
import type { Alternative, SizedFault } from "./alternatives.ts";
import { CHECKS, checkById } from "./check-table.ts";
import { foundLikelihood } from "./found-likelihood.ts";
import { rankAmong } from "./rank-checks.ts";

const sized = (cause: string, ...sizes: number[]): SizedFault => ({
  cause,
  bank: null,
  nodes: sizes.map((size) => ({ size, weight: 1 / sizes.length })),
});
const healthy = (probability: number): Alternative => ({ faults: [], probability });
const alone = (probability: number, fault: SizedFault): Alternative => ({ faults: [fault], probability });
const LEAK = sized("manifold-leak", 1e-6, 2e-6, 4e-6, 8e-6);
const BIAS = sized("map-biased", -6000, -3000, 3000, 6000);
const of = (id: string) => checkById(id)!;

/** entropy in bits */
const entropy = (shares: readonly number[]) => shares.reduce((sum, p) => sum - (p > 0 ? p * Math.log2(p) : 0), 0);

describe("the expected information of a check", () => {
  it("is the mean fall of the entropy when each result is entered", () => {
    const alternatives = [
      healthy(0.3),
      alone(0.4, LEAK),
      alone(0.2, BIAS),
      { faults: "unexplained", probability: 0.1 } as const,
    ];
    const check = of("smoke-test");
    if (check.kind !== "words") throw new Error("told in words");
    const now = entropy(alternatives.map((a) => a.probability));
    let expected = 0;
    for (const { id } of check.outcomes) {
      const known = foundLikelihood([{ check: check.id, bank: null, outcome: id, numbers: {} }]);
      const joint = alternatives.map(({ faults, probability }) => {
        if (faults === "unexplained") return probability * Math.exp(known(faults));
        const nodes = faults[0]?.nodes ?? [{ size: 0, weight: 1 }];
        const mean = nodes.reduce(
          (sum, { size, weight }) =>
            sum + weight * Math.exp(known(faults.map(({ cause, bank }) => ({ cause, bank, size })))),
          0,
        );
        return probability * mean;
      });
      const chance = joint.reduce((sum, p) => sum + p, 0);
      expected += chance * (now - entropy(joint.map((p) => p / chance)));
    }
    expect(rankAmong([check], alternatives)[0]!.informationBits).toBeCloseTo(expected, 9);
  });

  it("of a reading is nearly what fine cells would give", () => {
    const alternatives = [healthy(0.5), alone(0.5, sized("map-biased", 1500))];
    const { sd } = { sd: 1000 };
    // two normals 1.5 sd apart, slips left aside, by fine sums
    let exact = 0;
    for (let x = -8; x < 10; x += 0.001) {
      const density = (mean: number) => Math.exp(-0.5 * (x - mean) ** 2) / Math.sqrt(2 * Math.PI);
      const [a, b] = [density(0), density(1500 / sd)];
      const mean = (a + b) / 2;
      exact += 0.001 * 0.5 * (a * Math.log2(a / mean) + b * Math.log2(b / mean));
    }
    const found = rankAmong([of("key-on-pressure")], alternatives)[0]!.informationBits;
    expect(found).toBeLessThan(exact);
    expect(found).toBeGreaterThan(0.9 * exact);
  });

  it("is nothing where all is known, and where the check sees none of what may be", () => {
    expect(rankAmong(CHECKS, [alone(1, LEAK)])).toEqual([]);
    expect(rankAmong([of("key-on-pressure")], [healthy(0.5), alone(0.5, LEAK)])).toEqual([]);
  });

  it("never exceeds the doubt there is", () => {
    const alternatives = [healthy(0.5), alone(0.5, sized("map-biased", 20_000))];
    for (const { informationBits } of rankAmong(CHECKS, alternatives)) expect(informationBits).toBeLessThan(1);
  });
});

describe("the order", () => {
  it("puts two minutes with a barometer before an hour, and the smoke test where a leak is in doubt", () => {
    const bias = rankAmong(CHECKS, [healthy(0.4), alone(0.6, BIAS)]).map((r) => r.check.id);
    expect(bias.indexOf("key-on-pressure")).toBe(0);
    const leak = rankAmong(CHECKS, [alone(0.6, LEAK), alone(0.4, sized("meter-scaled", 0.8, 0.9))]).map(
      (r) => r.check.id,
    );
    expect(leak.slice(0, 4)).toContain("smoke-test");
  });

  it("separates what the recording could not: meter, fuel delivery, fuel and probe", () => {
    const group = ["meter-scaled", "fuel-delivery-scaled", "fuel-composition"].map((cause) =>
      alone(0.25, sized(cause, 0.85)),
    );
    const ranked = rankAmong(CHECKS, [...group, alone(0.25, sized("lambda-biased", 0.1))]);
    const settles = new Set(ranked.flatMap((r) => r.settles));
    expect([...settles].sort()).toEqual(["fuel-composition", "fuel-delivery-scaled", "lambda-biased", "meter-scaled"]);
  });
});

describe("what a check settles", () => {
  it("is a cause that a likely result would prove or rule out", () => {
    const [ranked] = rankAmong([of("key-on-pressure")], [healthy(0.5), alone(0.5, sized("map-biased", 8000, 9000))]);
    expect(ranked!.settles).toEqual(["map-biased"]);
  });

  it("is nothing where the result would only shift the odds", () => {
    const [ranked] = rankAmong([of("oil-cap")], [healthy(0.5), alone(0.5, LEAK)]);
    expect(ranked!.informationBits).toBeGreaterThan(0);
    expect(ranked!.settles).toEqual([]);
  });
});
