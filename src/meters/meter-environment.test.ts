import { describe, expect, it } from "vitest";
import type { MeterKind } from "../engine/index.ts";
import { compensationRatio } from "./density-compensation.ts";
import { altitudeCases, environmentTable, heatCases, tiltCases } from "./environment-table.ts";

const CALIBRATION = { pressure: 101_325, temperature: 293.15, humidityRatio: 0 };
const KINDS: readonly MeterKind[] = ["vane", "vortex", "hot-wire", "hot-film"];

describe("density compensation", () => {
  const mountain = { pressure: 79_500, temperature: 275.15, humidityRatio: 0 };
  const ratio = (kind: MeterKind, compensation: Parameters<typeof compensationRatio>[0]["compensation"]) =>
    compensationRatio({ kind, compensation, air: mountain, calibration: CALIBRATION });

  it("leaves sqrt(p_cal/p) with a vane whose temperature alone is corrected: rich at altitude", () => {
    expect(ratio("vane", "temperature")).toBeCloseTo(Math.sqrt(101_325 / 79_500), 12);
  });

  it("leaves the whole of density with an uncorrected vortex meter, its root with a vane, nothing with wire and film", () => {
    expect(ratio("vortex", "none")).toBeCloseTo(ratio("vane", "none") ** 2, 12);
    expect(ratio("hot-wire", "none")).toBe(1);
    expect(ratio("hot-film", "none")).toBe(1);
  });

  it("leaves nothing where both are corrected, and the temperature's part where pressure alone is", () => {
    for (const kind of KINDS) expect(ratio(kind, "temperature-and-pressure")).toBeCloseTo(1, 12);
    expect(ratio("vortex", "pressure")).toBeCloseTo(275.15 / 293.15, 12);
  });
});

describe("environment table", () => {
  it("tells the altitude error of a temperature-compensated vane and its lambda", () => {
    const rows = environmentTable(
      { kind: "vane", compensation: "temperature", calibration: CALIBRATION },
      altitudeCases([0, 2000]),
    );
    expect(rows[0]!.readingOverTruth).toBeCloseTo(1, 12);
    expect(rows[1]!.label).toBe("2000 m");
    expect(rows[1]!.readingOverTruth).toBeCloseTo(Math.sqrt(101_325 / 79_495.2), 5);
    expect(rows[1]!.lambdaRatio).toBeCloseTo(1 / rows[1]!.readingOverTruth!, 12);
  });

  it("tells the heat error of an uncorrected vortex meter: too much mass in hot air", () => {
    const rows = environmentTable(
      { kind: "vortex", compensation: "none", calibration: CALIBRATION },
      heatCases(CALIBRATION, [293.15, 333.15]),
    );
    expect(rows[1]!.label).toBe("60 degC");
    expect(rows[1]!.readingOverTruth).toBeCloseTo(333.15 / 293.15, 12);
  });

  it("tells tilt for a vane alone, and no reading where the flap hangs open", () => {
    const vane = {
      kind: "vane",
      compensation: "none",
      calibration: CALIBRATION,
      vane: { opening: 0.2, preloadShare: 0.25 },
    } as const;
    const [light, heavy, open] = environmentTable(vane, tiltCases(CALIBRATION, [-0.05, 0.05, -0.9]));
    expect(light!.readingOverTruth!).toBeGreaterThan(1);
    expect(heavy!.readingOverTruth!).toBeLessThan(1);
    expect(open).toMatchObject({ readingOverTruth: null, lambdaRatio: null });
    expect(heavy!.label).toBe("torque +5 %");
    const wire = { kind: "hot-wire", compensation: "none", calibration: CALIBRATION } as const;
    expect(environmentTable(wire, tiltCases(CALIBRATION, [0.05]))[0]!.readingOverTruth).toBe(1);
  });

  it("carries the residual temperature of wire and film, and the humidity that only lambda feels", () => {
    const hot = heatCases(CALIBRATION, [323.15]);
    const geometry = { diameter: 70e-6, length: 0.02, tubeArea: 3.8e-3, overheat: 130 };
    const wire = {
      kind: "hot-wire",
      compensation: "none",
      calibration: CALIBRATION,
      wire: { geometry, massFlow: 0.03 },
    } as const;
    expect(environmentTable(wire, hot)[0]!.readingOverTruth!).toBeGreaterThan(1);
    const film = { kind: "hot-film", compensation: "none", calibration: CALIBRATION, filmCoefficient: 5e-4 } as const;
    expect(environmentTable(film, hot)[0]!.readingOverTruth).toBeCloseTo(1.015, 12);
    const moist = [{ label: "moist", air: { ...CALIBRATION, humidityRatio: 0.02 } }];
    expect(environmentTable(film, moist)[0]!.lambdaRatio).toBeCloseTo(1 / 1.02, 12);
  });
});
