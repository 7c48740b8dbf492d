import { describe, expect, it } from "vitest";
import type { DefiniteFault } from "../known.ts";
import { CHECKS, checkById } from "./check-table.ts";
import { foundLikelihood } from "./found-likelihood.ts";
import type { FoundResult } from "./found-result.ts";
import { checkLaw } from "./law-of.ts";

const told = (check: string, outcome: string, bank: 1 | 2 | null = null): FoundResult => ({
  check,
  bank,
  outcome,
  numbers: {},
});
const read = (check: string, numbers: FoundResult["numbers"]): FoundResult => ({
  check,
  bank: null,
  outcome: null,
  numbers,
});
const fault = (cause: string, size: number, bank: 1 | 2 | null = null): DefiniteFault => ({ cause, size, bank });
const leak = (mm2: number) => fault("manifold-leak", mm2 * 1e-6);
const chance = (result: FoundResult, ...faults: DefiniteFault[]) => Math.exp(foundLikelihood([result])(faults));
/** a few sizes of a cause, SI, as a factor for those that are one */
const SIZES: { readonly [cause: string]: number } = {
  "manifold-leak": 4e-6,
  "meter-scaled": 1.2,
  "lambda-biased": 0.08,
  "egr-stuck-open": 2e-5,
  "fuel-delivery-scaled": 0.8,
  "map-biased": 6000,
  "meter-offset": 0.001,
  "fuel-unmetered": 5e-5,
};

describe("a smoke test", () => {
  const seen = told("smoke-test", "smoke-at-manifold");
  it("sees a hole of 5 mm2 more surely than one of 1 mm2, and both more than none", () => {
    const [none, small, large] = [chance(seen), chance(seen, leak(1)), chance(seen, leak(5))];
    expect(none).toBeCloseTo(0.05, 9);
    expect(small).toBeGreaterThan(5 * none!);
    expect(large).toBeGreaterThan(1.7 * small!);
    expect(large).toBeLessThan(1);
  });

  it("says nothing of a fuel fault", () => {
    expect(chance(seen, fault("fuel-delivery-scaled", 0.8))).toBe(chance(seen));
  });

  it("finds either of two holes", () => {
    const both = [leak(5), fault("leak-before-throttle", 100e-6)];
    expect(chance(told("smoke-test", "tight"), ...both)).toBeLessThan(0.01);
    expect(chance(seen, ...both)).toBeGreaterThan(0.4);
    expect(chance(told("smoke-test", "smoke-at-duct"), ...both)).toBeGreaterThan(0.4);
  });
});

describe("a pressure read with the key on", () => {
  const reading = (kPa: number) => read("key-on-pressure", { reading: 98_900 + 1000 * kPa, barometer: 98_900 });
  it("is normal about the bias", () => {
    const at = (kPa: number) => chance(reading(kPa), fault("map-biased", 4600));
    expect(at(4.6) / at(5.6)).toBeCloseTo(Math.exp(0.5), 2);
    expect(at(5.6)).toBeCloseTo(at(3.6), 3);
  });

  it("clears the sensor where it agrees, and no misreading is impossible", () => {
    expect(chance(reading(0.2)) / chance(reading(0.2), fault("map-biased", 4600))).toBeGreaterThan(100);
    expect(chance(reading(15))).toBeGreaterThan(0);
  });

  it("adds the effects of two faults", () => {
    const two = chance(reading(7), fault("map-biased", 4000), fault("map-scaled", 0.0303));
    const one = chance(reading(7), fault("map-biased", 4000));
    expect(two / one).toBeGreaterThan(10);
  });
});

describe("fuel pressure", () => {
  it("follows the square of what is delivered where pressure is the reason", () => {
    const pressures = (idle: number) => read("fuel-pressure", { idle, load: idle, stated: 300_000 });
    expect(chance(pressures(192_000), fault("fuel-delivery-scaled", 0.8))).toBeGreaterThan(
      50 * chance(pressures(192_000)),
    );
    // and injectors may be the reason, so good pressure does not clear it
    expect(chance(pressures(300_000), fault("fuel-delivery-scaled", 0.8)) / chance(pressures(300_000))).toBeCloseTo(
      0.5,
      1,
    );
  });
});

describe("of two banks", () => {
  it("a check on one says nothing of a fault that the other has alone", () => {
    const result = (bank: 1 | 2 | null) => told("exhaust-leak-test", "leak-before-probe", bank);
    const left = fault("exhaust-air-added", 0.0005, 1);
    expect(chance(result(2), left)).toBe(chance(result(2)));
    expect(chance(result(1), left)).toBeGreaterThan(5 * chance(result(1)));
    expect(chance(result(null), left)).toBe(chance(result(1), left));
  });
});

describe("results together", () => {
  it("multiply", () => {
    const a = told("smoke-test", "tight");
    const b = read("key-on-pressure", { reading: 99_500, barometer: 98_900 });
    const faults = [leak(3), fault("map-biased", 3000)];
    expect(foundLikelihood([a, b])(faults)).toBeCloseTo(
      foundLikelihood([a])(faults) + foundLikelihood([b])(faults),
      12,
    );
    expect(foundLikelihood([])(faults)).toBe(0);
  });
});

describe("every check", () => {
  const faults = Object.entries(SIZES).map(([cause, size]) => fault(cause, size));
  const sized = (set: readonly DefiniteFault[]) => set.map((f) => ({ ...f, nodes: [{ size: f.size, weight: 1 }] }));
  it.each(CHECKS.map((check) => [check.id, check] as const))(
    "%s foresees outcomes that sum to one, for none, one, two faults and the unexplained",
    (_, check) => {
      const { foresee, touches } = checkLaw(check);
      const sets = [[], ...faults.map((f) => [f]), ...faults.slice(1).map((f) => [faults[0]!, f])];
      for (const set of [...sets, "unexplained" as const]) {
        const shares = foresee(set === "unexplained" ? set : sized(set));
        expect(shares.reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 9);
        expect(Math.min(...shares)).toBeGreaterThanOrEqual(0);
      }
      for (const f of faults) if (!touches(f.cause)) expect([...foresee(sized([f]))]).toEqual([...foresee([])]);
    },
  );

  it("never counts for more than certainty, so that pairs may be screened by what they could be at most", () => {
    const known = foundLikelihood([
      told("smoke-test", "smoke-at-manifold"),
      read("second-probe", { control: 1, independent: 1.001 }),
    ]);
    for (const set of [[], ...faults.map((f) => [f])]) expect(known(set)).toBeLessThanOrEqual(0);
    expect(known("unexplained")).toBeLessThan(0);
    expect(checkById("no-such-check")).toBeUndefined();
  });
});
