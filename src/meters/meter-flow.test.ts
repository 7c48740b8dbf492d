import { describe, expect, it } from "vitest";
import type { MeterDescription, MeterKind, SignalUnit } from "../engine/index.ts";
import { QUALITY } from "../quantities/index.ts";
import { meterFlow, meterFlows } from "./meter-flow.ts";
import { meterSignal } from "./meter-signal.ts";
import { type PreparedMeter, prepareMeter } from "./prepare-meter.ts";

function describeMeter(
  kind: MeterKind,
  signalUnit: SignalUnit,
  points: readonly (readonly [number, number])[],
  flow: "mass" | "volume" = "mass",
): MeterDescription {
  const at = { pressure: 101_325, temperature: 293.15 };
  return { id: "meter", kind, bank: null, bore: null, reference: null, curve: { signalUnit, flow, points, at } };
}

function prepared(description: MeterDescription): PreparedMeter {
  const result = prepareMeter(description);
  if (!result.ok) throw new Error(result.message);
  return result.value;
}

describe("meterFlow", () => {
  const wire = prepared(
    describeMeter("hot-wire", "V", [
      [1, 0.002],
      [2, 0.02],
      [4, 0.2],
    ]),
  );
  const standard = { pressure: 101_325, temperature: 293.15, humidityRatio: 0 };

  it("passes through the points in the air of calibration, volume columns included", () => {
    expect(meterFlow(wire, 2, standard).massFlow).toBeCloseTo(0.02, 14);
    const vortex = prepared(
      describeMeter(
        "vortex",
        "Hz",
        [
          [10, 0.001],
          [100, 0.01],
        ],
        "volume",
      ),
    );
    const density = 101_325 / (287.04749 * 293.15);
    expect(meterFlow(vortex, 100, standard).massFlow).toBeCloseTo(0.01 * density, 8);
    const vane = prepared(
      describeMeter(
        "vane",
        "ratio",
        [
          [0.1, 0.001],
          [0.9, 0.1],
        ],
        "volume",
      ),
    );
    expect(meterFlow(vane, 0.9, { ...standard, pressure: 50_662.5 }).massFlow).toBeCloseTo(
      0.1 * density * Math.SQRT1_2,
      8,
    );
  });

  it("marks what lies beyond the curve and never reads below zero where direction is not sensed", () => {
    expect(meterFlow(wire, 5, standard).quality).toBe(QUALITY.outsideValidity);
    const steep = prepared(
      describeMeter("hot-wire", "V", [
        [1, 0.002],
        [2, 0.02],
        [4, 0.05],
      ]),
    );
    expect(meterFlow(steep, 0, standard)).toEqual({ massFlow: 0, quality: QUALITY.outsideValidity });
    const film = prepared(
      describeMeter("hot-film", "V", [
        [0.5, -0.02],
        [1, 0],
        [4, 0.2],
      ]),
    );
    expect(meterFlow(film, 0.6, standard).massFlow).toBeLessThan(0);
    expect(meterFlow(film, 0.3, standard).massFlow).toBeLessThan(-0.02);
  });

  it("leaves samples alone that are already bad", () => {
    const out = { massFlow: new Float64Array(2), quality: Uint8Array.from([QUALITY.clipped, QUALITY.good]) };
    meterFlows(wire, { signal: Float64Array.from([2, 2]), air: standard }, out);
    expect(out.quality[0]).toBe(QUALITY.clipped);
    expect(out.massFlow[0]).toBeNaN();
    expect(out.massFlow[1]).toBeCloseTo(0.02, 14);
  });

  it("counts both ends of the curve as inside, and the next sample beyond as outside", () => {
    const out = { massFlow: new Float64Array(4), quality: new Uint8Array(4) };
    const { x } = wire.curve;
    const [low, high] = [x[0]!, x[x.length - 1]!];
    meterFlows(wire, { signal: Float64Array.from([low - 1e-9, low, high, high + 1e-9]), air: standard }, out);
    expect(Array.from(out.quality)).toEqual([
      QUALITY.outsideValidity,
      QUALITY.good,
      QUALITY.good,
      QUALITY.outsideValidity,
    ]);
  });

  it("takes air that changes with every sample", () => {
    const vortex = prepared(
      describeMeter("vortex", "Hz", [
        [10, 0.001],
        [100, 0.01],
      ]),
    );
    const out = { massFlow: new Float64Array(2), quality: new Uint8Array(2) };
    const samples = {
      signal: Float64Array.from([50, 50]),
      air: {
        pressure: Float64Array.from([101_325, 50_662.5]),
        temperature: Float64Array.from([293.15, 293.15]),
        humidityRatio: 0,
      },
    };
    meterFlows(vortex, samples, out);
    expect(out.massFlow[1]! / out.massFlow[0]!).toBeCloseTo(0.5, 14);
  });
});

describe("meterSignal", () => {
  const wire = prepared(
    describeMeter("hot-wire", "V", [
      [1, 0.002],
      [2, 0.02],
      [4, 0.2],
    ]),
  );
  const standard = { pressure: 101_325, temperature: 293.15, humidityRatio: 0 };

  it("follows the end tangent beyond the curve, and gives a flat end itself", () => {
    const above = meterSignal(wire, 0.3, standard);
    expect(above.quality).toBe(QUALITY.outsideValidity);
    expect(meterFlow(wire, above.signal, standard).massFlow).toBeCloseTo(0.3, 12);
    const flat = prepared(
      describeMeter("hot-wire", "V", [
        [0, 0.001],
        [1, 0.001],
        [2, 0.02],
      ]),
    );
    expect(meterSignal(flat, 0.0001, standard)).toEqual({ signal: 0, quality: QUALITY.outsideValidity });
  });

  it("has no signal for a flow that is no number", () => {
    expect(meterSignal(wire, Number.NaN, standard).quality).toBe(QUALITY.notANumber);
  });
});

describe("prepareMeter", () => {
  const fails = (description: MeterDescription) => {
    const result = prepareMeter(description);
    return result.ok ? null : { reason: result.reason, message: result.message };
  };

  it("refuses a curve that cannot be read, and says where", () => {
    expect(fails({ ...describeMeter("vane", "V", []), curve: null })?.reason).toBe("no-curve");
    expect(fails(describeMeter("vane", "V", [[1, 1]]))?.reason).toBe("too-few-points");
    const turned = fails(
      describeMeter("vane", "V", [
        [1, 0.01],
        [2, 0.03],
        [3, 0.02],
        [4, 0.05],
      ]),
    );
    expect(turned?.reason).toBe("curve-not-monotone");
    expect(turned?.message).toContain("2 V, 30 g/s and 3 V, 20 g/s");
    const period = fails(
      describeMeter("vortex", "ms", [
        [0.004, 0.01],
        [0.002, 0.03],
        [0.001, 0.02],
      ]),
    );
    expect(period?.message).toContain("1 ms, 20 g/s and 2 ms, 30 g/s");
    expect(
      fails(
        describeMeter("vane", "V", [
          [1, 0.01],
          [1, 0.02],
        ]),
      )?.message,
    ).toContain("same signal");
    expect(
      fails(
        describeMeter("vane", "V", [
          [1, 0.01],
          [2, 0.01],
        ]),
      )?.reason,
    ).toBe("curve-not-monotone");
    expect(
      fails(
        describeMeter("vane", "ms", [
          [0, 0.01],
          [2, 0.02],
        ]),
      )?.reason,
    ).toBe("curve-point-invalid");
    expect(
      fails(
        describeMeter("vane", "V", [
          [0, -0.01],
          [2, 0.02],
        ]),
      )?.reason,
    ).toBe("curve-point-invalid");
    expect(
      fails(
        describeMeter("vane", "V", [
          [0, Number.NaN],
          [2, 0.02],
        ]),
      )?.reason,
    ).toBe("curve-point-invalid");
  });

  it("says when it had to assume the air of calibration, and only then", () => {
    const assumed = (kind: MeterKind, flow: "mass" | "volume") => {
      const description = describeMeter(
        kind,
        "V",
        [
          [1, 0.01],
          [2, 0.02],
        ],
        flow,
      );
      return prepared({ ...description, curve: { ...description.curve!, at: null } }).referenceAssumed;
    };
    expect(assumed("vane", "mass")).toBe(true);
    expect(assumed("vortex", "mass")).toBe(true);
    expect(assumed("vortex", "volume")).toBe(false);
    expect(assumed("hot-wire", "mass")).toBe(false);
    expect(assumed("hot-wire", "volume")).toBe(true);
  });
});
