import { describe, expect, it } from "vitest";
import { FAMILIES, PLANTABLE } from "../../src/model-engine/index.ts";
import { CASE_PARAMETERS } from "./case-parameters.ts";
import { drawCase, recordCase } from "./draw-case.ts";
import { canHave } from "./draw-faults.ts";

const tuning = Array.from({ length: 300 }, (_, i) => drawCase("tuning", i));
const final = Array.from({ length: 200 }, (_, i) => drawCase("final", i));
const withheld = {
  variant: CASE_PARAMETERS.variants.filter((v) => v.withheld).map((v) => v.variant),
  geometry: CASE_PARAMETERS.geometries.filter((g) => g.withheld).map((g) => g.geometry),
  driver: CASE_PARAMETERS.drivers.filter((d) => d.withheld).map((d) => d.driver),
};

describe("drawCase", () => {
  it("withholds one variant, one geometry and one driver from tuning; every final case has at least one of them", () => {
    expect([withheld.variant, withheld.geometry, withheld.driver].map((names) => names.length)).toEqual([1, 1, 1]);
    const seen = (one: (typeof tuning)[number]) =>
      [
        withheld.variant.includes(one.variant),
        withheld.geometry.includes(one.geometry),
        withheld.driver.includes(one.driver),
      ].filter(Boolean).length;
    expect(tuning.every((one) => seen(one) === 0)).toBe(true);
    expect(final.every((one) => seen(one) >= 1)).toBe(true);
  });

  it("draws healthy engines and families as often as stated, within four standard errors", () => {
    const within = (count: number, share: number) =>
      expect(Math.abs(count / tuning.length - share)).toBeLessThan(
        4 * Math.sqrt((share * (1 - share)) / tuning.length),
      );
    within(tuning.filter((one) => one.faults.length === 0).length, CASE_PARAMETERS.healthyShare);
    within(
      tuning.filter((one) => one.faults.length === 2).length,
      (1 - CASE_PARAMETERS.healthyShare) * CASE_PARAMETERS.pairShare,
    );
    const all = CASE_PARAMETERS.families.reduce((sum, row) => sum + row.weight, 0);
    for (const { family, weight } of CASE_PARAMETERS.families) {
      within(tuning.filter((one) => one.family === family).length, weight / all);
    }
  });

  it("plants every cause of the catalogue somewhere, only where the engine can have it, inside the stated sizes", () => {
    expect(CASE_PARAMETERS.causes.map((row) => row.cause).sort()).toEqual(Object.keys(PLANTABLE).sort());
    expect(CASE_PARAMETERS.families.map((row) => row.family).sort()).toEqual([...FAMILIES].sort());
    for (const one of [...tuning, ...final]) {
      const litres = one.engine.design.displacement * 1e3;
      for (const { cause, size, bank } of one.faults) {
        const row = CASE_PARAMETERS.causes.find((r) => r.cause === cause)!;
        expect(canHave(row, one.family, one.engine.design), `${cause} of ${one.family}`).toBe(true);
        if (bank !== undefined) expect([row.ofOneBank, one.engine.design.banks]).toEqual([true, 2]);
        const acted = row.per === "litre" ? litres / (bank === undefined ? 1 : 2) : 1;
        const plain = row.law === "share" ? Math.abs(size - 1) : size / acted;
        const measured = row.signs === 2 ? Math.abs(plain) : plain;
        expect(measured).toBeGreaterThanOrEqual(row.low - 1e-9);
        expect(measured).toBeLessThanOrEqual(row.high + 1e-9);
      }
    }
  });

  it("gives the same case for the same number and another for another", () => {
    expect(drawCase("tuning", 7)).toEqual(tuning[7]);
    expect(drawCase("tuning", 8).seed).not.toBe(tuning[7]!.seed);
  });

  it("records a case of each family with every truth finite", () => {
    for (const family of FAMILIES) {
      const { bytes, truth } = recordCase(
        tuning.find((one) => one.family === family && one.recorderName === "tester")!,
      );
      expect(bytes.filter((byte) => byte === 10).length).toBeGreaterThan(1000);
      expect(truth.airIntoCylinders.every(Number.isFinite), family).toBe(true);
    }
  });
});
