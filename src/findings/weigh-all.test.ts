import { describe, expect, it } from "vitest";
import { inventedTally } from "../../test/tally/invented-tally.ts";
import { prepare } from "../tally/index.ts";
import type { Known } from "./known.ts";
import { type Weighed, weighAll } from "./weigh-all.ts";

const chanceOf = (weighed: Weighed, ...ids: string[]) =>
  weighed.explanations
    .filter((e) => e.causes.length === ids.length && ids.every((id) => e.causes.some((c) => c.cause.id === id)))
    .reduce((sum, e) => sum + e.probability, 0);

const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);

describe("the probabilities", () => {
  const cases = [
    { title: "a healthy engine", faults: [] },
    { title: "one fault", faults: [{ cause: "manifold-leak", size: 5e-6 }] },
    {
      title: "two faults",
      faults: [
        { cause: "manifold-leak", size: 6e-6 },
        { cause: "map-biased", size: 4000 },
      ],
    },
  ];
  it.each(cases)("of healthy, explanations and unexplained sum to one on $title", ({ faults }) => {
    const { healthy, unexplained, explanations, screened } = weighAll(prepare(inventedTally({ faults }), null));
    const all = healthy.probability + unexplained.probability + sum(explanations.map((e) => e.probability));
    expect(all).toBeCloseTo(1, 9);
    expect(screened).toBeLessThan(5e-3);
    const priors = healthy.prior + unexplained.prior + sum(explanations.map((e) => e.prior));
    expect(priors).toBeLessThanOrEqual(1 + 1e-9);
    expect(priors).toBeGreaterThan(0.9);
  });

  it("of a cause are those of all explanations that name it", () => {
    const weighed = weighAll(prepare(inventedTally({ faults: cases[2]!.faults }), null));
    for (const cause of weighed.causes) {
      const own = weighed.explanations.filter((e) => e.causes.some((c) => c.cause === cause.cause));
      expect(cause.probability).toBeCloseTo(sum(own.map((e) => e.probability)), 12);
      expect(sum(cause.nodes.map((n) => n.weight))).toBeCloseTo(1, 3);
    }
  });
});

it("calls an engine whose witnesses agree healthy, and one with a leak leaking", () => {
  expect(weighAll(prepare(inventedTally(), null)).healthy.probability).toBeGreaterThan(0.8);
  const leak = weighAll(prepare(inventedTally({ faults: [{ cause: "manifold-leak", size: 5e-6 }] }), null));
  expect(leak.causes[0]!.cause.id).toBe("manifold-leak");
  expect(leak.healthy.probability).toBeLessThan(0.02);
});

it("finds two faults at once as a pair, where neither alone explains both", () => {
  const faults = [
    { cause: "manifold-leak", size: 6e-6 },
    { cause: "fuel-delivery-scaled", size: 0.8 },
  ];
  const weighed = weighAll(prepare(inventedTally({ faults }), null));
  const pair = chanceOf(weighed, "manifold-leak", "fuel-delivery-scaled");
  expect(pair).toBeGreaterThan(10 * chanceOf(weighed, "manifold-leak"));
  expect(pair).toBeGreaterThan(10 * chanceOf(weighed, "fuel-delivery-scaled"));
  expect(weighed.causes.slice(0, 2).map((c) => c.cause.id)).toContain("manifold-leak");
});

it("leaves a cause that nothing here sees at its prior odds, alone and beside a fault that is found", () => {
  for (const faults of [[], [{ cause: "map-biased", size: 4000 }]]) {
    const weighed = weighAll(prepare(inventedTally({ faults }), null));
    const { healthy, explanations, causes } = weighed;
    const unseen = causes.find((c) => c.cause.id === "throttle-area-changed")!;
    expect(unseen.bayesFactor).toBeCloseTo(1, 6);
    const priorOf = (...ids: string[]) =>
      sum(
        explanations
          .filter((e) => e.causes.length === ids.length && ids.every((id) => e.causes.some((c) => c.cause.id === id)))
          .map((e) => e.prior),
      );
    const odds = chanceOf(weighed, "throttle-area-changed") / healthy.probability;
    expect(odds / (priorOf("throttle-area-changed") / healthy.prior)).toBeCloseTo(1, 6);
    if (faults.length === 0) continue;
    const beside = chanceOf(weighed, "map-biased", "throttle-area-changed") / chanceOf(weighed, "map-biased");
    const before = priorOf("map-biased", "throttle-area-changed") / priorOf("map-biased");
    expect(beside / before).toBeCloseTo(1, 2);
  }
});

it("moves by a workshop check exactly as the product of likelihoods says, pairs included", () => {
  const prepared = prepare(inventedTally({ faults: [{ cause: "manifold-leak", size: 1.5e-6 }] }), null);
  const seen = 0.9;
  const unseen = 0.05;
  const known: Known = (faults) =>
    Math.log(faults !== "unexplained" && faults.some((f) => f.cause === "manifold-leak") ? seen : unseen);
  const before = weighAll(prepared);
  const after = weighAll(prepared, known);
  const leak = before.causes.find((c) => c.cause.id === "manifold-leak")!.probability;
  const expected = (leak * seen) / (leak * seen + (1 - leak) * unseen);
  expect(after.causes.find((c) => c.cause.id === "manifold-leak")!.probability).toBeCloseTo(expected, 2);
});

it("lets a two-bank engine have a fault on one bank alone, and says which", () => {
  const engine = { banks: 2, cylinders: 6, displacement: "2 L" };
  const model = inventedTally({ engine });
  const j = model.witnesses.indexOf("fuel-bank2");
  const w = model.witnesses.length;
  const y = model.y.map((value, row) => (row % w === j ? value + 0.15 : value));
  const first = weighAll(prepare({ ...model, y }, null)).causes[0]!;
  expect(first.cause.bank).toBe(2);
});
