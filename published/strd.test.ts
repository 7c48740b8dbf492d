/** Linear and nonlinear least squares against the NIST Statistical Reference Datasets: parameters, their standard errors and the sum. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { levenbergMarquardt, linearLeastSquares } from "../src/numerics/index.ts";
import { expectDigits } from "./matched-digits.ts";

type Parameter = {
  readonly name: string;
  readonly certified: number;
  readonly certifiedSd: number;
  readonly start1?: number;
  readonly start2?: number;
};
type DataSet = {
  readonly dataset: string;
  readonly data: readonly (readonly number[])[];
  readonly parameters: readonly Parameter[];
  readonly certifiedRSS: number;
  readonly certifiedResidualSd: number;
};

function read(name: string): DataSet {
  return JSON.parse(readFileSync(new URL(`./data/strd/${name}.json`, import.meta.url), "utf8")) as DataSet;
}

/** Value and gradient of the model. */
type Model = (b: Float64Array, x: number) => { value: number; gradient: number[] };

const powers = (x: number, from: number, to: number): number[] =>
  Array.from({ length: to - from + 1 }, (_, i) => x ** (from + i));

/** (b1 + b2 x + ...)/(1 + c1 x + ...): the numerator has `top` parameters. */
function rational(top: number): Model {
  return (b, x) => {
    const up = powers(x, 0, top - 1);
    const down = powers(x, 1, b.length - top);
    const numerator = up.reduce((sum, power, i) => sum + (b[i] ?? 0) * power, 0);
    const denominator = down.reduce((sum, power, i) => sum + (b[top + i] ?? 0) * power, 1);
    const value = numerator / denominator;
    return { value, gradient: [...up.map((p) => p / denominator), ...down.map((p) => (-value * p) / denominator)] };
  };
}

const MODELS: { readonly [name: string]: Model } = {
  Misra1a: ([b1 = 0, b2 = 0], x) => {
    const e = Math.exp(-b2 * x);
    return { value: b1 * (1 - e), gradient: [1 - e, b1 * x * e] };
  },
  Thurber: rational(4),
  Hahn1: rational(4),
  Kirby2: rational(3),
  MGH09: ([b1 = 0, b2 = 0, b3 = 0, b4 = 0], x) => {
    const up = x * x + x * b2;
    const down = x * x + x * b3 + b4;
    const value = (b1 * up) / down;
    return { value, gradient: [up / down, (b1 * x) / down, (-value * x) / down, -value / down] };
  },
  Rat43: ([b1 = 0, b2 = 0, b3 = 0, b4 = 1], x) => {
    const e = Math.exp(b2 - b3 * x);
    const value = b1 * (1 + e) ** (-1 / b4);
    const inner = (-value / b4) * (e / (1 + e));
    return { value, gradient: [value / b1, inner, -x * inner, (value * Math.log1p(e)) / (b4 * b4)] };
  },
};

function fitSet(set: DataSet, model: Model, start: readonly number[]) {
  const n = start.length;
  return levenbergMarquardt({
    start,
    count: set.data.length,
    residuals: (b, out) => {
      for (const [i, [y, x]] of set.data.entries()) out[i] = model(b, x as number).value - (y as number);
    },
    jacobian: (b, out) => {
      for (const [i, [, x]] of set.data.entries()) out.set(model(b, x as number).gradient, i * n);
    },
  });
}

describe("nist strd, nonlinear", () => {
  for (const [name, model] of Object.entries(MODELS)) {
    const set = read(name);
    for (const start of ["start1", "start2"] as const) {
      it(`${name} is fitted from ${start} to six digits in parameters and four in their standard errors`, () => {
        const result = fitSet(
          set,
          model,
          set.parameters.map((p) => p[start] ?? Number.NaN),
        );
        expect(result.status, result.message).toBe("converged");
        const n = set.parameters.length;
        for (const [j, parameter] of set.parameters.entries()) {
          expectDigits(result.parameters[j] ?? Number.NaN, parameter.certified, 6, `${name} ${parameter.name}`);
          const variance = (result.unitCovariance?.[j * n + j] ?? Number.NaN) * result.residualVariance;
          expectDigits(Math.sqrt(variance), parameter.certifiedSd, 4, `${name} sd of ${parameter.name}`);
        }
        expectDigits(result.residualSumOfSquares, set.certifiedRSS, 8, `${name} sum of squares`);
        expectDigits(Math.sqrt(result.residualVariance), set.certifiedResidualSd, 8, `${name} residual sd`);
      });
    }

    it(`${name} has the certified sum at the certified parameters`, () => {
      const certified = Float64Array.from(set.parameters.map((p) => p.certified));
      const sum = set.data.reduce(
        (total, [y, x]) => total + ((y as number) - model(certified, x as number).value) ** 2,
        0,
      );
      expectDigits(sum, set.certifiedRSS, 8, name);
    });
  }

  it("fails once the model or the data move: the sum of Misra1a is not met with a point moved by 0.1 %", () => {
    const set = read("Misra1a");
    const model = MODELS.Misra1a;
    if (model === undefined) throw new Error("Misra1a has a model");
    const moved = {
      ...set,
      data: set.data.map(([y, x], i) => [i === 5 ? (y as number) * 1.001 : (y as number), x as number]),
    };
    const result = fitSet(moved, model, [250, 0.0005]);
    expect(() => expectDigits(result.residualSumOfSquares, set.certifiedRSS, 8)).toThrow();
    expect(() => expectDigits(result.parameters[0] ?? Number.NaN, 238.94212918, 6)).toThrow();
  });
});

describe("nist strd, linear", () => {
  const solve = (set: DataSet) => {
    const n = set.parameters.length;
    const design = Float64Array.from(set.data.flatMap(([, ...x]) => [1, ...x]));
    const result = linearLeastSquares(design, Float64Array.from(set.data.map(([y]) => y as number)), n);
    if (result.status !== "solved") throw new Error("rank-deficient");
    return result;
  };
  for (const [name, digits] of [
    ["Norris", 9],
    ["Longley", 8],
  ] as const) {
    it(`${name} is solved to ${digits} digits in parameters and standard errors`, () => {
      const set = read(name);
      const result = solve(set);
      const n = set.parameters.length;
      for (const [j, parameter] of set.parameters.entries()) {
        expectDigits(result.parameters[j] ?? Number.NaN, parameter.certified, digits, `${name} ${parameter.name}`);
        const sd = Math.sqrt((result.unitCovariance[j * n + j] ?? Number.NaN) * result.residualVariance);
        expectDigits(sd, parameter.certifiedSd, digits, `${name} sd of ${parameter.name}`);
      }
      expectDigits(result.residualSumOfSquares, set.certifiedRSS, digits, name);
    });
  }
});
