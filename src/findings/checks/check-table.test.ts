// The table is data, and data rots silently: what would make a check useless or impossible fails here.
import { describe, expect, it } from "vitest";
import { CATALOGUE } from "../catalogue.ts";
import type { ShareRow, WordsCheck } from "./check-entry.ts";
import { CHECKS } from "./check-table.ts";

/** every cause of design and catalogue, whether or not it has a law yet */
const CAUSES = [
  ...["meter-fouled", "meter-scaled", "meter-offset", "meter-curve-wrong", "vane-tilted", "meter-pulsation"],
  ...["intake-restricted", "leak-before-throttle", "boost-leak", "manifold-leak", "throttle-area-changed"],
  ...["map-biased", "map-scaled", "intake-temperature-biased", "baro-biased", "egr-stuck-open", "egr-low-flow"],
  ...["breathing-reduced", "valve-timing-shifted", "misfire", "fuel-delivery-scaled", "fuel-supply-limited"],
  ...["fuel-pressure-reference", "fuel-unmetered", "fuel-composition", "injector-offset", "exhaust-air-added"],
  "lambda-biased",
];
const told = CHECKS.filter((check) => check.kind === "words");
const read = CHECKS.filter((check) => check.kind === "number");
const largest = (check: WordsCheck, row: ShareRow) =>
  Math.max(...row.shares.map((share, o) => share / check.default.shares[o]!));

describe("the table of checks", () => {
  it("covers the causes of the catalogue and names no other", () => {
    expect(CATALOGUE.filter((cause) => !CAUSES.includes(cause.id))).toEqual([]);
    const named = new Set(CHECKS.flatMap((check) => check.rows.flatMap((row) => row.causes)));
    expect([...named].filter((id) => !CAUSES.includes(id))).toEqual([]);
    expect(CAUSES.filter((id) => !named.has(id))).toEqual([]);
  });

  it("has for every cause a check that can raise its odds tenfold", () => {
    const settled = new Set([
      ...read.flatMap((check) => check.rows.flatMap((row) => row.causes)),
      ...told.flatMap((check) =>
        check.rows.filter((row) => largest(check, row) >= 10).flatMap((row) => [...row.causes]),
      ),
    ]);
    expect(CAUSES.filter((id) => !settled.has(id))).toEqual([]);
  });

  it("gives every check an own id, minutes, tools, and says how", () => {
    expect(new Set(CHECKS.map((c) => c.id)).size).toBe(CHECKS.length);
    for (const { id, minutes, how, needs } of CHECKS) {
      expect(minutes, id).toBeGreaterThan(0);
      expect(how.length, id).toBeGreaterThan(60);
      expect(needs.length, id).toBeGreaterThan(3);
    }
  });

  it("gives every row its standing", () => {
    for (const check of CHECKS)
      for (const { standing } of [check.default, ...check.rows]) expect(standing, check.id).toMatch(/.{20}/);
  });

  it("names each cause once in a check", () => {
    for (const check of CHECKS) {
      const causes = check.rows.flatMap((row) => row.causes);
      expect(new Set(causes).size, check.id).toBe(causes.length);
    }
  });
});

describe("checks told in words", () => {
  it.each(told.map((check) => [check.id, check] as const))(
    "%s has shares that sum to one, none of them 0 or 1",
    (_, check) => {
      expect(check.outcomes.length).toBeGreaterThan(1);
      expect(check.outcomes.length).toBeLessThan(5);
      for (const { shares } of [check.default, ...check.rows]) {
        expect(shares).toHaveLength(check.outcomes.length);
        expect(shares.reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 9);
        expect(Math.min(...shares)).toBeGreaterThan(0);
        expect(Math.max(...shares)).toBeLessThan(1);
      }
    },
  );

  it.each(told.map((check) => [check.id, check] as const))(
    "%s tells something of a cause, by odds of four at least",
    (_, check) => {
      expect(Math.max(...check.rows.map((row) => largest(check, row)))).toBeGreaterThan(4);
      for (const { shares, causes } of check.rows)
        expect(
          shares.some((p, o) => Math.abs(p - check.default.shares[o]!) > 0.02),
          `${causes}`,
        ).toBe(true);
    },
  );

  it.each(told.map((check) => [check.id, check] as const))(
    "%s shows nothing, most often, on a healthy engine",
    (_, check) => {
      expect(check.default.shares[0]).toBeGreaterThan(0.8);
    },
  );
});

describe("checks read as numbers", () => {
  it.each(read.map((check) => [check.id, check] as const))(
    "%s asks for what its values need, and shifts at least one of them",
    (_, check) => {
      const keys = check.asks.map((ask) => ask.key);
      for (const value of check.values) {
        expect(keys).toContain(value.of);
        if (value.against !== null) expect(keys).toContain(value.against);
        expect(value.sd).toBeGreaterThan(0);
      }
      for (const { parts } of check.rows) {
        expect(parts.reduce((sum, part) => sum + part.weight, 0)).toBeCloseTo(1, 9);
        for (const part of parts) expect(part.shifts).toHaveLength(check.values.length);
        expect(parts.some((part) => part.shifts.some((shift) => shift.per !== "none"))).toBe(true);
      }
    },
  );
});
