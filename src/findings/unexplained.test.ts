import { expect, it } from "vitest";
import { inventedTally } from "../../test/tally/invented-tally.ts";
import { prepare } from "../tally/index.ts";
import { misfit } from "./misfit.ts";
import { explanationPrediction } from "./own-prediction.ts";
import { strayOf } from "./unexplained.ts";
import { weighAll } from "./weigh-all.ts";

/** A fault that no cause describes: the fuel side lean about one speed and pressure, rich about another. */
function strange(amount: number) {
  const model = inventedTally();
  const w = model.witnesses.length;
  const j = model.witnesses.indexOf("fuel");
  const bump = (i: number, speed: number, pressure: number) =>
    Math.exp(
      -((Math.log((model.physics.speed[i]! * 60) / speed) / 0.35) ** 2) -
        (Math.log(model.physics.pressure[i]! / pressure / 1000) / 0.35) ** 2,
    );
  const y = model.y.map((value, row) => {
    if (row % w !== j) return value;
    const i = Math.floor(row / w);
    return value + amount * (bump(i, 2500, 55) - bump(i, 4500, 97));
  });
  return prepare({ ...model, y }, null);
}

it("says that a shape no cause describes is not in the catalogue, and more surely the larger it is", () => {
  const chances = [0, 0.03, 0.05, 0.2].map((amount) => weighAll(strange(amount)).unexplained.probability);
  expect(chances[0]).toBeLessThan(0.05);
  expect(chances[3]).toBeGreaterThan(0.8);
  for (let n = 1; n < chances.length; n++) expect(chances[n]).toBeGreaterThanOrEqual(chances[n - 1]!);
});

it("says which witness departs by itself, and where", () => {
  const prepared = strange(0.25);
  const { witness, mean, sd } = strayOf(prepared)!;
  expect(witness).toBe("fuel");
  const clearest = mean
    .map((m, i) => Math.abs(m) / sd[i]!)
    .indexOf(Math.max(...mean.map((m, i) => Math.abs(m) / sd[i]!)));
  const speed = prepared.model.physics.speed[clearest]! * 60;
  expect([2000, 2500, 4500, 5500]).toContain(Math.round(speed));
});

it("finds scatter as stated no misfit, and thrice the scatter one", () => {
  const healthy = (noise: number) => prepare(inventedTally({ noise }), null);
  const none = (prepared: ReturnType<typeof healthy>) => ({
    effect: new Float64Array(prepared.model.y.length),
    response: null,
    logAir: null,
    standing: [],
  });
  const calm = healthy(0.004);
  expect(misfit(none(calm), calm).probability).toBeGreaterThan(0.001);
  const wild = healthy(0.06);
  expect(misfit(none(wild), wild).probability).toBeLessThan(1e-6);
  const leak = prepare(inventedTally({ faults: [{ cause: "manifold-leak", size: 8e-6 }] }), null);
  const best = weighAll(leak).explanations[0]!;
  expect(misfit(explanationPrediction(best, leak), leak).probability).toBeGreaterThan(1e-3);
  expect(misfit(none(leak), leak).statistic).toBeGreaterThan(misfit(explanationPrediction(best, leak), leak).statistic);
});
