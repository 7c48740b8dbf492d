/** Operating points as they stand in the result. */
import type { TallyModel } from "../../tally/index.ts";
import type { PointResult, WitnessId } from "../result.ts";
import type { CommonAnswer } from "./air.ts";
import { departureAt, wordOf } from "./departures.ts";
import { soleWord } from "./sole-word.ts";

export function pointResults(model: TallyModel, answer: CommonAnswer): PointResult[] {
  const alone = model.witnesses.length < 2;
  return model.points.map((point, i) => {
    const witnesses: { [id in WitnessId]?: { massFlow_g_per_s: number; relativeSd: number } } = {};
    model.witnesses.forEach((id, j) => {
      const departure = departureAt(model, answer, i, j);
      if (departure !== null)
        witnesses[id] = {
          massFlow_g_per_s: round(1000 * (alone ? soleWord(model, i).air : wordOf(model, answer, i, j))),
          relativeSd: round(departure.sd),
        };
    });
    const known = !Number.isNaN(answer.logAir[i]!);
    const { air, sd } = alone ? soleWord(model, i) : { air: Math.exp(answer.logAir[i]!), sd: answer.sd[i]! };
    const at = (z: number) => round(1000 * air * Math.exp(z * sd));
    return {
      id: point.id,
      recording: point.recording,
      start_s: round(point.start),
      end_s: round(point.end),
      states: point.states,
      speed_rpm: round(model.physics.speed[i]! * 60),
      manifoldPressure_kPa: point.readings.has("manifoldPressure") ? round(model.physics.pressure[i]! / 1000) : null,
      censored: model.bounds.filter((b) => b.point === i).map((b) => model.witnesses[b.witness]!),
      witnesses,
      air_g_per_s: known ? at(0) : null,
      air_low90: known ? at(-1.6449) : null,
      air_high90: known ? at(1.6449) : null,
    };
  });
}

/** Six figures are more than any of this is good to, and keep the file readable. */
export function round(value: number): number {
  if (value === 0 || !Number.isFinite(value)) return value;
  const scale = 10 ** (5 - Math.floor(Math.log10(Math.abs(value))));
  return Number.isFinite(scale) && scale > 0 ? Math.round(value * scale) / scale : value;
}
