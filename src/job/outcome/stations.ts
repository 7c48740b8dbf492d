/** What each station of the air path says against the common answer, for the drawing. */
import type { Weighed, WeighedCause } from "../../findings/index.ts";
import type { Prepared, TallyModel, TallyWitness } from "../../tally/index.ts";
import type { Station, StationView } from "../result.ts";
import type { CommonAnswer } from "./air.ts";
import { departureAt, meanDeparture } from "./departures.ts";
import { percentNumber, placeOf, signedPercent } from "./words.ts";

type Row = {
  readonly station: Station;
  readonly label: string;
  readonly witness: TallyWitness | null;
  readonly none: string;
};

export function stationViews(
  prepared: Prepared,
  weighed: Weighed,
  answer: CommonAnswer,
  unseen: readonly WeighedCause[],
): StationView[] {
  const { model } = prepared;
  const { engine } = model;
  const alone = (station: Station, label: string, none: string): Row => ({ station, label, witness: null, none });
  /** one row for each witness of the station: two meters, the fuel side of each bank */
  const rows = (station: Station, label: string, witness: string, none: string): Row[] => {
    const here = model.witnesses.filter((w) => w.startsWith(witness));
    if (here.length === 0) return [alone(station, label, none)];
    return here.map((w) => ({ station, label: rowLabel(label, w), witness: w, none }));
  };
  const probe = engine.lambdaProbe === null ? "not stated" : `control probe: ${engine.lambdaProbe}`;
  const list: Row[] = [
    alone("filter", "filter", fullLoadDrop(prepared)),
    ...rows("meter", "air meter", "meter", "not recorded"),
    alone("duct", "duct", ""),
    ...(engine.induction === "boosted" ? [alone("compressor", "charger and cooler", "")] : []),
    ...(engine.ignition === "spark" ? rows("throttle", "throttle", "throttle", "no witness here") : []),
    ...rows("manifold", "manifold", "pressure", "pressure not recorded"),
    alone("cylinders", "cylinders", "the common answer"),
    ...rows("fuel", "fuel", "fuel", "no trims or lambda used"),
    ...rows("exhaust", "probe", "exhaust", probe),
  ];
  return list.map(({ station, label, witness, none }, n) => ({
    station,
    label,
    ...(witness === null ? { value: null, detail: none } : said(prepared, answer, witness)),
    causes: list.findIndex((row) => row.station === station) === n ? causesAt(station, weighed, unseen) : [],
  }));
}

/** A cause that is not seen grows with healthy, while others are ruled out: that is no hint of it. */
function causesAt(station: Station, weighed: Weighed, unseen: readonly WeighedCause[]): StationView["causes"] {
  return weighed.causes
    .filter(
      (c) => c.cause.station === station && c.probability >= 0.05 && c.probability > c.prior && !unseen.includes(c),
    )
    .map((c) => ({ cause: c.cause.id, probability: c.probability }));
}

function rowLabel(label: string, witness: TallyWitness): string {
  if (witness === "meter-2") return "second air meter";
  const bank = /bank([12])$/.exec(witness)?.[1];
  return bank === undefined ? label : `${label}, bank ${bank}`;
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
