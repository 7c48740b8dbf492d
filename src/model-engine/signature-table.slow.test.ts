/**
 * The table of causes, row by row, under both strategies: the sign of dM, dP and dF at idle, cruise and full load, and what the trims
 * do then, dF - dM where the meter doses and dF - dP where the pressure does. Sizes of the shifts: signatures*.test.ts.
 */
import { describe, expect, it } from "vitest";
import type { EngineDesign } from "./engine-design.ts";
import { BOOSTED_BOTH, DIESEL_WITH_EGR } from "./families.ts";
import { type Fault, PLANTABLE, type PlantableCause } from "./fault.ts";
import { PETROL_WITH_VANE, PETROL_WITH_VORTEX } from "./older-families.ts";
import { AS_METER, AS_PRESSURE, shiftOf } from "./signature-rig.ts";

/** One sign each for idle, cruise and full load: "+", "-", "0" for nothing, "." where the row leaves it open. */
type Row = { readonly fault: Fault; readonly meter: string; readonly pressure: string; readonly fuel: string };
const row = (fault: Fault, meter: string, pressure: string, fuel: string): Row => ({ fault, meter, pressure, fuel });

const TABLE: readonly Row[] = [
  row({ cause: "meter-fouled", size: -0.15 }, "0--", "000", "000"),
  row({ cause: "meter-scaled", size: 0.85 }, "---", "000", "000"),
  row({ cause: "meter-scaled", size: 1.15 }, "+++", "000", "000"),
  row({ cause: "meter-offset", size: 0.4 }, "++.", "000", "000"),
  row({ cause: "meter-offset", size: -0.4 }, "--.", "000", "000"),
  row({ cause: "meter-curve-wrong", size: -0.1, errorAt30: 0.12 }, "+.-", "000", "000"),
  row({ cause: "meter-pulsation", size: -0.15 }, "000", "000", "000"), // its band lies between the three: signatures-of-parts
  row({ cause: "intake-restricted", size: 8 }, "000", "000", "000"),
  row({ cause: "leak-before-throttle", size: 150 }, "---", "000", "000"),
  row({ cause: "manifold-leak", size: 3 }, "--0", "000", "000"),
  row({ cause: "throttle-area-changed", size: -6 }, "000", "000", "000"),
  row({ cause: "map-biased", size: 3 }, "000", "+++", "000"),
  row({ cause: "map-biased", size: -3 }, "000", "---", "000"),
  row({ cause: "map-scaled", size: -0.1 }, "000", "++0", "000"),
  row({ cause: "map-scaled", size: 0.08, pivot: "zero" }, "000", "+++", "000"),
  row({ cause: "intake-temperature-biased", size: 15 }, "000", "---", "000"),
  row({ cause: "baro-biased", size: 4 }, "000", "000", "000"),
  row({ cause: "egr-stuck-open", size: 4 }, "000", "++0", "000"),
  row({ cause: "breathing-reduced", size: -0.2 }, "000", "0++", "000"),
  row({ cause: "valve-timing-shifted", size: 12 }, "000", "++.", "000"),
  row({ cause: "misfire", size: 0.06 }, "000", "000", "+++"),
  row({ cause: "fuel-delivery-scaled", size: 0.88 }, "000", "000", "+++"),
  row({ cause: "fuel-delivery-scaled", size: 1.12 }, "000", "000", "---"),
  row({ cause: "fuel-supply-limited", size: 2.5, loss: 0.3 }, "000", "000", "00+"),
  row({ cause: "fuel-pressure-reference", size: 70 }, "000", "000", "--0"),
  row({ cause: "fuel-unmetered", size: 0.03 }, "000", "000", "--."),
  row({ cause: "fuel-composition", size: 0.93 }, "000", "000", "+++"),
  row({ cause: "injector-offset", size: 0.3 }, "000", "000", "++."),
  row({ cause: "exhaust-air-added", size: 0.4 }, "000", "000", "+.0"),
  row({ cause: "lambda-biased", size: 0.05 }, "000", "000", "+++"),
];

/** Causes of engines that the two strategies' engine is not: the shift of one witness there, at one place. */
const ELSEWHERE: readonly (readonly [Fault, EngineDesign, "idle" | "cruise" | "full", "meter" | "pressure", string])[] =
  [
    [{ cause: "vane-tilted", size: 0.08 }, PETROL_WITH_VANE, "idle", "meter", "-"],
    [{ cause: "vane-tilted", size: -0.08 }, PETROL_WITH_VANE, "idle", "meter", "+"],
    [{ cause: "boost-leak", size: 25 }, BOOSTED_BOTH, "full", "meter", "+"],
    [{ cause: "boost-leak", size: 25 }, BOOSTED_BOTH, "idle", "meter", "0"],
    [{ cause: "egr-low-flow", size: 0.1 }, DIESEL_WITH_EGR, "idle", "pressure", "-"],
    [{ cause: "baro-biased", size: 5 }, PETROL_WITH_VORTEX, "cruise", "meter", "+"],
    [{ cause: "intake-temperature-biased", size: 20 }, PETROL_WITH_VORTEX, "cruise", "meter", "-"],
  ];

const NOTHING = 0.02; // limit cycle, purge, and what a shifted idle does to the charge
function hasSign(x: number, sign: string, where: string): void {
  if (sign === "0") expect(Math.abs(x), where).toBeLessThan(NOTHING);
  if (sign === "+") expect(x, where).toBeGreaterThan(0.003);
  if (sign === "-") expect(x, where).toBeLessThan(-0.003);
}

const PARTS = ["idle", "cruise", "full"] as const;
const strategies = { meter: AS_METER, pressure: AS_PRESSURE } as const;

describe("the table of causes", () => {
  it("has every cause that can be planted", () => {
    const told = new Set<PlantableCause>([
      ...TABLE.map((r) => r.fault.cause),
      ...ELSEWHERE.map(([fault]) => fault.cause),
    ]);
    expect([...told].sort()).toEqual(Object.keys(PLANTABLE).sort());
  });

  for (const strategy of ["meter", "pressure"] as const) {
    it(`holds by sign where the ${strategy} doses, and the trims are the fuel side less what doses`, () => {
      for (const { fault, meter, pressure, fuel } of TABLE) {
        const shifts = shiftOf(fault, strategies[strategy]);
        PARTS.forEach((part, i) => {
          const s = shifts[part];
          const where = `${fault.cause} ${fault.size} ${part} by ${strategy}`;
          hasSign(s.meter, meter[i]!, `${where}: meter`);
          hasSign(s.pressure, pressure[i]!, `${where}: pressure`);
          hasSign(s.fuel, fuel[i]!, `${where}: fuel`);
          if (part === "full") return; // open loop
          const believed = strategy === "meter" ? s.meter : s.pressure;
          // The computer looks its efficiency up at the pressure it reads: a quarter of dP more, at most.
          const lookedUp = strategy === "meter" ? 0 : 0.25 * Math.abs(s.pressure);
          expect(Math.abs(s.trim - (s.fuel - believed)), `${where}: trim`).toBeLessThan(NOTHING + lookedUp);
        });
      }
    });
  }

  it("holds by sign for the causes of other engines", () => {
    for (const [fault, design, part, witness, sign] of ELSEWHERE) {
      hasSign(shiftOf(fault, design)[part][witness], sign, `${fault.cause} ${design.note} ${part}`);
    }
  });
});
