// When a workshop check makes the answer "proven". The weighed explanations are written out by hand, as if results were in them.
import { describe, expect, it } from "vitest";
import { inventedTally } from "../../../test/tally/invented-tally.ts";
import { CATALOGUE, type FoundResult, type Weighed, type WeighedExplanation } from "../../findings/index.ts";
import { verdictOf } from "./verdict.ts";

const model = inventedTally();
const SMOKE: FoundResult = { check: "smoke-test", bank: null, outcome: "smoke-at-manifold", numbers: {} };
const OIL_CAP: FoundResult = { check: "oil-cap", bank: null, outcome: "no-change", numbers: {} };
const KEY_ON: FoundResult = {
  check: "key-on-pressure",
  bank: null,
  outcome: null,
  numbers: { reading: 98_950, barometer: 98_900 },
};

type Chance = { readonly cause: string; readonly size: number; readonly probability: number };

function weighedOf(healthy: number, chances: readonly Chance[]): Weighed {
  const explanations = chances.map(({ cause, size, probability }): WeighedExplanation => {
    const nodes = [{ size, shape: 0, weight: 1 }];
    return { causes: [{ cause: CATALOGUE.find((c) => c.id === cause)!, nodes }], prior: 0.1, probability };
  });
  const left = 1 - healthy - chances.reduce((sum, c) => sum + c.probability, 0);
  const causes = explanations.map(({ causes: [own], prior, probability }) => ({
    ...{ cause: own!.cause, nodes: own!.nodes, prior, probability },
    ...{ bayesFactor: 1, profile: [] },
  }));
  return {
    healthy: { prior: 0.5, probability: healthy },
    unexplained: { prior: 0.05, probability: left },
    causes,
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
