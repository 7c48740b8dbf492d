// Evidence with bounds against brute-force integration over every unknown and the air of the bounded point.
import { describe, expect, it } from "vitest";
import { normalCdf } from "../numerics/index.ts";
import { buildTallyModel, defaultAssumptions, logEvidence, prepare, type TallyModel } from "./index.ts";
import { ENGINE, point } from "./test-support/invented-points.ts";

/** Two unknowns only, no shared discrepancy: what is left can be integrated on a grid. */
function small(model: TallyModel): TallyModel {
  const w = model.witnesses.length;
  const k = model.points.length;
  const basis = new Float64Array(k * w * 2);
  for (let row = 0; row < k * w; row++) {
    basis[row * 2] = [0.03, -0.02, 0.05, 0.01][row % w]!;
    basis[row * 2 + 1] = 0.04 * Math.cos(1 + row);
  }
  const tiny = 1e-9;
  return {
    ...model,
    basis,
    columns: 2,
    unknowns: [],
    moving: model.witnesses.map(() => Int32Array.from([0, 1])),
    discrepancy: new Float64Array(w).fill(tiny),
    discrepancyFactor: Float64Array.from({ length: w * w }, (_, at) => (at % (w + 1) === 0 ? Math.sqrt(tiny) : 0)),
    standing: [],
  };
}

/**
 * ln of the integral over beta of N(beta) prod_k [ likelihood of the present rows with the air flat ] prod_bounds Phi, the air
 * of each point Gaussian given beta. Rows of a point independent here (their covariance is made diagonal).
 */
function bruteForce(model: TallyModel, shift: Float64Array): number {
  const w = model.witnesses.length;
  const steps = 71;
  const reach = 9;
  const cells: { readonly logDensity: number; readonly bounds: () => number }[] = [];
  for (let p = 0; p < steps; p++) {
    for (let q = 0; q < steps; q++) {
      const beta = [-reach + (2 * reach * p) / (steps - 1), -reach + (2 * reach * q) / (steps - 1)];
      const predicted = (row: number) =>
        model.basis[row * 2]! * beta[0]! + model.basis[row * 2 + 1]! * beta[1]! + shift[row]!;
      let logDensity = -0.5 * (beta[0]! ** 2 + beta[1]! ** 2) - Math.log(2 * Math.PI);
      const answers: { readonly air: number; readonly variance: number }[] = [];
      for (let k = 0; k < model.points.length; k++) {
        const here = model.witnesses.map((_, j) => k * w + j).filter((row) => model.present[row] === 1);
        const weights = here.map((row) => 1 / model.errors[row * w + (row % w)]!);
        const total = weights.reduce((a, b) => a + b, 0);
        const air = here.reduce((s, row, n) => s + weights[n]! * (model.y[row]! - predicted(row)), 0) / total;
        here.forEach((row, n) => {
          logDensity += 0.5 * Math.log(weights[n]!) - 0.5 * weights[n]! * (model.y[row]! - predicted(row) - air) ** 2;
        });
        logDensity -= 0.5 * Math.log(total);
        answers.push({ air, variance: 1 / total });
      }
      const bounds = () =>
        answers.reduce((product, { air, variance }, k) => product * keepsSides(model, k, air, variance, predicted), 1);
      cells.push({ logDensity, bounds });
    }
  }
  const most = Math.max(...cells.map((c) => c.logDensity));
  // A chance is at most one: cells of no weight without the bounds have none with them.
  const kept = cells.filter((c) => c.logDensity > most - 45);
  const sum = kept.reduce((total, c) => total + Math.exp(c.logDensity - most) * c.bounds(), 0);
  return most + Math.log(sum) + 2 * Math.log((2 * reach) / (steps - 1));
}

/** Chance that all bounds of a point hold, averaged over its air. */
function keepsSides(
  model: TallyModel,
  k: number,
  air: number,
  variance: number,
  predicted: (row: number) => number,
): number {
  const w = model.witnesses.length;
  const bounds = model.bounds.filter((b) => b.point === k);
  if (bounds.length === 0) return 1;
  if (bounds.length === 1) {
    const { witness, value, sign, variance: own } = bounds[0]!;
    const sd = Math.sqrt(variance + own + model.assumptions.pointNoise ** 2 + model.discrepancy[witness]!);
    return normalCdf((sign * (air + predicted(k * w + witness) - value)) / sd);
  }
  const chance = (u: number) =>
    bounds.reduce((product, { witness, value, sign, variance: own }) => {
      const sd = Math.sqrt(own + model.assumptions.pointNoise ** 2 + model.discrepancy[witness]!);
      return product * normalCdf((sign * (u + predicted(k * w + witness) - value)) / sd);
    }, 1);
  const n = 80;
  let sum = 0;
  for (let i = 0; i <= n; i++) {
    const z = -8 + (16 * i) / n;
    sum += Math.exp(-0.5 * z * z) * chance(air + z * Math.sqrt(variance));
  }
  return (sum * (16 / n)) / Math.sqrt(2 * Math.PI);
}

function diagonal(model: TallyModel): TallyModel {
  const w = model.witnesses.length;
  return {
    ...model,
    errors: model.errors.map((v, at) => (Math.floor(at / w) % w === at % w ? Math.max(v, 4e-4) : 0)),
  };
}

const FULL = ["warm", "full-load", "enrichment"] as const;
const CLOSED = ["warm", "closed-loop"] as const;
const BASE = {
  engineSpeed: 50,
  manifoldPressure: 45e3,
  intakeTemperature: 293.15,
  coolantTemperature: 363,
  meterFlow: 0.02,
  shortTrim: 0.02,
};
const curve = {
  signalUnit: "V",
  flow: "mass",
  at: null,
  points: [
    [1, 0],
    [2, 0.01],
    [4.8, 0.03],
  ],
} as const;
const METERED = {
  ...ENGINE,
  trimLimits: 0.06,
  meters: [{ id: "meter", kind: "hot-wire", bore: null, reference: null, bank: null, curve }],
} as const;

const CASES = {
  "a trim at its limit": [
    point(0, CLOSED, { ...BASE, shortTrim: 0.06 }),
    point(1, CLOSED, { ...BASE, meterFlow: 0.012, manifoldPressure: 30e3 }),
  ],
  "a narrow probe that stands lean at full load": [
    point(0, FULL, { ...BASE, manifoldPressure: 95e3, meterFlow: 0.025, probeVoltage: 0.1, lambdaCommanded: 0.88 }),
    point(1, CLOSED, BASE),
  ],
  "two bounds at one point: the meter at the end of its curve, the probe lean": [
    point(0, FULL, { ...BASE, manifoldPressure: 95e3, meterFlow: 0.03, probeVoltage: 0.1, lambdaCommanded: 0.88 }),
    point(1, CLOSED, BASE),
  ],
  "a meter at the end of its curve, and a trim at its limit": [
    point(0, FULL, { ...BASE, manifoldPressure: 95e3, meterFlow: 0.03, lambda: 0.9, lambdaCommanded: 0.88 }),
    point(1, CLOSED, { ...BASE, shortTrim: -0.06 }),
  ],
} as const;

describe("evidence with one-sided readings", () => {
  it.each(Object.entries(CASES))("equals the integral by brute force: %s", (_, points) => {
    const built = buildTallyModel({ points, keyOn: [] }, METERED, defaultAssumptions());
    const model = diagonal(small(built));
    expect(model.bounds.length).toBeGreaterThan(0);
    const none = model.y.map(() => 0);
    const healthy = logEvidence(prepare(model, null), null) - bruteForce(model, none);
    // The same constant for any shift: compared where the bounds agree with the rest and where they do not.
    for (const size of [-0.12, 0.12]) {
      for (const j of [0, model.witnesses.length - 1]) {
        const witnesses = model.y.map((_v, row) => (row % model.witnesses.length === j ? size : 0));
        const found = logEvidence(prepare(model, null), { witnesses, standing: [] });
        // several at once are weighed by numerics/orthant, good to 0.04 as stated there
        const tolerance = model.bounds.length > 1 ? 0.04 : 1e-3;
        expect(Math.abs(found - bruteForce(model, witnesses) - healthy)).toBeLessThan(tolerance);
      }
    }
  });

  it("speaks for the side the reading stands on, and hardly against what lies beyond it", () => {
    const stuck = point(0, CLOSED, { ...BASE, shortTrim: 0.25 });
    const model = buildTallyModel({ points: [stuck], keyOn: [] }, ENGINE, defaultAssumptions());
    const prepared = prepare(model, null);
    const j = model.witnesses.indexOf("fuel");
    const at = (lean: number) => {
      const witnesses = model.y.map((_, row) => (row % model.witnesses.length === j ? lean : 0));
      return logEvidence(prepared, { witnesses, standing: model.standing.map(() => 0) });
    };
    expect(at(0.25)).toBeGreaterThan(at(0) + 2);
    expect(Math.abs(at(0.6) - at(0.5))).toBeLessThan(0.01);
  });
});
