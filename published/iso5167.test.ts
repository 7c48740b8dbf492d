/** Orifice plates and nozzles against ISO 5167: independent evaluations of its equations and its printed nozzle tables. */
import { describe, it } from "vitest";
import { isaNozzle, longRadiusNozzle, venturiNozzle } from "../src/gas/flow-nozzle.ts";
import {
  differentialPressureFlow,
  nozzleExpansibility,
  type OrificeTaps,
  orificeDischargeCoefficient,
  orificeExpansibility,
  orificePermanentLoss,
} from "../src/gas/index.ts";
import type * as plate from "../src/gas/orifice-plate.ts";
import { type CheckRecord, expected, input, record, recordsNamed } from "./check-records.ts";
import { expectDigits, expectRecord } from "./matched-digits.ts";
import { expectCoefficientMatters } from "./mutant.ts";

const TOPIC = "03-orifice-and-nozzle";
const PARTS = { corner: "corner", flange: "flange", "D and D/2": "D_D2" } as const;

function checkCoefficient(module: Pick<typeof plate, "orificeDischargeCoefficient">): void {
  for (const row of recordsNamed(TOPIC, "rhg.D0")) {
    for (const [taps, part] of Object.entries(PARTS)) {
      const value = module.orificeDischargeCoefficient({
        pipeDiameter: input(row, "D_m"),
        diameterRatio: input(row, "beta"),
        reynolds: input(row, "ReD"),
        taps: taps as OrificeTaps,
      });
      expectRecord(value, row, { part });
    }
  }
}

function checkExpansibility(module: Pick<typeof plate, "orificeExpansibility">): void {
  for (const row of recordsNamed(TOPIC, "eps.orifice.b")) {
    const ratio = 1 - input(row, "dp_mbar") / (input(row, "p1_bar") * 1000);
    expectRecord(module.orificeExpansibility(input(row, "beta"), ratio, input(row, "kappa")), row);
  }
}

function checkTable(prefix: string, coefficient: (diameterRatio: number, reynolds: number) => number): void {
  for (const row of recordsNamed(TOPIC, prefix)) {
    const reynolds = row.inputs.ReD as number[];
    const table = row.expected as number[];
    for (const [i, value] of table.entries()) {
      const one: CheckRecord = { ...row, expected: value, id: `${row.id} Re ${reynolds[i]}` };
      expectRecord(coefficient(input(row, "beta"), reynolds[i] ?? Number.NaN), one);
    }
  }
}

function checkVenturiNozzle(nozzle: typeof venturiNozzle): void {
  for (const row of recordsNamed(TOPIC, "venturinozzle."))
    expectRecord(nozzle.coefficient(input(row, "beta"), Number.NaN), row);
}

describe("iso5167-2", () => {
  it("gives the discharge coefficient (4) for the three tappings", () =>
    checkCoefficient({ orificeDischargeCoefficient }));

  it("gives the discharge coefficient at a given flow of air", () => {
    for (const row of recordsNamed(TOPIC, "rhg.air.")) {
      const pipeDiameter = input(row, "D_m");
      const reynolds = (4 * input(row, "mdot_kg_s")) / (Math.PI * pipeDiameter * input(row, "mu"));
      const diameterRatio = input(row, "d_m") / pipeDiameter;
      const taps = row.inputs.taps as OrificeTaps;
      expectRecord(orificeDischargeCoefficient({ pipeDiameter, diameterRatio, reynolds, taps }), row);
    }
  });

  it("gives the expansibility (5)", () => {
    checkExpansibility({ orificeExpansibility });
    const row = record(TOPIC, "eps.orifice.std");
    const ratio = input(row, "p2_Pa") / input(row, "p1_Pa");
    expectRecord(orificeExpansibility(input(row, "d_m") / input(row, "D_m"), ratio, input(row, "kappa")), row);
  });

  it("departs from the expansibility of the older edition by less than 0.1 % at one per cent pressure drop", () => {
    const row = record(TOPIC, "eps.1989");
    const ratio = input(row, "p2_Pa") / input(row, "p1_Pa");
    const ours = orificeExpansibility(input(row, "d_m") / input(row, "D_m"), ratio, input(row, "kappa"));
    expectDigits(ours, expected(row), 3);
  });

  it("gives the mass flow, iterated over the Reynolds number", () => {
    for (const row of recordsNamed(TOPIC, "mdot.solve.")) {
      const upstreamPressure = input(row, "p1_Pa");
      const flow = differentialPressureFlow(
        {
          kind: "orifice-plate",
          taps: row.inputs.taps === "flange" ? "flange" : "D and D/2",
          pipeDiameter: input(row, "D_m"),
          boreDiameter: input(row, "d_m"),
        },
        {
          upstreamPressure,
          pressureDrop: upstreamPressure - input(row, "p2_Pa"),
          upstreamDensity: input(row, "rho"),
          viscosity: input(row, "mu"),
          gamma: input(row, "kappa"),
        },
      );
      // A liquid does not expand; the record was computed with the expansibility of its kappa all the same.
      expectRecord(flow.massFlow, row);
    }
  });

  it("gives the permanent pressure loss (7)", () => {
    const row = record(TOPIC, "loss.orifice");
    const drop = input(row, "p1_Pa") - input(row, "p2_Pa");
    expectRecord(orificePermanentLoss(drop, input(row, "d_m") / input(row, "D_m"), input(row, "C")), row);
  });
});

describe("iso5167-3", () => {
  it("gives table A.1, ISA 1932 nozzle", () => checkTable("isa1932.", isaNozzle.coefficient));
  it("gives table A.2, long-radius nozzle", () => checkTable("longradius.", longRadiusNozzle.coefficient));
  it("gives the Venturi nozzle's coefficient worked by hand (formula from memory)", () =>
    checkVenturiNozzle(venturiNozzle));
  it("gives the expansibility", () => {
    const row = record(TOPIC, "eps.nozzle.iso5167-4");
    const ratio = input(row, "p2_Pa") / input(row, "p1_Pa");
    expectRecord(nozzleExpansibility(input(row, "d_m") / input(row, "D_m"), ratio, input(row, "kappa")), row);
  });
});

describe("iso5167-1", () => {
  it("gives the mass flow of equation (1) for a stated coefficient and expansibility", () => {
    const row = record(TOPIC, "mdot.air.orifice");
    const upstreamPressure = input(row, "p1_Pa");
    const flow = differentialPressureFlow(
      { kind: "orifice-plate", pipeDiameter: input(row, "D_m"), boreDiameter: input(row, "d_m") },
      {
        upstreamPressure,
        pressureDrop: upstreamPressure - input(row, "p2_Pa"),
        upstreamDensity: input(row, "rho"),
        viscosity: 1.82e-5,
        gamma: 1.4,
      },
    );
    const stated =
      (flow.massFlow * input(row, "C") * input(row, "eps")) / (flow.dischargeCoefficient * flow.expansibility);
    expectRecord(stated, row);
  });
});

describe("these checks", () => {
  it("fail once a coefficient moves by ten tolerances", async () => {
    await expectCoefficientMatters("src/gas/orifice-plate.ts", "0.5961", 2e-5, checkCoefficient);
    await expectCoefficientMatters("src/gas/orifice-plate.ts", "0.351", 1e-5, checkExpansibility);
    await expectCoefficientMatters<{ isaNozzle: typeof isaNozzle }>(
      "src/gas/flow-nozzle.ts",
      "0.2262",
      0.05,
      (module) => checkTable("isa1932.", module.isaNozzle.coefficient),
    );
    await expectCoefficientMatters<{ longRadiusNozzle: typeof longRadiusNozzle }>(
      "src/gas/flow-nozzle.ts",
      "0.9965",
      2e-3,
      (module) => checkTable("longradius.", module.longRadiusNozzle.coefficient),
    );
    for (const coefficient of ["0.9858", "0.196", "4.5"])
      await expectCoefficientMatters<{ venturiNozzle: typeof venturiNozzle }>(
        "src/gas/flow-nozzle.ts",
        coefficient,
        1e-4,
        (module) => checkVenturiNozzle(module.venturiNozzle),
      );
  });
});
