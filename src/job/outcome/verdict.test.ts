// When a workshop check makes the answer "proven", and how two faults are told. The weighed explanations are written out by hand, as if results were in them.
import { describe, expect, it } from "vitest";
import { inventedTally } from "../../../test/tally/invented-tally.ts";
import { CATALOGUE, type FoundResult, type Weighed, type WeighedExplanation } from "../../findings/index.ts";
import { verdictOf } from "./verdict.ts";
import { waysOf } from "./ways.ts";

const model = inventedTally();
const SMOKE: FoundResult = { check: "smoke-test", bank: null, outcome: "smoke-at-manifold", numbers: {} };
const OIL_CAP: FoundResult = { check: "oil-cap", bank: null, outcome: "no-change", numbers: {} };
const KEY_ON: FoundResult = {
  check: "key-on-pressure",
  bank: null,
  outcome: null,
  numbers: { reading: 98_950, barometer: 98_900 },
};

type Chance = { readonly cause: string; readonly size: number; readonly probability: number; readonly and?: string };

function weighedOf(healthy: number, chances: readonly Chance[]): Weighed {
  const named = (id: string) => CATALOGUE.find((c) => c.id === id)!;
  const explanations = chances.map(({ cause, and, size, probability }): WeighedExplanation => {
    const nodes = [{ size, shape: 0, weight: 1 }];
    const causes = [cause, ...(and === undefined ? [] : [and])].map((id) => ({ cause: named(id), nodes }));
    return { causes, prior: 0.01, probability };
  });
  const left = 1 - healthy - chances.reduce((sum, c) => sum + c.probability, 0);
  const causes = [...new Set(explanations.flatMap((e) => e.causes.map((c) => c.cause)))].map((cause) => {
    const own = explanations.filter((e) => e.causes.some((c) => c.cause === cause));
    const probability = own.reduce((sum, e) => sum + e.probability, 0);
    return { cause, nodes: own[0]!.causes[0]!.nodes, prior: 0.02, probability, bayesFactor: 1, profile: [] };
  });
  return {
    healthy: { prior: 0.5, probability: healthy },
    unexplained: { prior: 0.05, probability: left },
    causes: causes.sort((a, b) => b.probability - a.probability),
    explanations,
    screened: 0,
  } as unknown as Weighed;
}

const answer = (weighed: Weighed, ...found: FoundResult[]) =>
  verdictOf({ weighed, visibility: { groups: [], invisible: [] }, model, found });
const leak = (probability: number): Chance => ({ cause: "manifold-leak", size: 5e-6, probability });

describe("the answer", () => {
  it("is proven where one cause has 95 % and a check speaks for it tenfold, and names the check", () => {
    const verdict = answer(weighedOf(0.02, [leak(0.97)]), SMOKE);
    expect(verdict.answer).toBe("proven");
    expect(verdict.summary).toMatch(/A workshop check settled it: smoke test .*\(smoke after the throttle/);
    expect(verdict.leading.map((c) => c.cause.id)).toEqual(["manifold-leak"]);
  });

  it("stays likely without a check, with less than 95 %, and with a check that says little", () => {
    expect(answer(weighedOf(0.02, [leak(0.97)])).answer).toBe("likely");
    expect(answer(weighedOf(0.05, [leak(0.94)]), SMOKE).answer).toBe("likely");
    expect(answer(weighedOf(0.02, [leak(0.97)]), OIL_CAP).answer).toBe("likely");
  });

  it("stays likely where the check fits what else is possible as well", () => {
    const other: Chance = { cause: "fuel-unmetered", size: 5e-5, probability: 0.02 };
    const two = weighedOf(0, [leak(0.96), { ...other, probability: 0.04 }]);
    const clamped: FoundResult = { check: "hoses-clamped", bank: null, outcome: "breather", numbers: {} };
    expect(answer(two, clamped).answer).toBe("likely");
  });

  it("is proven healthy where a check cleared what was suspected", () => {
    const suspected: Chance = { cause: "map-biased", size: 6000, probability: 0.002 };
    const verdict = answer(weighedOf(0.998, [suspected]), KEY_ON);
    expect(verdict.answer).toBe("proven");
    expect(verdict.leading).toEqual([]);
    expect(answer(weighedOf(0.998, [suspected])).answer).toBe("healthy");
  });
});

describe("two faults at once", () => {
  const pair = (probability: number, cause = "manifold-leak"): Chance => ({
    ...{ cause, size: 5e-6, probability },
    and: "exhaust-air-added",
  });

  it("are both named where the pair has most of the chance, and the second as possible where it has a part", () => {
    const both = answer(weighedOf(0.01, [pair(0.9), leak(0.05)]));
    expect(both.answer).toBe("likely");
    expect(both.headline).toMatch(/^Two faults at once: air enters .* and air enters .*\.$/);
    expect(both.summary).toContain("The second fault: ");
    const perhaps = answer(weighedOf(0.01, [leak(0.7), pair(0.25)]));
    expect(perhaps.headline).toBe("Air enters after the throttle.");
    expect(perhaps.summary).toContain("A second fault beside it is possible (3 in 10): air enters the exhaust");
    expect(answer(weighedOf(0.01, [leak(0.9), pair(0.05)])).summary).not.toContain("second fault");
  });

  it("that differ only in what looks alike are told once, with the sum of their chances", () => {
    const weighed = weighedOf(0.05, [pair(0.3), pair(0.25, "meter-offset"), leak(0.1)]);
    const alike = weighed.causes.filter((c) => c.cause.id !== "exhaust-air-added");
    const visibility = { groups: [alike], invisible: [] };
    const [first, second] = waysOf(weighed, visibility);
    expect(first?.probability).toBeCloseTo(0.55, 12);
    expect(first?.parts.map((part) => part.map((c) => c.id))).toEqual([
      ["manifold-leak", "meter-offset"],
      ["exhaust-air-added"],
    ]);
    expect(second?.parts).toHaveLength(1);
    const open = verdictOf({ weighed: { ...weighed, causes: [weighed.causes[0]!] }, visibility, model, found: [] });
    expect(open.headline).toBe("Not settled. Most probably two faults at once.");
    expect(open.summary).toMatch(
      /^Still possible: two faults at once, air enters the exhaust .* \(or the air meter's .*\), 6 in 10; something not/,
    );
  });

  it("one of which this recording cannot see are one fault", () => {
    const weighed = weighedOf(0.05, [leak(0.3), pair(0.25)]);
    const unseen = weighed.causes.filter((c) => c.cause.id === "exhaust-air-added");
    const ways = waysOf(weighed, { groups: [], invisible: unseen });
    expect(ways).toHaveLength(1);
    expect(ways[0]?.probability).toBeCloseTo(0.55, 12);
  });
});
