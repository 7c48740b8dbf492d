/**
 * The common answer: the air of every point under all explanations, each weighed by its probability.
 *
 * Equation    u = sum p_h u_h,  var = sum p_h (var_h + (u_h - u)^2); intervals are those of a normal distribution of that spread
 */
import { explanationPrediction, shiftFor, type Weighed } from "../../findings/index.ts";
import { type Posterior, type Prepared, posterior, prepare } from "../../tally/index.ts";

export type CommonAnswer = {
  /** K: ln(kg/s); NaN where no witness */
  readonly logAir: Float64Array;
  readonly sd: Float64Array;
  /** K*W: what breathing, healthy tolerances and the region take from each witness under the same mixture */
  readonly correction: Float64Array;
};

/** Explanations with less than this share change nothing that is printed. */
const WORTH_WEIGHING = 0.005;

export function commonAnswer(weighed: Weighed, prepared: Prepared): CommonAnswer {
  const parts: { share: number; posterior: Posterior }[] = [
    { share: weighed.healthy.probability + weighed.unexplained.probability, posterior: posterior(prepared, null) },
  ];
  for (const explanation of weighed.explanations) {
    if (explanation.probability < WORTH_WEIGHING) break;
    const prediction = explanationPrediction(explanation, prepared);
    const own = prediction.response === null ? prepared : prepare(prepared.model, prediction.response);
    parts.push({ share: explanation.probability, posterior: posterior(own, shiftFor(prediction, prepared)) });
  }
  const total = parts.reduce((sum, part) => sum + part.share, 0);
  const mix = (of: (p: Posterior) => Float64Array) => {
    const out = new Float64Array(of(parts[0]!.posterior).length);
    for (const { share, posterior: p } of parts) {
      const values = of(p);
      for (let i = 0; i < out.length; i++) out[i] = out[i]! + (share / total) * values[i]!;
    }
    return out;
  };
  const logAir = mix((p) => p.logAir);
  const spread = mix((p) => p.variance.map((v, i) => v + (p.logAir[i]! - logAir[i]!) ** 2));
  return { logAir, sd: spread.map((v) => Math.sqrt(Math.max(0, v))), correction: mix((p) => p.correction) };
}
