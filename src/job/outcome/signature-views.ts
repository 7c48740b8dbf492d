/** The signatures of the leading causes along the air flow, with the 90 % band of their size, for the picture. */
import type { Weighed, WeighedCause } from "../../findings/index.ts";
import { sizeQuantile } from "../../findings/index.ts";
import type { Prepared } from "../../tally/index.ts";
import type { SignatureView, WitnessId } from "../result.ts";
import type { CommonAnswer } from "./air.ts";
import { round } from "./points.ts";

const MOST = 3;
const WORTH_DRAWING = 0.1;

export function signatureViews(weighed: Weighed, prepared: Prepared, answer: CommonAnswer): SignatureView[] {
  return weighed.causes
    .filter((c) => c.probability >= WORTH_DRAWING)
    .slice(0, MOST)
    .flatMap((cause) => ofCause(cause, prepared, answer));
}

function ofCause(cause: WeighedCause, { model }: Prepared, answer: CommonAnswer): SignatureView[] {
  const shape = cause.nodes.reduce((a, b) => (b.weight > a.weight ? b : a)).shape;
  const size = (p: number) => sizeQuantile(cause.nodes, p);
  const effects = [0.5, 0.05, 0.95].map((p) => cause.cause.law.predict(model, size(p), shape).effect);
  const w = model.witnesses.length;
  const order = model.points
    .map((_, i) => i)
    .filter((i) => !Number.isNaN(answer.logAir[i]!))
    .sort((a, b) => answer.logAir[a]! - answer.logAir[b]!);
  return model.witnesses.flatMap((witness, j) => {
    const rows = order.filter((i) => model.present[i * w + j] === 1);
    if (!rows.some((i) => Math.abs(effects[0]![i * w + j]!) > 0.005)) return [];
    const of = (n: number) => rows.map((i) => round(effects[n]![i * w + j]!));
    return [
      {
        cause: cause.cause.id,
        witness: witness as WitnessId,
        label: cause.cause.title,
        flow_g_per_s: rows.map((i) => round(1000 * Math.exp(answer.logAir[i]!))),
        departure: of(0),
        low90: of(1).map((v, n) => Math.min(v, of(2)[n]!)),
        high90: of(1).map((v, n) => Math.max(v, of(2)[n]!)),
      },
    ];
  });
}
