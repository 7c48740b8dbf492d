import { describe, expect, it } from "vitest";
import type { MeterDescription, MeterKind } from "../engine/index.ts";
import { convertSignals, describeCurve, meterSlope, signalRange } from "./describe-curve.ts";
import { meterFlow } from "./meter-flow.ts";
import { meterUncertainty } from "./meter-uncertainty.ts";
import { type PreparedMeter, prepareMeter } from "./prepare-meter.ts";
import { supplyErrorRatio } from "./supply-error.ts";

const CALIBRATION = { pressure: 101_325, temperature: 293.15, humidityRatio: 0 };
function meter(kind: MeterKind, signalUnit: "V" | "ms" = "V"): PreparedMeter {
  const description: MeterDescription = {
    id: "meter",
    kind,
    bank: null,
    bore: null,
    reference: 5,
    curve: {
      signalUnit,
      flow: "mass",
      at: { pressure: 101_325, temperature: 293.15 },
      points: [
        [1, 0.002],
        [2, 0.02],
        [3, 0.07],
        [4, 0.18],
      ],
    },
  };
  const result = prepareMeter(description);
  if (!result.ok) throw new Error(result.message);
  return result.value;
}

describe("describing a curve", () => {
  it("gives rows over the whole curve with slopes that finite differences show, periods too", () => {
    for (const unit of ["V", "ms"] as const) {
      const prepared = meter("vane", unit);
      const rows = describeCurve(prepared, CALIBRATION, 11);
      expect(signalRange(prepared)).toEqual([1, 4]);
      expect(rows[0]!.signal).toBe(signalRange(prepared)[0]);
      expect(rows[10]!.signal).toBeCloseTo(signalRange(prepared)[1], 12);
      for (const row of rows.slice(1, -1)) {
        const h = 1e-6;
        const up = meterFlow(prepared, row.signal + h, CALIBRATION).massFlow;
        const down = meterFlow(prepared, row.signal - h, CALIBRATION).massFlow;
        expect(row.slope).toBeCloseTo((up - down) / (2 * h), 6);
        expect(row.sensitivity).toBeCloseTo((row.slope * row.signal) / row.massFlow, 12);
      }
    }
  });

  it("knows the ends of a period, shortest first", () => {
    const points = [[0.002, 0.04] as const, [0.005, 0.016] as const, [0.02, 0.004] as const];
    const curve = { signalUnit: "ms", flow: "mass", at: null, points } as const;
    const result = prepareMeter({ id: "meter", kind: "vortex", bank: null, bore: null, reference: null, curve });
    if (!result.ok) throw new Error(result.message);
    expect(signalRange(result.value)).toEqual([0.002, 0.02]);
  });

  it("converts signals with their uncertainty where one is stated", () => {
    const [plain] = convertSignals(meter("hot-wire"), [2], CALIBRATION);
    expect(plain).toMatchObject({ massFlow: 0.02, standardUncertainty: null });
    const [told, bad] = convertSignals(meter("hot-wire"), [2, Number.NaN], CALIBRATION, { curveRelative: 0.02 });
    expect(told!.standardUncertainty).toBeCloseTo(0.0004, 10);
    expect(bad!.standardUncertainty).toBeNull();
  });
});

describe("uncertainty", () => {
  it("of the air enters by the power of density that the kind senses", () => {
    const relative = (kind: MeterKind) => {
      const budget = meterUncertainty(meter(kind), 3, CALIBRATION, { pressure: 1013.25 })!;
      return budget.standardUncertainty / budget.value;
    };
    expect(relative("vortex")).toBeCloseTo(0.01, 8);
    expect(relative("vane")).toBeCloseTo(0.005, 6);
    expect(relative("hot-wire")).toBe(0);
  });

  it("of signal, ground and supply enters by the slope of the curve, for voltages alone", () => {
    const slope = meterSlope(meter("hot-wire"), 3, CALIBRATION);
    const u = meterUncertainty(meter("hot-wire"), 3, CALIBRATION, { signal: 1e-4, ground: 2e-4, supply: 1e-4 })!;
    expect(u.standardUncertainty).toBeCloseTo(slope * Math.hypot(1e-4, 2e-4, 3e-4), 8);
    const period = meterUncertainty(meter("hot-wire", "ms"), 3, CALIBRATION, { ground: 0.01, supply: 0.01 })!;
    expect(period.standardUncertainty).toBe(0);
  });

  it("of curve and installation adds in squares", () => {
    const u = meterUncertainty(meter("hot-film"), 2, CALIBRATION, {
      curve: 2e-4,
      curveRelative: 0.01,
      installation: 0.02,
    })!;
    expect(u.standardUncertainty / 0.02).toBeCloseTo(Math.hypot(0.01, 0.01, 0.02), 8);
    expect(meterUncertainty(meter("hot-film"), Number.NaN, CALIBRATION, {})).toBeNull();
  });

  it("of the curve holds in the air it was taken in, and goes with the reading into any other", () => {
    const thin = { pressure: 60_000, temperature: 313.15, humidityRatio: 0.02 };
    for (const kind of ["vane", "vortex", "hot-wire"] as const) {
      const absolute = meterUncertainty(meter(kind), 3, thin, { curve: 0.0035 })!;
      const relative = meterUncertainty(meter(kind), 3, thin, { curveRelative: 0.05 })!;
      expect(absolute.standardUncertainty).toBeCloseTo(relative.standardUncertainty, 9);
    }
  });
});

describe("supply and ground", () => {
  it("move a voltage by the slope of its curve, and leave a period alone", () => {
    const wire = meter("hot-wire");
    const slope = meterSlope(wire, 3, CALIBRATION);
    const { massFlow } = meterFlow(wire, 3, CALIBRATION);
    expect(supplyErrorRatio(wire, 3, CALIBRATION, { groundShift: 1e-4 })).toBeCloseTo(1 + (slope * 1e-4) / massFlow, 7);
    expect(supplyErrorRatio(wire, 3, CALIBRATION, { supplyRatio: 0.99 })).toBeLessThan(1);
    expect(supplyErrorRatio(wire, 3, CALIBRATION, {})).toBe(1);
    expect(supplyErrorRatio(meter("hot-wire", "ms"), 3, CALIBRATION, { supplyRatio: 0.9 })).toBe(1);
  });
});
