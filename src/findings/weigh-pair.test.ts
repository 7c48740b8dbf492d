import { expect, it } from "vitest";
import { inventedTally } from "../../test/tally/invented-tally.ts";
import { logEvidence, prepare } from "../tally/index.ts";
import { CATALOGUE, type Cause } from "./catalogue.ts";
import { evidenceOf, together } from "./evidence-of.ts";
import { NOTHING_KNOWN } from "./known.ts";
import { logSum } from "./log-sum.ts";
import { laySizes } from "./size-grid.ts";
import { sizeQuantile } from "./size-nodes.ts";
import { logSizePrior, sidesOf, sizeAt } from "./size-scale.ts";
import { weighCause } from "./weigh-cause.ts";
import { exactCorrection, weighPair } from "./weigh-pair.ts";

const cause = (id: string): Cause => CATALOGUE.find((c) => c.id === id)!;

/** Every size of every side and form, at the middles of `n` equal steps: what the integrals are checked against. */
function everySize(c: Cause, model: ReturnType<typeof inventedTally>, n: number) {
  return sidesOf(c, model).flatMap(({ sign, share, low, high }) =>
    c.law.shapes(model).flatMap((shape) =>
      Array.from({ length: n }, (_, i) => {
        const t = low + ((high - low) * (i + 0.5)) / n;
        return {
          logPrior: Math.log((share * shape.weight * (high - low)) / n) + logSizePrior({ low, high }, t),
          prediction: c.law.predict(model, sizeAt(c, sign, t), shape.value),
        };
      }),
    ),
  );
}

const MODEL = inventedTally({
  faults: [
    { cause: "map-biased", size: 3000 },
    { cause: "fuel-delivery-scaled", size: 0.88 },
  ],
});
const HEALTHY = prepare(MODEL, null);
const BASE = logEvidence(HEALTHY, null);

it.each(["map-biased", "fuel-delivery-scaled", "manifold-leak", "breathing-reduced", "meter-offset"])(
  "integrates one size of %s as brute force does",
  (id) => {
    const c = cause(id);
    const brute = logSum(
      everySize(c, MODEL, 250).map(({ logPrior, prediction }) => logPrior + evidenceOf(prediction, HEALTHY) - BASE),
    );
    const { logRatio } = weighCause(c, laySizes([c], HEALTHY).parts.get(c)!, NOTHING_KNOWN);
    expect(logRatio).toBeCloseTo(brute, 1);
  },
);

it.each([
  ["map-biased", "fuel-delivery-scaled", 0.05],
  ["fuel-delivery-scaled", "injector-offset", 0.05],
  ["manifold-leak", "map-biased", 0.35],
  ["manifold-leak", "meter-offset", 0.35],
])("integrates two sizes of %s and %s as brute force does", (a, b, within) => {
  const [one, other] = [cause(a), cause(b)];
  const grid = laySizes([one, other], HEALTHY);
  const pair = weighPair(one, other, grid, NOTHING_KNOWN);
  const corrected = pair.logRatio + (grid.corrected ? exactCorrection(pair, grid, HEALTHY, BASE) : 0);
  const w = MODEL.witnesses.length;
  const others = everySize(other, MODEL, 30);
  const brute = logSum(
    everySize(one, MODEL, 30).flatMap((x) =>
      others.map((y) => x.logPrior + y.logPrior + evidenceOf(together(x.prediction, y.prediction, w), HEALTHY) - BASE),
    ),
  );
  expect(Math.abs(corrected - brute)).toBeLessThan(within);
});

it("holds both planted sizes in their 90 % intervals", () => {
  const [one, other] = [cause("map-biased"), cause("fuel-delivery-scaled")];
  const { nodes } = weighPair(one, other, laySizes([one, other], HEALTHY), NOTHING_KNOWN);
  expect(sizeQuantile(nodes[0], 0.05)).toBeLessThan(3000);
  expect(sizeQuantile(nodes[0], 0.95)).toBeGreaterThan(3000);
  expect(sizeQuantile(nodes[1], 0.05)).toBeLessThan(0.88);
  expect(sizeQuantile(nodes[1], 0.95)).toBeGreaterThan(0.88);
});
