import { describe, expect, it } from "vitest";
import { type CurveForm, flowFunction, signalFunction } from "./curve-form.ts";
import type { BenchPoint } from "./fit-candidates.ts";
import { type CurveFit, type FitOptions, fitCurve } from "./fit-curve.ts";
import { curveFunctions } from "./meter-curve.ts";

const OPTIONS: FitOptions = { signalUnit: "V", flow: "mass", at: null };

/** Normal deviates without a generator: quantiles of the normal distribution in a fixed shuffled order. */
const DEVIATES = [
  0.36, -1.21, 0.84, -0.13, 1.64, -0.67, 0.13, -0.36, 1.04, -1.64, 0.6, -0.95, -0.05, 1.3, -0.5, 0.25, -1.4, 0.75, 0.05,
  -0.2,
];

function benchOf(form: CurveForm, domain: readonly [number, number], relativeSd = 0.005, n = 20): BenchPoint[] {
  const flow = flowFunction(form);
  return Array.from({ length: n }, (_, i) => {
    const signal = domain[0] + ((domain[1] - domain[0]) * i) / (n - 1);
    const truth = flow(signal);
    const flowSd = relativeSd * Math.abs(truth) + 2e-6;
    return { signal, flow: truth + flowSd * DEVIATES[i % DEVIATES.length]!, flowSd };
  });
}

function fitted(points: readonly BenchPoint[], options = OPTIONS): CurveFit {
  const result = fitCurve(points, options);
  if (!result.ok) throw new Error(result.message);
  return result.value;
}

const LAWS: readonly { readonly name: string; readonly form: CurveForm; readonly domain: readonly [number, number] }[] =
  [
    { name: "King's law", form: { kind: "king", still: 0.9, slope: 42, exponent: 0.52 }, domain: [1.6, 4.5] },
    { name: "power law", form: { kind: "power", scale: 0.002, offset: -0.8, exponent: 3.4 }, domain: [0.5, 4] },
    {
      name: "exponential",
      form: { kind: "exponential", scale: 0.0021, rate: 3.6, offset: -0.0004 },
      domain: [0.1, 0.95],
    },
    {
      name: "straight line",
      form: { kind: "polynomial", coefficients: [0.05, 0.048], centre: 500, halfWidth: 480 },
      domain: [20, 980],
    },
  ];

describe("fitCurve", () => {
  for (const { name, form, domain } of LAWS) {
    it(`finds the ${name} that made the points and covers the truth with its band`, () => {
      const fit = fitted(benchOf(form, domain));
      expect(fit.chosen.name).toBe(name);
      expect(fit.candidates.reduce((sum, c) => sum + c.weight, 0)).toBeCloseTo(1, 12);
      expect(fit.chosen.chiSquare / fit.chosen.degreesOfFreedom).toBeLessThan(1.6);
      const truth = flowFunction(form);
      const { read } = curveFunctions(fit.chosen.curve);
      let outside = 0;
      for (let i = 0; i <= 100; i++) {
        const at = domain[0] + ((domain[1] - domain[0]) * i) / 100;
        const { flow, sd } = read(at);
        if (Math.abs(flow - truth(at)) > 2.6 * sd!) outside++;
        expect(Math.abs(flow / truth(at) - 1)).toBeLessThan(0.03);
      }
      expect(outside).toBeLessThanOrEqual(3);
      expect(fit.chosen.parameters.every((p) => p.standardError > 0)).toBe(true);
    });
  }

  it("finds a film law in points of both directions", () => {
    const form: CurveForm = { kind: "film", scaleFlow: 0.08, leak: 0.6, zero: 1, span: 4 };
    const signalOf = signalFunction(form, [-10, 10]);
    const points = Array.from({ length: 20 }, (_, i) => {
      const flow = -0.03 + (0.2 * i) / 19;
      return { signal: signalOf(flow)!, flow: flow + 1e-4 * DEVIATES[i]!, flowSd: 1e-4 };
    });
    const fit = fitted(points, { ...OPTIONS, only: ["film law", "straight line", "power law"] });
    expect(fit.chosen.name).toBe("film law");
    expect(fit.chosen.form).toMatchObject({ kind: "film" });
  });

  it("widens its band where the points scatter more than they say", () => {
    const honest = benchOf(LAWS[0]!.form, LAWS[0]!.domain);
    const boasting = honest.map((p) => ({ ...p, flowSd: p.flowSd / 5 }));
    const only = ["King's law"];
    const plain = fitted(honest, { ...OPTIONS, only });
    const scaled = fitted(boasting, { ...OPTIONS, only });
    expect(scaled.birgeRatio).toBeGreaterThan(3);
    const sd = (fit: CurveFit) => curveFunctions(fit.chosen.curve).read(3).sd!;
    expect(sd(scaled) / sd(plain)).toBeGreaterThan(0.6);
  });

  it("weighs points by the uncertainty of their signal too", () => {
    const points = benchOf(LAWS[0]!.form, LAWS[0]!.domain).map((p) => ({ ...p, signalSd: 0.05 }));
    const only = ["King's law"];
    const wide = fitted(points, { ...OPTIONS, only }).chosen;
    const narrow = fitted(benchOf(LAWS[0]!.form, LAWS[0]!.domain), { ...OPTIONS, only }).chosen;
    expect(wide.chiSquare).toBeLessThan(narrow.chiSquare / 4);
  });

  it("tries every law and every degree that the points allow", () => {
    const names = (points: readonly BenchPoint[]) => {
      const { candidates, rejected } = fitted(points);
      return [...candidates, ...rejected].map((c) => c.name).sort();
    };
    const degrees = [2, 3, 4, 5].map((degree) => `polynomial of degree ${degree}`);
    const always = ["King's law", "exponential", ...degrees, "power law", "straight line"];
    expect(names(benchOf(LAWS[0]!.form, LAWS[0]!.domain))).toEqual(always);
    const few = benchOf(LAWS[3]!.form, LAWS[3]!.domain, 0.005, 5);
    expect(names(few)).toEqual(always.filter((name) => !/[45]$/.test(name)));
    const both = few.map((p) => ({ ...p, flow: p.flow - 0.04 }));
    expect(names(both)).toContain("film law");
  });

  it("weighs laws by misfit over scatter and by how many numbers they take", () => {
    // scatter four times as large as stated: the misfits count a sixteenth
    const points = benchOf(LAWS[0]!.form, LAWS[0]!.domain).map((p) => ({ ...p, flowSd: p.flowSd / 4 }));
    const { candidates, birgeRatio } = fitted(points);
    const least = Math.min(...candidates.map((c) => c.chiSquare / c.degreesOfFreedom));
    expect(birgeRatio).toBeCloseTo(Math.sqrt(least), 10);
    expect(birgeRatio).toBeGreaterThan(2);
    const [first, second] = candidates as [(typeof candidates)[0], (typeof candidates)[0]];
    const misfit = (first.chiSquare - second.chiSquare) / (2 * birgeRatio ** 2);
    const numbers = ((first.parameters.length - second.parameters.length) / 2) * Math.log(points.length);
    expect(Math.log(first.weight / second.weight)).toBeCloseTo(-misfit - numbers, 8);
  });

  it("finds a film's law in a frequency and in its period alike", () => {
    const law = { scaleFlow: 0.06, leak: 0.5, zero: 3000, span: 2200 };
    const flows = [-0.02, -0.01, -0.004, 0, 0.004, 0.01, 0.02, 0.04, 0.08, 0.13];
    const frequency = flowFunction({ kind: "film", ...law });
    const toSignal = signalFunction({ kind: "film", ...law }, [1000, 5199]);
    const points = flows.map((flow) => ({ signal: toSignal(flow)!, flow, flowSd: 0.01 * Math.abs(flow) + 1e-4 }));
    const periods = points.map((p) => ({ ...p, signal: 1 / p.signal }));
    const level = fitted(points, { ...OPTIONS, signalUnit: "Hz" }).chosen;
    const period = fitted(periods, { ...OPTIONS, signalUnit: "ms" }).chosen;
    expect(level).toMatchObject({ name: "film law", form: { kind: "film" } });
    expect(period).toMatchObject({ name: "film law", form: { kind: "film-period" } });
    for (const at of [2400, 3100, 4500]) {
      expect(flowFunction(level.form)(at)).toBeCloseTo(frequency(at), 7);
      expect(flowFunction(period.form)(1 / at)).toBeCloseTo(frequency(at), 7);
    }
  });

  it("puts laws out that turn back, and tells why", () => {
    const plateau = [0.1, 0.3, 0.32, 0.31, 0.6].map((flow, i) => ({ signal: i + 1, flow, flowSd: 0.001 }));
    const fit = fitCurve(plateau, OPTIONS);
    const rejected = fit.ok ? fit.value.rejected : [];
    expect(rejected.some((r) => r.reason.startsWith("it turns back"))).toBe(true);
  });

  it("refuses points it cannot use, and says which", () => {
    const points = benchOf(LAWS[3]!.form, LAWS[3]!.domain);
    expect(fitCurve(points.slice(0, 2), OPTIONS)).toMatchObject({ ok: false, reason: "too-few-points" });
    const bad = fitCurve(points.with(4, { ...points[4]!, flowSd: 0 }), OPTIONS);
    expect(bad).toMatchObject({ ok: false, reason: "point-invalid" });
    expect(bad.ok ? "" : bad.message).toContain("Point 5");
    expect(fitCurve(points, { ...OPTIONS, only: ["no such law"] })).toMatchObject({ ok: false, reason: "no-law-fits" });
  });
});
