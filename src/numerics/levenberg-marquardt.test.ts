import { describe, expect, it } from "vitest";
import { levenbergMarquardt } from "./levenberg-marquardt.ts";
import { linearLeastSquares } from "./linear-least-squares.ts";

describe("levenbergMarquardt", () => {
  it("says that data do not determine a parameter", () => {
    const fit = levenbergMarquardt({
      start: [1, 1],
      count: 5,
      residuals: (p, out) => {
        for (let i = 0; i < 5; i++) out[i] = p[0]! * p[1]! - i;
      },
    });
    expect(fit.status).toBe("singular");
    expect(fit.unitCovariance).toBeNull();
  });

  it("says that it did not settle when iterations run out", () => {
    const fit = levenbergMarquardt({
      start: [-1.2, 1],
      count: 2,
      maxIterations: 3,
      residuals: ([x = 0, y = 0], out) => {
        out[0] = 10 * (y - x * x);
        out[1] = 1 - x;
      },
    });
    expect(fit.status).toBe("not-converged");
  });

  it("finds the floor of Rosenbrock's valley without a Jacobian", () => {
    const fit = levenbergMarquardt({
      start: [-1.2, 1],
      count: 2,
      residuals: ([x = 0, y = 0], out) => {
        out[0] = 10 * (y - x * x);
        out[1] = 1 - x;
      },
    });
    expect(fit.status).toBe("converged");
    expect(fit.parameters[0]).toBeCloseTo(1, 8);
    expect(fit.parameters[1]).toBeCloseTo(1, 8);
    expect(fit.residualVariance).toBeNaN();
  });

  it("steps back where the model is not defined", () => {
    const fit = levenbergMarquardt({
      start: [0.1],
      count: 3,
      residuals: ([p = 0], out) => {
        for (let i = 0; i < 3; i++) out[i] = Math.log(p) - Math.log(5);
      },
    });
    expect(fit.parameters[0]).toBeCloseTo(5, 9);
  });
});

describe("linearLeastSquares", () => {
  it("names the column that depends on the others", () => {
    const design = Float64Array.from([1, 2, 1, 2, 1, 2]);
    expect(linearLeastSquares(design, Float64Array.from([1, 2, 3]), 2)).toEqual({
      status: "rank-deficient",
      column: 1,
    });
  });

  it("leaves residuals that no column can explain", () => {
    const design = Float64Array.from([1, 0, 1, 1, 1, 2, 1, 3.5]);
    const fit = linearLeastSquares(design, Float64Array.from([1, 2.2, 2.9, 4.1]), 2);
    if (fit.status !== "solved") throw new Error("solved");
    for (const column of [0, 1]) {
      let product = 0;
      for (let i = 0; i < 4; i++) product += design[2 * i + column]! * fit.residuals[i]!;
      expect(product).toBeCloseTo(0, 12);
    }
    expect(fit.degreesOfFreedom).toBe(2);
  });
});
