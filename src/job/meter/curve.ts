/** airtally meter curve: a meter's curve as rows to print and points to draw, and what its kind of meter senses. */
import type { MeterKind } from "../../engine/index.ts";
import { idealMoistAirDensity, type MoistAir } from "../../gas/index.ts";
import { describeCurve, meterFacts } from "../../meters/index.ts";
import { type Result, success } from "../../quantities/index.ts";
import { round } from "../outcome/points.ts";
import { figure } from "../outcome/words.ts";
import { type AirOptions, airAtMeter } from "./air-at-meter.ts";
import { drawingOf, drawnPoints } from "./drawing.ts";
import { engineFileCurve } from "./engine-file-curve.ts";
import { airWarnings, identityOf } from "./identity.ts";
import { lawName, lawParameters } from "./law-words.ts";
import { optionFailure } from "./option-values.ts";
import { type MeterChoice, type MeterSource, type NamedText, readMeterSource } from "./read-source.ts";
import type { CurveSheet } from "./result/meter-result-schema.ts";
import { tellSignal } from "./signals.ts";

export type MeterCurveInput = MeterChoice & {
  readonly file: NamedText;
  /** the air to print the curve in; its own where not stated */
  readonly air: AirOptions;
  readonly rows: number;
  readonly toolVersion: string;
};

const FEWEST_ROWS = 2;
const MOST_ROWS = 1001;

export function meterCurve(input: MeterCurveInput): Result<CurveSheet> {
  if (!Number.isInteger(input.rows) || input.rows < FEWEST_ROWS || input.rows > MOST_ROWS)
    return optionFailure("The number of rows is off.", `Give a whole number from ${FEWEST_ROWS} to ${MOST_ROWS}.`);
  const source = readMeterSource(input.file, input);
  if (!source.ok) return source;
  const { pressure, temperature, humidity } = input.air;
  const otherAir = [pressure, temperature, humidity].some((text) => text !== undefined);
  if (source.value.kind === null && otherAir) {
    return optionFailure(
      "A curve file does not say what kind its meter is, so its curve is known in its own air alone.",
      "Say which kind (vane, vortex, hot-wire or hot-film), or leave the air out.",
    );
  }
  const air = airAtMeter(source.value, input.air, false);
  if (!air.ok) return air;
  const table = engineFileCurve(source.value.curve);
  if (!table.ok) return table;
  return success({
    format: "airtally-meter/1",
    kind: "curve",
    toolVersion: input.toolVersion,
    headline: headlineOf(source.value, air.value.air),
    meter: identityOf(source.value),
    air: air.value.sheet,
    parameters: lawParameters(source.value.curve.form),
    points: pointsOf(source.value, air.value.air),
    rows: rowsOf(source.value, air.value.air, input.rows),
    drawing: drawingOf(source.value, air.value.air),
    facts: source.value.kind === null ? null : factsOf(source.value.kind),
    engineFileCurve: table.value,
    warnings: airWarnings(source.value),
  });
}

/** For people: without the names of the files in which a law is derived. */
export function factsOf(kind: MeterKind): NonNullable<CurveSheet["facts"]> {
  const facts = meterFacts(kind);
  const plain = (text: string) => text.replace(/ \((?:[a-z-]+\/)?[a-z-]+\.ts\)/g, "");
  return {
    name: facts.name,
    senses: plain(facts.senses),
    blindTo: facts.blindTo.map(plain),
    weather: plain(facts.weather),
    orientation: plain(facts.orientation),
    supply: plain(facts.supply),
    response: plain(facts.response),
    fails: facts.fails.map(plain),
  };
}

function rowsOf(source: MeterSource, air: MoistAir, count: number): CurveSheet["rows"] {
  const { meter } = source;
  const density = idealMoistAirDensity(air);
  const perShownUnit = meter.signalUnit === "ms" ? 1e-3 : 1;
  const point = drawnPoints(source, air);
  return describeCurve(meter, air, count).map((row) => ({
    ...point(row.signal),
    volumeFlow_L_per_s: round((1000 * row.massFlow) / density),
    slope_g_per_s: round(1000 * row.slope * perShownUnit),
    sensitivity: row.sensitivity === null ? null : round(row.sensitivity),
  }));
}

function pointsOf(source: MeterSource, air: MoistAir): CurveSheet["points"] {
  const { form } = source.curve;
  if (form.kind !== "points") return [];
  const point = drawnPoints(source, air);
  return form.points.map(([signal]) => point(signal));
}

function headlineOf(source: MeterSource, air: MoistAir): string {
  const ends = describeCurve(source.meter, air, 2);
  const [low, high] = ends.map(
    (row) => `${figure(1000 * row.massFlow)} g/s at ${tellSignal(source.meter.signalUnit, row.signal)}`,
  );
  const { form } = source.curve;
  const stands = form.kind === "points" ? `${form.points.length} points` : lawName(form);
  return `From ${low} to ${high}: ${stands}${source.kind === null ? "" : `, ${meterFacts(source.kind).name}`}.`;
}
