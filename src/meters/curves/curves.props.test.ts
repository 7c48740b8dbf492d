import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evaluateMonotoneCubic, monotoneCubic } from "../../numerics/index.ts";
import { QUALITY } from "../../quantities/index.ts";
import { meterFlow } from "../meter-flow.ts";
import { prepareMeter } from "../prepare-meter.ts";
import { curveFromCsv, curveToCsv } from "./curve-csv.ts";
import { type CurveForm, flowFunction, signalFunction } from "./curve-form.ts";
import { curveFromJson, curveToJson } from "./curve-json.ts";
import { curveFunctions, curveSlope, type FlowCurve, turningSignal, zeroFlowSignal } from "./meter-curve.ts";
import { tabulateCurve } from "./tabulate-curve.ts";

const DOMAIN = [1, 4.5] as const;
/** One curve of each form, all rising over the domain. */
const FORMS: readonly CurveForm[] = [
  {
    kind: "points",
    points: [
      [1, 0.001],
      [2, 0.01],
      [3, 0.05],
      [4.5, 0.25],
    ],
  },
  { kind: "power", scale: 0.004, offset: 0.6, exponent: 2.9 },
  { kind: "king", still: 0.9, slope: 42, exponent: 0.52 },
  { kind: "exponential", scale: 0.0005, rate: 1.4, offset: -0.001 },
  { kind: "film", scaleFlow: 0.09, leak: 0.5, zero: 1, span: 4 },
  { kind: "film-period", scaleFlow: 0.09, leak: 0.5, zero: 1, span: -0.85 },
  { kind: "polynomial", coefficients: [0.061, 0.1, 0.05, 0.01], centre: 2.75, halfWidth: 1.75 },
];
const curveOf = (form: CurveForm): FlowCurve => ({
  signalUnit: "V",
  flow: "mass",
  at: null,
  form,
  domain: DOMAIN,
  band: null,
});
const share = fc.double({ min: 0.001, max: 0.999, noNaN: true });
const AIR = { pressure: 101_325, temperature: 293.15, humidityRatio: 0 };

describe("curve forms", () => {
  for (const form of FORMS) {
    it(`${form.kind}: the signal of a flow undoes the flow of a signal, and the curve rises`, () => {
      const flow = flowFunction(form);
      const signal = signalFunction(form, DOMAIN);
      fc.assert(
        fc.property(share, (s) => {
          const at = DOMAIN[0] + s * (DOMAIN[1] - DOMAIN[0]);
          expect(signal(flow(at))).toBeCloseTo(at, 7);
          expect(flow(at + 1e-4)).toBeGreaterThan(flow(at));
          const h = 1e-5;
          expect(curveSlope(curveOf(form), at) / ((flow(at + h) - flow(at - h)) / (2 * h))).toBeCloseTo(1, 2);
        }),
      );
      expect(signal(1e3)).toBeNull();
    });

    it(`${form.kind}: is a table with its error stated, and no more than that is lost`, () => {
      const table = tabulateCurve(curveOf(form), 1e-5);
      if (!table.ok) throw new Error(table.message);
      expect(table.value.tableError).toBeLessThanOrEqual(1e-5);
      const prepared = prepareMeter({
        id: "meter",
        kind: "hot-wire",
        bank: null,
        bore: null,
        reference: null,
        curve: table.value.curve,
      });
      if (!prepared.ok) throw new Error(prepared.message);
      const flow = flowFunction(form);
      fc.assert(
        fc.property(share, (s) => {
          const at = DOMAIN[0] + s * (DOMAIN[1] - DOMAIN[0]);
          const departure = meterFlow(prepared.value, at, AIR).massFlow - flow(at);
          expect(Math.abs(departure)).toBeLessThan(1.1e-5 * flow(DOMAIN[1]));
        }),
      );
    });

    it(`${form.kind}: survives JSON to the last digit, with air and band`, () => {
      const curve: FlowCurve = {
        ...curveOf(form),
        at: { pressure: 99_800, temperature: 295.65 },
        band: { signal: [1, 2, 4.5], sd: [1e-5, 2e-5, 3e-4] },
      };
      const back = curveFromJson(curveToJson(curve));
      expect(back).toEqual({ ok: true, value: curve });
    });
  }

  it("king and power read zero below their zero of flow", () => {
    expect(flowFunction(FORMS[1]!)(0.1)).toBe(0);
    expect(flowFunction(FORMS[2]!)(0.1)).toBe(0);
    expect(signalFunction(FORMS[2]!, DOMAIN)(-0.1)).toBeNull();
  });

  it("film has no flow beyond its limits, and the quality says so", () => {
    const { read } = curveFunctions(curveOf({ kind: "film", scaleFlow: 0.09, leak: 0.5, zero: 1, span: 3 }));
    expect(read(4.2).quality).toBe(QUALITY.notANumber);
    expect(read(2).quality).toBe(QUALITY.good);
    const period = curveFunctions(curveOf({ kind: "film-period", scaleFlow: 0.09, leak: 0.5, zero: 1, span: 0.9 }));
    for (const none of [0, -1, 0.4]) expect(period.read(none).quality).toBe(QUALITY.notANumber);
    expect(period.read(1).flow).toBe(0);
  });
});

describe("meter curve", () => {
  it("reads flow, band and quality, and marks signals outside its domain", () => {
    const { read, signalOf, flowOf } = curveFunctions({
      ...curveOf(FORMS[0]!),
      band: { signal: [1, 4.5], sd: [1e-4, 3e-4] },
    });
    expect(read(2)).toMatchObject({ flow: 0.01, quality: QUALITY.good });
    expect(read(2.75).sd).toBeCloseTo(2e-4, 12);
    expect(read(5).quality).toBe(QUALITY.outsideValidity);
    expect(signalOf(flowOf(3))).toBeCloseTo(3, 9);
    expect(curveFunctions(curveOf(FORMS[0]!)).read(2).sd).toBeNull();
  });

  it("as a table states an error that the whole curve keeps, its first and last interval too", () => {
    // steep where the flow begins, and steep where it ends
    const forms: CurveForm[] = [
      { kind: "power", scale: 1, offset: 0, exponent: 0.3 },
      { kind: "polynomial", coefficients: [0, 0, 0, 0, 0, 0, 0, 1], centre: 0, halfWidth: 1 },
    ];
    for (const form of forms) {
      const domain = [0, 1] as const;
      const curve = { ...curveOf(form), domain };
      const table = tabulateCurve(curve, 1);
      if (!table.ok) throw new Error(table.message);
      const { points } = table.value.curve;
      const cubic = monotoneCubic(
        points.map(([s]) => s),
        points.map(([, m]) => m),
      );
      const flow = flowFunction(form);
      const largest = Math.max(...points.map(([, m]) => Math.abs(m)));
      let worst = 0;
      for (let i = 0; i <= 3200; i++) {
        const at = domain[0] + ((domain[1] - domain[0]) * i) / 3200;
        worst = Math.max(worst, Math.abs(evaluateMonotoneCubic(cubic, at) - flow(at)) / largest);
      }
      expect(worst).toBeLessThan(1.05 * table.value.tableError);
      expect(worst).toBeGreaterThan(0.9 * table.value.tableError);
    }
  });

  it("knows where it turns back, where it is zero, and refuses to be tabulated when it turns", () => {
    const bent: CurveForm = { kind: "polynomial", coefficients: [0.1, 0.02, -0.2], centre: 2.75, halfWidth: 1.75 };
    expect(turningSignal(curveOf(bent))).not.toBeNull();
    expect(tabulateCurve(curveOf(bent))).toMatchObject({ ok: false, reason: "not-monotone" });
    expect(turningSignal(curveOf(FORMS[2]!))).toBeNull();
    expect(zeroFlowSignal(curveOf({ kind: "polynomial", coefficients: [0, 1], centre: 2, halfWidth: 1 }))).toBeCloseTo(
      2,
      9,
    );
    expect(zeroFlowSignal(curveOf(FORMS[3]!))).toBeNull();
  });
});

describe("curve as CSV", () => {
  it("comes back as the same points, in any unit, with air and band", () => {
    for (const symbol of ["g/s", "kg/h", "lb/min"]) {
      const curve: FlowCurve = {
        ...curveOf(FORMS[0]!),
        at: { pressure: 101_325, temperature: 293.15 },
        band: { signal: [1, 4.5], sd: [1e-4, 3e-4] },
      };
      const table = curveFromCsv(curveToCsv(curve, symbol));
      if (!table.ok) throw new Error(table.message);
      expect(table.value).toMatchObject({ signalUnit: "V", flow: "mass", at: curve.at });
      for (const [i, [signal, flow]] of (FORMS[0] as Extract<CurveForm, { kind: "points" }>).points.entries()) {
        expect(table.value.points[i]!.signal).toBeCloseTo(signal, 12);
        expect(table.value.points[i]!.flow).toBeCloseTo(flow, 12);
      }
      expect(table.value.points[0]!.flowSd).toBeCloseTo(1e-4, 12);
    }
  });

  it("reads ratio, period and volume columns and the uncertainty of the signal", () => {
    const table = curveFromCsv("signal [ms],flow [L/s],signal sd [ms]\n2,10,0.01\n1,20,0.01\n");
    if (!table.ok) throw new Error(table.message);
    expect(table.value).toMatchObject({ signalUnit: "ms", flow: "volume" });
    expect(table.value.points[0]).toMatchObject({ signal: 0.002, flow: 0.01, signalSd: 1e-5 });
    expect(table.value.points[0]!.flowSd).toBeNaN();
    const ratio = curveToCsv({ ...curveOf(FORMS[1]!), signalUnit: "ratio" }, "g/s", 5);
    const back = curveFromCsv(ratio);
    expect(back.ok && back.value.signalUnit).toBe("ratio");
  });

  it("refuses what it does not understand, with the line", () => {
    const reason = (text: string) => {
      const result = curveFromCsv(text);
      return result.ok ? null : [result.reason, result.where?.line];
    };
    expect(reason("")).toEqual(["no-header", undefined]);
    expect(reason("voltage [V],flow [g/s]\n")).toEqual(["unknown-column", 1]);
    expect(reason("signal [V]\n1\n")).toEqual(["unknown-column", 1]);
    expect(reason("signal [V],flow [bananas]\n")).toEqual(["unknown-unit", 1]);
    expect(reason("signal [kPa],flow [g/s]\n")).toEqual(["unknown-unit", 1]);
    expect(reason("signal [V],flow [g/s]\n1,2\n2,x\n")).toEqual(["not-a-number", 3]);
    expect(reason("signal [V],flow [g/s]\n1,2\nx,3\n")).toEqual(["not-a-number", 3]);
    expect(reason("signal [V],flow [g/s]\n1,2,3\n2,3\n")).toEqual(["not-a-number", 2]);
    expect(reason("signal [V],flow [g/s]\n1,2\n")).toEqual(["too-few-points", undefined]);
  });

  it("refuses an air it cannot read, columns named twice and an sd of another kind; other comments are none of its business", () => {
    const reason = (head: string) => {
      const result = curveFromCsv(`${head}\n1,2,3\n2,3,4\n`);
      return result.ok ? result.value.at : [result.reason, result.where?.line];
    };
    const columns = "signal [V],flow [g/s],sd [g/s]";
    for (const air of ["101.3 kPa, 293 K", "e Pa, 293 K", "1.2.3 Pa, 293 K", "-1 Pa, 293 K", "1e400 Pa, 293 K", ""])
      expect(reason(`# air: ${air}\n${columns}`), air).toEqual(["air-line", 1]);
    expect(reason(`# air 101325 Pa, 293.15 K\n${columns}`)).toEqual(["air-line", 1]);
    expect(reason(`# airy remark\n#Air: 1e5 Pa, 300 K\n${columns}`)).toEqual({ pressure: 100_000, temperature: 300 });
    expect(reason("signal [V],flow [g/s],sd [L/s]")).toEqual(["unknown-unit", 1]);
    expect(reason("signal [V],flow [g/s],signal sd [Hz]")).toEqual(["unknown-unit", 1]);
    expect(reason("signal [V],flow [g/s],flow [kg/h]")).toEqual(["unknown-column", 1]);
  });
});

describe("curve as JSON", () => {
  const good = JSON.parse(curveToJson(curveOf(FORMS[1]!))) as { [key: string]: unknown };
  const reason = (change: { [key: string]: unknown }) => {
    const result = curveFromJson(JSON.stringify({ ...good, ...change }));
    return result.ok ? null : result.reason;
  };

  it("refuses text that is no curve, unknown keys and values that cannot be", () => {
    expect(curveFromJson("{")).toMatchObject({ ok: false, reason: "not-a-curve" });
    expect(reason({ format: "something/1" })).toBe("not-a-curve");
    expect(reason({ colour: 1 })).toBe("unknown-key");
    expect(reason({ form: { kind: "power", scale: 1, offset: 0, exponent: 2, extra: 1 } })).toBe("unknown-key");
    expect(reason({ form: { kind: "spiral" } })).toBe("value-invalid");
    expect(reason({ form: { kind: "power", scale: "x", offset: 0, exponent: 2 } })).toBe("value-invalid");
    expect(reason({ form: { kind: "points", points: [[1, 2]] } })).toBe("value-invalid");
    expect(reason({ form: { kind: "polynomial", coefficients: [], centre: 0, halfWidth: 1 } })).toBe("value-invalid");
    expect(reason({ signalUnit: "kPa" })).toBe("value-invalid");
    expect(reason({ flow: "heat" })).toBe("value-invalid");
    expect(reason({ domain: [2, 1] })).toBe("value-invalid");
    expect(reason({ at: { pressure_Pa: -1, temperature_K: 293 } })).toBe("value-invalid");
    expect(reason({ band: { signal: [2, 1], sd: [1, 1] } })).toBe("value-invalid");
    expect(reason({})).toBeNull();
  });
});
