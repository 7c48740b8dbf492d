/** What each station of the air path says against the common answer, for the drawing. */
import type { Weighed } from "../../findings/index.ts";
import type { Prepared, TallyModel, TallyWitness } from "../../tally/index.ts";
import type { Station, StationView } from "../result.ts";
import type { CommonAnswer } from "./air.ts";
import { departureAt, meanDeparture } from "./departures.ts";
import { percentNumber, placeOf, signedPercent } from "./words.ts";

export function stationViews(prepared: Prepared, weighed: Weighed, answer: CommonAnswer): StationView[] {
  const { model } = prepared;
  const has = (w: TallyWitness) => model.witnesses.includes(w);
  const list: { station: Station; label: string; witness: TallyWitness | null; none: string }[] = [
    { station: "filter", label: "filter", witness: null, none: fullLoadDrop(prepared) },
    {
      station: "meter",
      label: "air meter",
      witness: has("meter") ? "meter" : has("meter-2") ? "meter-2" : null,
      none: "not recorded",
    },
    { station: "duct", label: "duct", witness: null, none: "" },
    ...(model.engine.induction === "boosted"
      ? [{ station: "compressor" as const, label: "charger and cooler", witness: null, none: "" }]
      : []),
    {
      station: "throttle",
      label: "throttle",
      witness: has("throttle") ? "throttle" : null,
      none: "no witness here",
    },
    {
      station: "manifold",
      label: "manifold",
      witness: has("pressure") ? "pressure" : null,
      none: "pressure not recorded",
    },
    { station: "cylinders", label: "cylinders", witness: null, none: "the common answer" },
    {
      station: "fuel",
      label: "fuel",
      witness: model.witnesses.find((w) => w.startsWith("fuel")) ?? null,
      none: "no trims or lambda used",
    },
    {
      station: "exhaust",
      label: "probe",
      witness: has("exhaust") ? "exhaust" : null,
      none: model.engine.lambdaProbe === null ? "not stated" : `control probe: ${model.engine.lambdaProbe}`,
    },
  ];
  return list
    .filter((row) => row.station !== "throttle" || model.engine.ignition === "spark")
    .map(({ station, label, witness, none }) => ({
      station,
      label,
      ...(witness === null ? { value: null, detail: none } : said(prepared, answer, witness)),
      causes: weighed.causes
        .filter((c) => c.cause.station === station && c.probability >= 0.05 && c.probability > c.prior)
        .map((c) => ({ cause: c.cause.id, probability: c.probability })),
    }));
}

/** The departure over the third of smallest flow, and that over the third of largest. */
function said(
  prepared: Prepared,
  answer: CommonAnswer,
  witness: TallyWitness,
): { value: string | null; detail: string } {
  const { model } = prepared;
  const j = model.witnesses.indexOf(witness);
  const points = model.points
    .map((_, i) => i)
    .filter((i) => departureAt(model, answer, i, j) !== null)
    .sort((a, b) => answer.logAir[a]! - answer.logAir[b]!);
  if (points.length === 0) return { value: null, detail: "no usable reading" };
  if (model.witnesses.length < 2) return { value: null, detail: "the only witness" };
  const third = Math.max(1, Math.floor(points.length / 3));
  const low = points.slice(0, third);
  const high = points.slice(-third);
  const mean = (group: readonly number[]) =>
    meanDeparture(
      group.map((i) => departureAt(model, answer, i, j)),
      model.discrepancy[j]!,
    )!;
  const first = mean(low);
  const last = mean(high);
  return {
    value: `${signedPercent(first.value)} ± ${percentNumber(164.5 * first.sd)} %`,
    detail: `${shortPlace(model, low, "at low flow")}; ${signedPercent(last.value)} ${shortPlace(model, high, "at high flow")}`,
  };
}

/** Under a drawing there is no room for speeds and pressures. */
function shortPlace(model: TallyModel, points: readonly number[], otherwise: string): string {
  const place = placeOf(model, points);
  return place.startsWith("near") ? otherwise : place;
}

/** Manifold pressure against the barometer at full load: what filter and duct take. Natural aspiration only. */
function fullLoadDrop({ model }: Prepared): string {
  const points = model.points
    .map((_, i) => i)
    .filter((i) => model.points[i]!.states.includes("full-load") && model.points[i]!.readings.has("manifoldPressure"));
  if (points.length === 0) return "full load not visited";
  if (model.engine.induction === "boosted") return "not seen under boost";
  const drop = Math.max(...points.map((i) => model.physics.barometer[i]! - model.physics.pressure[i]!));
  return `${(drop / 1000).toFixed(1)} kPa lost at full load`;
}
