/** Venturis and a displacement pump against the worked examples of 40 CFR 1065.642 and 1066.630. */
import { describe, it } from "vitest";
import {
  calibratedVenturiFlow,
  pumpMolarFlow,
  pumpVolumePerRevolution,
  venturiCriticalRatio,
  venturiFlowCoefficient,
  venturiMolarFlow,
} from "../src/gas/index.ts";
import type * as venturi from "../src/gas/venturi.ts";
import { type CheckRecord, input, record } from "./check-records.ts";
import { expectDigits, expectFailure, expectRecord } from "./matched-digits.ts";
import { expectCoefficientMatters } from "./mutant.ts";

const TOPIC = "02-compressible-restriction";

function inletOf(row: CheckRecord, flowCoefficient: number, inletPressure: number) {
  return {
    dischargeCoefficient: input(row, "Cd"),
    flowCoefficient,
    throatArea: input(row, "At_m2"),
    inletPressure,
    inletTemperature: input(row, "Tin_K"),
    molarMass: input(row, "Mmix_kg_mol"),
    compressibility: input(row, "Z"),
    gasConstant: input(row, "R"),
  };
}

function checkCoefficients(module: Pick<typeof venturi, "venturiFlowCoefficient">): void {
  const subsonic = record(TOPIC, "cfr1065.642.ssv");
  const shape = { diameterRatio: input(subsonic, "beta"), gamma: input(subsonic, "gamma") };
  const ratio = 1 - (input(subsonic, "dp_kPa") * 1000) / input(subsonic, "pin_Pa");
  expectRecord(module.venturiFlowCoefficient(ratio, shape), subsonic, { part: "Cf" });
  const choked = record(TOPIC, "cfv.Cf");
  expectRecord(
    module.venturiFlowCoefficient(0.1, { diameterRatio: input(choked, "beta"), gamma: input(choked, "gamma") }),
    choked,
  );
}

describe("cfr1065", () => {
  it("gives the flow coefficients of a subsonic and a critical venturi", () =>
    checkCoefficients({ venturiFlowCoefficient }));

  it("gives the subsonic venturi's molar flow; the r = 0.997 printed in copies of the example is a misprint for 0.9767", () => {
    const row = record(TOPIC, "cfr1065.642.ssv");
    const pressure = input(row, "pin_Pa");
    const ratio = 1 - (input(row, "dp_kPa") * 1000) / pressure;
    const shape = { diameterRatio: input(row, "beta"), gamma: input(row, "gamma") };
    const flow = venturiMolarFlow(inletOf(row, venturiFlowCoefficient(ratio, shape), pressure));
    expectRecord(flow, row, { part: "n_mol_s" });
  });

  it("gives the critical venturi's molar flow", () => {
    const row = record(TOPIC, "cfr1065.642.cfv");
    expectRecord(venturiMolarFlow(inletOf(row, input(row, "Cf"), input(row, "pin_Pa"))), row);
  });

  it("chokes where the equation of the regulation says", () => {
    expectDigits(venturiCriticalRatio({ diameterRatio: 0.7, gamma: 1.399 }), 0.5622622543395426, 9);
  });

  it("gives the displacement pump's molar flow", () => {
    const row = record(TOPIC, "cfr1065.642.pdp");
    const flow = pumpMolarFlow({
      slipConstant: input(row, "a1"),
      volumeConstant: input(row, "a0"),
      speed: input(row, "f_r_s"),
      inletPressure: input(row, "pin_Pa"),
      outletPressure: input(row, "pout_kPa") * 1000,
      inletTemperature: input(row, "Tin_K"),
      gasConstant: input(row, "R"),
    });
    expectRecord(flow, row);
  });

  it("fails once a coefficient moves by ten tolerances", async () => {
    await expectCoefficientMatters("src/gas/venturi.ts", "-2", 0.02, checkCoefficients);
  });
});

describe("cfr1066", () => {
  it("gives the volume flows at reference conditions", () => {
    const pump = record(TOPIC, "cfr1066.630.pdp");
    const state = {
      slipConstant: input(pump, "a1"),
      volumeConstant: input(pump, "a0"),
      speed: input(pump, "f_r_s"),
      inletPressure: input(pump, "pin_kPa") * 1000,
      outletPressure: input(pump, "pout_kPa") * 1000,
      inletTemperature: input(pump, "Tin_K"),
    };
    const gasConstant = 8.314472;
    const toReference = (row: CheckRecord): number =>
      (gasConstant * input(row, "Tstd_K")) / (input(row, "pstd_kPa") * 1000);
    expectRecord(pumpMolarFlow({ ...state, gasConstant }) * toReference(pump), pump, { part: "V_m3_s" });
    expectDigits(pumpVolumePerRevolution(state), 0.0638, 2, "rounded down to 0.063 in print");

    const subsonic = record(TOPIC, "cfr1066.630.ssv");
    const flow = venturiMolarFlow(inletOf(subsonic, input(subsonic, "Cf"), input(subsonic, "pin_kPa") * 1000));
    expectRecord(flow * toReference(subsonic), subsonic);
  });

  it("gives the volume flow of a calibrated critical venturi", () => {
    const row = record(TOPIC, "cfr1066.630.cfv");
    // printed with its unit: 0.074954 m3 K^0.5/(kPa s)
    const perKilopascal = Number.parseFloat(String(row.inputs.Kv));
    const state = { inletPressure: input(row, "pin_kPa") * 1000, inletTemperature: input(row, "Tin_K") };
    expectRecord(calibratedVenturiFlow({ ...state, calibrationConstant: perKilopascal / 1000 }), row);
    expectFailure(() =>
      expectRecord(calibratedVenturiFlow({ ...state, calibrationConstant: (perKilopascal * 1.0002) / 1000 }), row),
    );
  });
});
