// Less recirculation than commanded is a narrower belief about the map, not a shift: where the valve is told to open and the
// pressure shows nothing, the evidence speaks for it; where it shows the usual, against it.
import { describe, expect, it } from "vitest";
import { modelOf, predictionOf } from "../../../test/signatures/signature-models.ts";
import { prepare, type TallyModel } from "../../tally/index.ts";
import { evidenceOf } from "../evidence-of.ts";

/** The model with recirculation of ln(1 + E/m) = g at cruise, where alone the valve is commanded open. */
function withRecirculation(g: number): TallyModel {
  const model = modelOf({ readings: { egrCommanded: [0, 0.4, 0, 0] } });
  const w = model.witnesses.length;
  const y = model.y.slice();
  // all witnesses agree but for what recirculates
  for (let i = 0; i < model.points.length; i++) for (let j = 0; j < w; j++) y[i * w + j] = Math.log(0.003 + 0.01 * i);
  y[w + model.witnesses.indexOf("pressure")]! += g;
  return { ...model, y };
}

function factor(model: TallyModel, share: number): number {
  const healthy = prepare(model, null);
  const usual = predictionOf(model, "egr-low-flow", 1);
  return evidenceOf(predictionOf(model, "egr-low-flow", share), healthy) - evidenceOf(usual, healthy);
}

describe("EGR that flows less than commanded", () => {
  it("is spoken for by a pressure that shows none, and against by one that shows the usual or more", () => {
    expect(factor(withRecirculation(0), 0.1)).toBeGreaterThan(0.05);
    expect(factor(withRecirculation(0.12), 0.1)).toBeLessThan(0);
    expect(factor(withRecirculation(0.25), 0.1)).toBeLessThan(factor(withRecirculation(0.12), 0.1));
  });

  it("changes nothing where all of the flow remains", () => {
    const model = withRecirculation(0.1);
    const healthy = prepare(model, null);
    const plain = predictionOf(modelOf(), "egr-low-flow", 0.1);
    expect(plain.recirculation).toBeUndefined();
    expect(evidenceOf(predictionOf(model, "egr-low-flow", 1), healthy)).toBeCloseTo(
      evidenceOf({ effect: new Float64Array(model.y.length), response: null, logAir: null, standing: [] }, healthy),
      9,
    );
  });
});
