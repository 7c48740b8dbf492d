import fc from "fast-check";
import { expect, it } from "vitest";
import { denseEvidence, squareOf } from "../../test/tally/dense-evidence.ts";
import type { EngineDescription } from "../engine/index.ts";
import { defaultAssumptions, logEvidence, posterior, prepare, type TallyModel } from "./index.ts";

/** A small model with numbers from a seed; nothing physical about it. */
function someModel(seed: number, k: number, w: number, b: number, regions: number): TallyModel {
  let state = seed * 2654435761 + 1;
  const random = () => {
    state = (Math.imul(state ^ (state >>> 15), 2246822519) + 3266489917) >>> 0;
    return state / 2 ** 32 - 0.5;
  };
  const errors = new Float64Array(k * w * w);
  for (let i = 0; i < k; i++) {
    const z = Array.from({ length: w }, () => Array.from({ length: w }, random));
    for (let p = 0; p < w; p++) {
      for (let q = 0; q < w; q++) {
        let sum = p === q ? 0.2 : 0;
        for (let n = 0; n < w; n++) sum += z[p]![n]! * z[q]![n]!;
        errors[(i * w + p) * w + q] = sum;
      }
    }
  }
  const none = new Float64Array(k);
  // A random shared discrepancy, correlated between witnesses as those of one fuel are.
  const factor = Float64Array.from({ length: w * w }, (_, at) =>
    at % w > Math.floor(at / w) ? 0 : at % w === Math.floor(at / w) ? 0.2 + random() ** 2 : 0.3 * random(),
  );
  return {
    engine: {} as EngineDescription,
    assumptions: defaultAssumptions(),
    points: Array.from({ length: k }, (_, i) => ({
      id: i,
      recording: 0,
      start: 0,
      end: 1,
      states: [],
      region: "",
      readings: new Map(),
    })),
    witnesses: (["meter", "pressure", "fuel", "throttle", "exhaust"] as const).slice(0, w),
    y: Float64Array.from({ length: k * w }, random),
    present: new Uint8Array(k * w).fill(1),
    errors,
    discrepancy: Float64Array.from({ length: w }, (_, p) => squareOf(factor, w, p, p)),
    discrepancyFactor: factor,
    region: Int32Array.from({ length: k }, (_, i) => i % regions),
    regions,
    basis: Float64Array.from({ length: k * w * b }, random),
    columns: b,
    unknowns: [],
    moving: Array.from({ length: w }, () => Int32Array.from({ length: b }, (_, c) => c)),
    nonNegative: [],
    bounds: [],
    standing: [],
    physics: {
      speed: none,
      pressure: none,
      barometer: none,
      intakeTemperature: none,
      outsideTemperature: none,
      air: none,
      meter: {},
      pressureAir: none,
      meterVoltage: null,
      effectivePulse: none,
      exhaustPressure: none,
      idleFlow: 1,
      largestFlow: 1,
      stoichiometric: 14.6,
      throttle: null,
    },
  };
}

// Source: the dense formula itself (generalised least squares with a flat prior), [rasmussen2006] 2.7; algebra by ml-matrix.
it("equals the dense formula for any shift and response", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 1e6 }),
      fc.integer({ min: 2, max: 6 }),
      fc.integer({ min: 2, max: 5 }),
      (seed, k, w) => {
        const model = someModel(seed, k, w, 3, 2);
        const shift = model.y.map((v, i) => 0.3 * Math.sin(i + v));
        const response = model.y.map((_, i) => 1 + 0.5 * Math.cos(i));
        const dense = denseEvidence(model, shift, response);
        const prepared = prepare(model, response);
        const found = { witnesses: shift, standing: [] };
        expect(logEvidence(prepared, found)).toBeCloseTo(dense.value, 7);
        posterior(prepared, found).logAir.forEach((u, i) => {
          expect(u).toBeCloseTo(dense.air[i]!, 6);
        });
      },
    ),
    { seed: 11, numRuns: 40 },
  );
});

it("says nothing where every point has one witness", () => {
  const model = someModel(5, 4, 2, 3, 2);
  for (let i = 0; i < 4; i++) model.present[i * 2 + 1] = 0;
  const shift = { witnesses: model.y.map(() => 0.4), standing: [] };
  expect(logEvidence(prepare(model, null), shift)).toBeCloseTo(logEvidence(prepare(model, null), null), 12);
});

it("is not changed by a common change of all witnesses of a point", () => {
  const model = someModel(9, 5, 3, 3, 2);
  const moved = { ...model, y: model.y.map((v, i) => v + Math.floor(i / 3)) };
  expect(logEvidence(prepare(moved, null), null)).toBeCloseTo(logEvidence(prepare(model, null), null), 8);
});
