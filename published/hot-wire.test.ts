/** Heat loss of wires and their means in pulsating flow: King, Collis and Williams, Kramers, and exact mathematics. */
import { describe, expect, it } from "vitest";
import type * as heatLoss from "../src/meters/heat-loss.ts";
import type * as means from "../src/meters/hot-wire/pulsation-means.ts";
import {
  averagedBeforeLinearising,
  averagedSignalRatio,
  collisNusselt,
  kingNusselt,
  kramersNusselt,
  rectifiedMean,
  rectifiedMeanOf,
  temperatureLoading,
  wireTemperatureRatio,
} from "../src/meters/index.ts";
import { expected, input, record, recordsNamed } from "./check-records.ts";
import { expectDigits, expectInside, expectRecord } from "./matched-digits.ts";
import { expectCoefficientMatters } from "./mutant.ts";

const TOPIC = "05-hot-wire";

function checkNusselt(module: Pick<typeof heatLoss, "collisNusselt" | "kingNusselt" | "kramersNusselt">): void {
  for (const row of recordsNamed(TOPIC, "king.Nu.")) {
    expectRecord(module.kingNusselt(input(row, "Re"), input(row, "Pr")).nusselt, row);
  }
  for (const row of recordsNamed(TOPIC, "collis.Nu.")) {
    expectRecord(module.collisNusselt(input(row, "Re")).nusselt, row);
  }
  for (const row of recordsNamed(TOPIC, "kramers.Nu.")) {
    expectRecord(module.kramersNusselt(input(row, "Re"), input(row, "Pr")).nusselt, row);
  }
}

function checkMeans(module: Pick<typeof means, "rectifiedMeanOf" | "averagedBeforeLinearising">): void {
  for (const row of recordsNamed(TOPIC, "rect.").filter((r) => "a" in r.inputs)) {
    expectRecord(module.rectifiedMeanOf(input(row, "a"), input(row, "b")), row, { part: "mean" });
  }
  for (const row of recordsNamed(TOPIC, "kingavg.")) {
    expectRecord(module.averagedBeforeLinearising(input(row, "b"), input(row, "n")), row);
  }
}

describe("king1914, collis1959, kramers1946", () => {
  it("give their Nusselt numbers", () => checkNusselt({ kingNusselt, collisNusselt, kramersNusselt }));

  it("agree with digitised points of heated wires in air to the 7.5 % of their scatter", () => {
    const row = record(TOPIC, "collis.data");
    const published = row.expected as number[];
    for (const [i, reynolds] of (row.inputs.Re as number[]).entries()) {
      const value = published[i] ?? Number.NaN;
      expectInside(collisNusselt(reynolds).nusselt, [value * 0.925, value * 1.075], `Re ${reynolds}`);
    }
  });

  it("differ from one another as their authors found: Kramers 8 to 15 % above Collis from Re 1 to 100", () => {
    for (const reynolds of [1, 10, 100]) {
      const ratio = kramersNusselt(reynolds, 0.71).nusselt / collisNusselt(reynolds).nusselt;
      expectInside(ratio, [1.08, 1.15], `Re ${reynolds}`);
    }
  });

  it("bracket the correlations for cylinders in cross flow at Re 6000", () => {
    const values = recordsNamed(TOPIC, "cyl.").map((row) => expected(row));
    expectInside(kramersNusselt(6071, 0.7).nusselt, [Math.min(...values) * 0.95, Math.max(...values) * 1.05]);
  });

  it("give the temperature loading", () => {
    const row = record(TOPIC, "collis.T");
    const wall = input(row, "Tw_K");
    const air = input(row, "Tinf_K");
    expectRecord(temperatureLoading((wall + air) / 2 / air), row);
  });
});

describe("pulsation", () => {
  it("gives the rectified mean and the mean read before linearising", () =>
    checkMeans({ rectifiedMeanOf, averagedBeforeLinearising }));

  it("gives the over-reading of a meter blind to direction, none before reversal", () => {
    for (const row of recordsNamed(TOPIC, "rect.1.")) {
      expectRecord(rectifiedMean(input(row, "b")) - 1, row, { part: "over_read", scale: 1 });
    }
  });

  it("agrees with quadrature through the whole signal path", () => {
    const read = averagedSignalRatio(
      0.5,
      (u) => u ** 0.45,
      (s) => s ** (1 / 0.45),
    );
    expectDigits(read, averagedBeforeLinearising(0.5, 0.45), 10);
    const still = averagedSignalRatio(
      0.5,
      (u) => Math.sqrt(0.5 + u ** 0.45),
      (s) => (s * s - 0.5) ** (1 / 0.45),
    );
    expect(still).toBeLessThan(1);
  });
});

describe("residual air temperature of a compensated wire", () => {
  it("is zero at calibration and a few per cent over 60 K", () => {
    const wire = { diameter: 70e-6, length: 0.02, tubeArea: 3.8e-3, overheat: 130 };
    const at = { massFlow: 0.05, calibrationTemperature: 293.15 };
    expectDigits(wireTemperatureRatio(wire, { ...at, airTemperature: 293.15 }), 1, 12);
    // conductivity rises by 0.8 and viscosity by 0.7 of the film temperature's share: both follow from us1976
    expectInside(wireTemperatureRatio(wire, { ...at, airTemperature: 353.15 }), [1.05, 1.25]);
  });
});

describe("these checks", () => {
  it("fail once a coefficient moves by ten tolerances", async () => {
    await expectCoefficientMatters("src/meters/heat-loss.ts", "0.56", 1e-7, checkNusselt);
    await expectCoefficientMatters("src/meters/heat-loss.ts", "0.57", 1e-7, checkNusselt);
    await expectCoefficientMatters("src/meters/heat-loss.ts", "Math.sqrt((2", 1e-7, checkNusselt);
    await expectCoefficientMatters<typeof means>(
      "src/meters/hot-wire/pulsation-means.ts",
      "let term = 1",
      1e-6,
      (module) => checkMeans(module),
    );
  });
});
