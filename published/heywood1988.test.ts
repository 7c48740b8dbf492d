/** Restriction flow, speed-density, stoichiometry and residual gas against Heywood (1988) and closed forms of its equations. */
import { describe, it } from "vitest";
import type * as fuelModule from "../src/engine/fuel-properties.ts";
import {
  airFuelRatioOfComposition,
  blendProperties,
  displacementFlow,
  fuelSideFactor,
  fuelVapourDisplacement,
  residualGasFactor,
  speedDensityFlow,
  stoichiometricAirFuelRatio,
  volumetricEfficiencyOf,
} from "../src/engine/index.ts";
import { chokedFlowFunction, criticalPressureRatio, orificeFlowFunction, orificeMassFlow } from "../src/gas/index.ts";
import type * as psiModule from "../src/gas/orifice-flow-function.ts";
import { expected, input, record, recordsNamed } from "./check-records.ts";
import { expectDigits, expectRecord } from "./matched-digits.ts";
import { expectCoefficientMatters } from "./mutant.ts";

const RESTRICTION = "02-compressible-restriction";
const BREATHING = "06-speed-density";
const FUEL = "07-stoichiometry";

function checkFlowFunction(module: Pick<typeof psiModule, "orificeFlowFunction">): void {
  for (const row of recordsNamed(RESTRICTION, "psi.")) {
    const psi = module.orificeFlowFunction(input(row, "pT_over_p0"), input(row, "gamma"));
    expectRecord(psi, row, { scale: 1 });
  }
}

function checkStoichiometry(module: Pick<typeof fuelModule, "airFuelRatioOfComposition">): void {
  for (const row of recordsNamed(FUEL, "afr.heywood.")) {
    expectRecord(module.airFuelRatioOfComposition(input(row, "y_H_per_C"), input(row, "z_O_per_C")), row);
  }
}

describe("heywood1988 appendix C", () => {
  it("gives the critical pressure ratio (C.7)", () => {
    for (const row of recordsNamed(RESTRICTION, "crit.pr.")) {
      expectRecord(criticalPressureRatio(input(row, "gamma")), row);
    }
  });

  it("gives the choked flow function (C.9)", () => {
    expectRecord(chokedFlowFunction(1.4), record(RESTRICTION, "choked.phi"));
    const row = record(RESTRICTION, "choked.si");
    expectRecord(chokedFlowFunction(1.4) / Math.sqrt(input(row, "R_J_kgK")), row);
  });

  it("gives the flow function (C.8) below, at and above choking", () => checkFlowFunction({ orificeFlowFunction }));

  it("gives the mass flow through a throttle, a choked hole and a boosted pipe", () => {
    for (const row of recordsNamed(RESTRICTION, "mdot.")) {
      const flow = orificeMassFlow({
        dischargeCoefficient: input(row, "Cd"),
        area: input(row, "A_m2"),
        upstreamPressure: input(row, "p0_Pa"),
        upstreamTemperature: input(row, "T0_K"),
        downstreamPressure: input(row, "pT_Pa"),
        gamma: input(row, "gamma"),
        gasConstant: input(row, "R"),
      });
      expectRecord(flow, row);
    }
  });
});

describe("heywood1988 chapter 2", () => {
  it("gives speed-density flow and its inverse (2.27)", () => {
    for (const name of ["a", "b", "c", "d"]) {
      const row = record(BREATHING, `sd.${name}`);
      const state = {
        manifoldPressure: input(row, "MAP_kPa") * 1000,
        displacement: input(row, "Vd_l") / 1000,
        engineSpeed: input(row, "rpm") / 60,
        chargeTemperature: input(row, "T_K"),
        gasConstant: input(row, "R"),
      };
      const efficiency = input(row, "VE");
      expectRecord(speedDensityFlow({ ...state, volumetricEfficiency: efficiency }) * 1000, row);
      expectDigits(volumetricEfficiencyOf({ ...state, massFlow: expected(row) / 1000 }), efficiency, 9);
    }
    const swept = record(BREATHING, "disp.flow");
    expectRecord(displacementFlow(input(swept, "Vd_l") / 1000, input(swept, "rpm") / 60) * 1000, swept);
  });
});

describe("heywood1988 stoichiometry", () => {
  it("gives the air-fuel ratios of table D.4 by (3.6)", () => checkStoichiometry({ airFuelRatioOfComposition }));

  it("agrees with exact arithmetic on the composition of air to 0.03 %", () => {
    for (const row of recordsNamed(FUEL, "afr.exact.")) {
      const ours = airFuelRatioOfComposition(input(row, "H") / input(row, "C"), input(row, "O") / input(row, "C"));
      expectDigits(ours, expected(row), 3.5, row.id);
    }
  });

  it("gives ethanol blends by volume", () => {
    for (const row of ["afr.E5", "afr.E10", "afr.E85"].map((id) => record(FUEL, id))) {
      const ethanol = input(row, "vol_frac_ethanol");
      const ratio = blendProperties({ ethanol, petrol: 1 - ethanol }).stoichiometricAirFuelRatio;
      expectRecord(ratio, row, { part: "AFR" });
    }
    expectRecord(stoichiometricAirFuelRatio("e10"), record(FUEL, "afr.E10"), { part: "AFR" });
    expectRecord(stoichiometricAirFuelRatio("e85"), record(FUEL, "afr.E85"), { part: "AFR" });
  });

  it("gives worked examples of methane and propane within their conventions", () => {
    expectRecord(stoichiometricAirFuelRatio("cng"), record(FUEL, "afr.methane.page"));
    expectDigits(
      stoichiometricAirFuelRatio("lpg"),
      expected(record(FUEL, "afr.propane.page")),
      2,
      "23 % oxygen by mass",
    );
  });

  it("tells lambda as the ratio of air-fuel ratios: twenty per cent more fuel at lambda 1 is twenty per cent more air", () => {
    expectDigits(fuelSideFactor({ trim: 0.2, lambda: 1, lambdaCommanded: 1 }), 1.2, 14);
  });

  it("gives the displacement of air by vapour to the two digits in use", () => {
    const inUse = {
      petrol: 0.019,
      e10: 0.022,
      e85: 0.059,
      ethanol: 0.07,
      lpg: 0.042,
      cng: 0.105,
      methanol: 0.14,
    } as const;
    for (const [fuel, share] of Object.entries(inUse)) {
      const ours = fuelVapourDisplacement(fuel as keyof typeof inUse, "port");
      expectDigits(Number(ours.toFixed(3)), share, 14, fuel);
    }
  });
});

describe("heywood1988 section 6.2", () => {
  it("gives the ideal cycle's efficiency: 1 at equal pressures, by (6.2) elsewhere", () => {
    expectDigits(residualGasFactor({ exhaustOverIntakePressure: 1, compressionRatio: 9.7 }), 1, 14);
    // (6.2) written out for r = 10, g = 1.3, p_e/p_i = 2: 10/9 - 2.3/11.7
    expectDigits(residualGasFactor({ exhaustOverIntakePressure: 2, compressionRatio: 10 }), 10 / 9 - 2.3 / 11.7, 14);
  });
});

describe("these checks", () => {
  it("fail once a coefficient moves by ten tolerances", async () => {
    await expectCoefficientMatters("src/gas/orifice-flow-function.ts", "-2", 1e-7, checkFlowFunction);
    await expectCoefficientMatters(
      "src/engine/fuel-properties.ts",
      "oxygenDemand) / (12.011",
      5e-3,
      checkStoichiometry,
    );
    await expectCoefficientMatters("src/engine/fuel-properties.ts", "34.56", 5e-3, checkStoichiometry);
  });
});
