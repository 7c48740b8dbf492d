// Sizes and limits of the signatures, against closed forms; signs under both strategies stand in sign-table.test.ts. Points: idle,
// cruise, wide open at low speed, full load of an invented 2 L engine.
import { describe, expect, it } from "vitest";
import {
  AMBIENT,
  CRUISE,
  FULL,
  IDLE,
  LOW,
  modelOf,
  predictionOf,
  seenByAll,
  shifts as shiftsIn,
} from "../../../test/signatures/signature-models.ts";
import { fouledReadingRatio, vaneTorqueErrorRatio } from "../../meters/index.ts";
import type { TallyWitness } from "../../tally/index.ts";
import { CATALOGUE } from "../catalogue.ts";

const METER_STRATEGY = modelOf();
const EVERYBODY = seenByAll(METER_STRATEGY);
const shifts = (cause: string, size: number, witness: TallyWitness, shape?: number, model = METER_STRATEGY) =>
  shiftsIn(model, witness, cause, size, shape);

describe("the air meter", () => {
  it("is lowered by a manifold leak most at idle and hardly at full load; a choked hole of 1 mm2 takes 0.156 g/s", () => {
    const s = shifts("manifold-leak", 3e-6, "meter");
    expect(s[IDLE]).toBeLessThan(-0.1);
    expect(Math.abs(s[FULL]!)).toBeLessThan(0.1 * Math.abs(s[IDLE]!));
    // design: 0.156 g/s a mm2 at 101.3 kPa and 20 degC; here 99 kPa, so 0.1555 x 99/101.3
    const leak = 2.7 * Math.expm1(-s[IDLE]!);
    expect(leak / 3).toBeCloseTo((0.1555 * 99) / 101.325, 3);
  });
  it("is raised by the same hole under boost: it blows out", () => {
    const boosted = modelOf({ engine: { induction: "boosted" }, pressures: [35, 60, 96, 180] });
    expect(shifts("manifold-leak", 5e-6, "meter", undefined, boosted)[FULL]).toBeGreaterThan(0);
  });
  it("is lowered by one ratio where air enters before the throttle", () => {
    const s = shifts("leak-before-throttle", 100e-6, "meter");
    expect(s[IDLE]).toBeLessThan(-0.02);
    expect(Math.abs(s[IDLE]! - s[FULL]!)).toBeLessThan(0.01);
  });
  it("is scaled by ln k, offset most at low flow, fouled most at high flow", () => {
    for (const v of shifts("meter-scaled", 0.9, "meter")) expect(v).toBeCloseTo(Math.log(0.9), 12);
    const offset = shifts("meter-offset", -0.5e-3, "meter");
    expect(offset[IDLE]).toBeCloseTo(Math.log(2.7 / 3.2), 6);
    expect(Math.abs(offset[FULL]!)).toBeLessThan(0.01);
    const fouled = shifts("meter-fouled", -0.15, "meter", 0);
    expect(fouled[FULL]).toBeLessThan(-0.15);
    expect(Math.abs(fouled[IDLE]!)).toBeLessThan(0.01);
  });
});

describe("faults of one kind of meter", () => {
  it("fouls a wire by resistances in series: the same as the wire's own law with that resistance and area", () => {
    const curve = {
      signalUnit: "V",
      flowUnit: "g/s",
      points: [
        [0.6, 0],
        [2.2, 14],
        [4.8, 220],
      ],
    };
    const model = modelOf({ engine: { meters: [{ id: "meter", kind: "hot-wire", curve }] } });
    const law = { still: 0.36, slope: (4.8 ** 2 - 0.36) / Math.sqrt(0.22), exponent: 0.5 };
    // any resistance and area: two of the errors it makes tell size and form, the others must follow
    const fouling = { resistance: 0.012, surfaceRatio: 1.05 };
    const truthOf = (read: number) => {
      let m = read;
      for (let n = 0; n < 60; n++) m *= read / (m * fouledReadingRatio(law, fouling, m));
      return m;
    };
    const error = (clean: number) => fouledReadingRatio(law, fouling, clean) - 1;
    const at70 = error(0.7 * 0.07);
    const found = shifts("meter-fouled", at70, "meter", error(2.7e-3) / at70, model);
    for (const [i, read] of [2.7e-3, 17e-3, 22e-3, 70e-3].entries())
      expect(found[i]).toBeCloseTo(Math.log(read / truthOf(read)), 2);
    expect(Math.abs(found[CRUISE]!)).toBeGreaterThan(0.02);
  });

  it("tilts a vane by its balance of torques at the opening that its wiper or its curve tells", () => {
    const curve = {
      signalUnit: "ratio",
      flowUnit: "g/s",
      points: [
        [0.05, 1],
        [0.35, 10],
        [0.65, 40],
        [0.95, 120],
      ],
    };
    const engine = { meters: [{ id: "meter", kind: "vane", curve }] };
    const byWiper = shifts(
      "vane-tilted",
      0.1,
      "meter",
      undefined,
      modelOf({ engine, readings: { meterRatio: [0.14, 0.41, 0.5, 0.77] } }),
    );
    for (const [i, opening] of [0.1, 0.4, 0.5, 0.8].entries())
      expect(byWiper[i]).toBeCloseTo(Math.log(vaneTorqueErrorRatio({ opening, torqueError: 0.1 })!), 9);
    const byCurve = shifts("vane-tilted", 0.1, "meter", undefined, modelOf({ engine }));
    expect(byCurve[IDLE]).toBeLessThan(byCurve[FULL]!);
    expect(byCurve[FULL]).toBeCloseTo(byWiper[FULL]!, 2);
  });

  it("adds a signal along the meter's own curve, and tells it in V where the signal was recorded", () => {
    const curve = {
      signalUnit: "V",
      flowUnit: "g/s",
      points: [
        [0.6, 0],
        [1.2, 1],
        [1.8, 4.5],
        [2.6, 18],
        [3.6, 62],
        [4.8, 180],
      ],
    };
    const engine = { meters: [{ id: "meter", kind: "hot-wire", curve }] };
    const model = modelOf({ engine, readings: { meterVoltage: [1.52, 2.56, 2.74, 3.72] } });
    const { law } = CATALOGUE.find((c) => c.id === "meter-offset")!;
    const form = law.shapes(model)[0]!.value;
    const [volts] = law.otherSizes!(model, -0.5e-3, form);
    expect(volts).toMatchObject({ unit: "V" });
    expect(volts!.value).toBeLessThan(-0.05);
    expect(volts!.value).toBeGreaterThan(-0.2);
    const s = shifts("meter-offset", -0.5e-3, "meter", form, model);
    expect(Math.abs(s[IDLE]! - Math.log(2.7 / 3.2))).toBeLessThan(0.01);
    expect(s[CRUISE]).toBeLessThan(s[FULL]!);
    expect(s[FULL]).toBeLessThan(-0.005);
    expect(law.otherSizes!(modelOf({ engine }), -0.5e-3, form)).toEqual([]);
  });

  it("errs in pulsating flow as told at its worst, there alone", () => {
    const s = shifts("meter-pulsation", -0.15, "meter", 25);
    expect(s[LOW]).toBeCloseTo(Math.log(0.85), 2);
    expect(s[IDLE]).toBe(0);
    expect(Math.abs(s[FULL]!)).toBeLessThan(1e-3);
  });

  it("errs by a wrong curve as told at 30 and 70 % of the true largest flow, and tells both", () => {
    // true shares 0.05, 0.3, 0.7 and 1 of 80 g/s, read with the errors of the line through 0.15 and -0.1
    const errors = [0.275, 0.15, -0.1, -0.2875];
    const read = [0.05, 0.3, 0.7, 1].map((share, i) => 80e-3 * share * (1 + errors[i]!));
    const model = modelOf({ readings: { meterFlow: read } });
    const s = shifts("meter-curve-wrong", -0.1, "meter", -1.5, model);
    for (const [i, error] of errors.entries()) expect(s[i]).toBeCloseTo(Math.log1p(error), 9);
    const { law } = CATALOGUE.find((c) => c.id === "meter-curve-wrong")!;
    expect(law.otherSizes!(model, -0.1, -1.5)[0]!.value).toBeCloseTo(0.15, 12);
  });
});

describe("the manifold pressure", () => {
  it("is shifted by its own zero most where it is low, in the sense of the zero, and more for the residual gas believed there", () => {
    const s = shifts("map-biased", 3000, "pressure");
    expect(s[IDLE]).toBeGreaterThan(Math.log(35 / 32));
    expect(s[IDLE]).toBeLessThan(1.4 * Math.log(35 / 32));
    expect(s[FULL]).toBeCloseTo(Math.log(97 / 94), 2);
    expect(shifts("map-biased", -3000, "pressure")[IDLE]).toBeLessThan(0);
  });
  it("is lowered by a temperature that reads hot: nearly whole at full load, half at idle, where the charge warms anyway", () => {
    const constant = shifts("intake-temperature-biased", 20, "pressure", 0);
    const whole = -Math.log(298 / 278);
    expect(constant[FULL]! / whole).toBeGreaterThan(0.75);
    expect(constant[IDLE]! / whole).toBeGreaterThan(0.3);
    expect(constant[IDLE]! / whole).toBeLessThan(0.7);
    const soak = shifts("intake-temperature-biased", 20, "pressure", 1);
    expect(soak[IDLE]).toBeLessThan(soak[CRUISE]!);
    expect(soak[CRUISE]).toBeLessThan(soak[FULL]!);
  });
  it("is raised by breathing lost, at high flow only, and by recirculation, at low flow most", () => {
    const breathing = shifts("breathing-reduced", -0.2, "pressure", 2);
    expect(breathing[FULL]).toBeCloseTo(-Math.log(0.8), 9);
    expect(breathing[IDLE]).toBeLessThan(0.001);
    const egr = shifts("egr-stuck-open", 10e-6, "pressure");
    expect(egr[IDLE]).toBeGreaterThan(0.1);
    expect(egr[FULL]).toBeLessThan(0.1 * egr[IDLE]!);
    expect(egr[FULL]).toBeGreaterThanOrEqual(0);
  });
});

describe("the fuel side", () => {
  it("reads high where less is delivered, by one factor", () => {
    for (const v of shifts("fuel-delivery-scaled", 0.85, "fuel", undefined, EVERYBODY))
      expect(v).toBeCloseTo(-Math.log(0.85), 12);
    for (const v of shifts("lambda-biased", 0.1, "fuel", undefined, EVERYBODY))
      expect(v).toBeCloseTo(-Math.log(0.9), 12);
  });
  it("reads low where fuel arrives uncommanded, and high where injectors open late, both most at idle", () => {
    const unmetered = shifts("fuel-unmetered", 0.02e-3, "fuel", undefined, EVERYBODY);
    expect(unmetered[IDLE]).toBeLessThan(-0.1);
    expect(Math.abs(unmetered[FULL]!)).toBeLessThan(0.006);
    const late = shifts("injector-offset", 0.2e-3, "fuel", undefined, EVERYBODY);
    expect(late[IDLE]).toBeGreaterThan(0.1);
    expect(late[FULL]).toBeLessThan(0.3 * late[IDLE]!);
    expect(late[FULL]).toBeGreaterThan(0);
  });
});

describe("the intake", () => {
  it("loses the area of an orifice at the throttle, as much as the size at idle", () => {
    const s = shifts("throttle-area-changed", -6e-6, "throttle", undefined, EVERYBODY);
    // choked: m = A p_a 0.6847/sqrt(R T), so A is 11.65 mm2 with deposits and 17.65 mm2 without
    const area = (2.7e-3 * Math.sqrt(287.05 * 298)) / (99e3 * 0.68473);
    expect(s[IDLE]).toBeCloseTo(Math.log((area + 6e-6) / area), 4);
  });

  it("blows out of a charge pipe through an orifice: 25 mm2 at 180 kPa lose what isentropic flow says", () => {
    const model = modelOf({ engine: { induction: "boosted" }, pressures: [35, 60, 96, 180] });
    const s = shifts("boost-leak", 25e-6, "meter", undefined, model);
    const leak = (0.65 * 25e-6 * 180e3 * 0.68473) / Math.sqrt(287.05 * 298);
    expect(s[FULL]).toBeCloseTo(-Math.log(1 - leak / 70e-3), 2);
    // before a charger at rest the filter takes 2500 Pa (m/m_max)^2: one share of the flow is drawn in
    const drawnIn = (0.65 * 25e-6 * Math.sqrt(2 * 1.18 * 2500)) / 70e-3;
    expect(s[LOW]).toBeCloseTo(-drawnIn, 3);
    expect(s[IDLE]).toBeCloseTo(-drawnIn, 3);
  });

  it("reads the pressure before the throttle where it was recorded", () => {
    const model = modelOf({
      engine: { induction: "boosted" },
      readings: { boostPressure: [99e3, 99e3, 150e3, 160e3] },
    });
    expect(shifts("boost-leak", 25e-6, "meter", undefined, model)[LOW]).toBeGreaterThan(0.05);
  });

  it("pivots a scaled pressure about ambient or about zero, and says about which", () => {
    const hose = shifts("map-scaled", -0.1, "pressure", 0);
    expect(hose[IDLE]).toBeGreaterThan(Math.log(35 / (AMBIENT - 64 / 0.9)));
    expect(Math.abs(hose[FULL]!)).toBeLessThan(0.005);
    const { law } = CATALOGUE.find((c) => c.id === "map-scaled")!;
    expect(law.otherSizes!(METER_STRATEGY, -0.1, 0)[0]).toMatchObject({ name: "pivot", unit: "kPa", value: AMBIENT });
    expect(law.otherSizes!(METER_STRATEGY, -0.1, 1)[0]).toMatchObject({ value: 0 });
  });

  it("narrows recirculation only where the valve is commanded open", () => {
    const commanded = modelOf({ readings: { egrCommanded: [0, 0.4, 0, 0] } });
    expect(predictionOf(commanded, "egr-low-flow", 0.2).recirculation).toBe(0.2);
    expect(predictionOf(METER_STRATEGY, "egr-low-flow", 0.2).recirculation).toBeUndefined();
    expect(predictionOf(METER_STRATEGY, "egr-low-flow", 0.2).effect.every((v) => v === 0)).toBe(true);
  });
});

describe("the fuel supply", () => {
  it("falls short beyond its threshold by the loss at the largest flow, and tells both", () => {
    const s = shifts("fuel-supply-limited", 0.3, "fuel", 0.4, EVERYBODY);
    expect(s[FULL]).toBeCloseTo(-Math.log(0.7), 9);
    expect(s[LOW]).toBe(0);
    const { law } = CATALOGUE.find((c) => c.id === "fuel-supply-limited")!;
    const [threshold] = law.otherSizes!(METER_STRATEGY, 0.3, 0.4);
    expect(threshold).toMatchObject({ unit: "g/s", first: true });
    expect(threshold!.value).toBeCloseTo((0.4 * 70) / 14.6, 1);
  });

  it("rises by the root of the pressure where the regulator has lost its hose", () => {
    const s = shifts("fuel-pressure-reference", 70e3, "fuel", undefined, EVERYBODY);
    expect(s[IDLE]).toBeCloseTo(-0.5 * Math.log(1 + 70 / 300), 9);
    expect(s[CRUISE]).toBeCloseTo(-0.5 * Math.log(1 + (70 / 300) * (39 / 64)), 9);
  });
});

describe("the catalogue", () => {
  it("gives every cause a size worth mending below its largest, a reason, and what it does not mean", () => {
    for (const cause of CATALOGUE) {
      expect(cause.worthMending).toBeLessThan(cause.largest);
      expect(cause.sides[0] + cause.sides[1]).toBeCloseTo(1, 12);
      for (const text of [cause.reason, cause.means, cause.meansNot]) expect(text.length).toBeGreaterThan(20);
    }
  });
});
