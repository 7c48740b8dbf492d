/**
 * The meter that a file describes: an engine file (JSON), a curve file (airtally-curve/1), or a curve as CSV.
 *
 * A curve file does not say what kind its meter is; where nobody says it, the curve is read in its own air, in which all kinds agree.
 */
import type { MeterKind } from "../../engine/index.ts";
import {
  ASSUMED_CALIBRATION_AIR,
  curveFromJson,
  type FlowCurve,
  type PreparedMeter,
  prepareMeter,
  tabulateCurve,
} from "../../meters/index.ts";
import { type Failure, failure, type Result, success } from "../../quantities/index.ts";
import { parseEngineFile } from "../engine-file/parse-engine-file.ts";
import { parseJson } from "../json-text.ts";
import { optionFailure } from "./option-values.ts";
import { airFault, LARGEST_FLOW, LARGEST_SIGNAL, pointsFault } from "./plausible-curve.ts";
import { readCurveTable } from "./read-curve-table.ts";

export type NamedText = { readonly name: string; readonly text: string };

export type MeterChoice = {
  readonly kind?: MeterKind | undefined;
  /** of an engine file with two meters */
  readonly meter?: "meter" | "meter-2" | undefined;
};

export type MeterSource = {
  readonly file: string;
  readonly kind: MeterKind | null;
  readonly curve: FlowCurve;
  readonly meter: PreparedMeter;
  /** air of the curve, taken where not stated */
  readonly curveAir: { readonly pressure: number; readonly temperature: number; readonly assumed: boolean };
  /** what the engine file says of the air around it */
  readonly site: { readonly pressure: number | null; readonly temperature: number | null };
};

export function readMeterSource(file: NamedText, choice: MeterChoice): Result<MeterSource> {
  if (!isJson(file.text)) return fromCsv(file, choice);
  const json = parseJson(file.text, "file");
  if (!json.ok) return json;
  const format = formatOf(json.value);
  if (format?.startsWith("airtally-engine/")) return fromEngineFile(file, choice);
  if (format?.startsWith("airtally-curve/")) {
    const curve = curveFromJson(withoutMark(file.text));
    return curve.ok ? fromCurve(file, curve.value, choice.kind ?? null) : curve;
  }
  return failure(
    "not-a-curve",
    `The file is JSON of ${format === null ? "no stated format" : `the format "${format}"`}, not a meter's curve.`,
    "Give an engine file (airtally-engine/1), a curve file (airtally-curve/1) or a curve as CSV; docs/meter.md shows each.",
  );
}

export function isJson(text: string): boolean {
  return withoutMark(text).trimStart().startsWith("{");
}

export function withoutMark(text: string): string {
  return text.replace(/^\uFEFF/, "");
}

export function formatOf(json: unknown): string | null {
  const format = (json as { readonly format?: unknown } | null)?.format;
  return typeof format === "string" ? format : null;
}

function fromEngineFile(file: NamedText, choice: MeterChoice): Result<MeterSource> {
  const engine = parseEngineFile(file.text);
  if (!engine.ok) return engine;
  const { meters, site } = engine.value;
  const found =
    choice.meter === undefined
      ? meters.find((m) => m.curve !== null)
      : meters.find((m) => m.id === choice.meter && m.curve !== null);
  if (found === undefined || found.curve === null) {
    return failure(
      "no-curve",
      `The engine file has no curve for ${choice.meter === undefined ? "any meter" : `its "${choice.meter}"`}.`,
      'Add "curve" to the meter (docs/engine-file.md), or give a curve file.',
    );
  }
  if (choice.kind !== undefined && choice.kind !== found.kind) {
    return optionFailure(
      `The engine file says that its ${found.id} is a ${found.kind} meter, the call says ${choice.kind}.`,
      "Leave the kind out, or correct the engine file.",
    );
  }
  const { signalUnit, flow, at, points } = found.curve;
  const signals = points.map(([signal]) => signal);
  const curve: FlowCurve = {
    signalUnit,
    flow,
    at,
    form: { kind: "points", points },
    domain: [Math.min(...signals), Math.max(...signals)],
    band: null,
  };
  const source = fromCurve(file, curve, found.kind);
  return source.ok
    ? success({ ...source.value, site: { pressure: site.barometer, temperature: site.outside } })
    : source;
}

function fromCsv(file: NamedText, choice: MeterChoice): Result<MeterSource> {
  const table = readCurveTable(file.text);
  if (!table.ok) return table;
  const { signalUnit, flow, at } = table.value;
  const points = [...table.value.points].sort((a, b) => a.signal - b.signal);
  const signal = points.map((p) => p.signal);
  const banded = points.every((p) => p.flowSd >= 0);
  const curve: FlowCurve = {
    signalUnit,
    flow,
    at,
    form: { kind: "points", points: points.map((p) => [p.signal, p.flow] as const) },
    domain: [signal[0]!, signal.at(-1)!],
    band: banded ? { signal, sd: points.map((p) => p.flowSd) } : null,
  };
  return fromCurve(file, curve, choice.kind ?? null);
}

function fromCurve(file: NamedText, curve: FlowCurve, kind: MeterKind | null): Result<MeterSource> {
  const wrong = faultOf(curve);
  if (wrong !== null) return wrong;
  const table = tabulateCurve(curve);
  if (!table.ok) return table;
  const impossible = pointsFault(table.value.curve.points);
  if (impossible !== null) return impossible;
  const meter = prepareMeter({
    id: "meter",
    kind: kind ?? neutralKind(table.value.curve.points),
    bank: null,
    bore: null,
    reference: null,
    curve: table.value.curve,
  });
  if (!meter.ok) return meter;
  const { at } = curve;
  const { pressure, temperature } = at ?? ASSUMED_CALIBRATION_AIR;
  return success({
    file: file.name,
    kind,
    curve,
    meter: meter.value,
    curveAir: { pressure, temperature, assumed: at === null },
    site: { pressure: null, temperature: null },
  });
}

/** In the air of its curve a meter of any kind reads its curve: only a film's may run below zero. */
function neutralKind(points: readonly (readonly [number, number])[]): MeterKind {
  return points.some(([, flow]) => flow < 0) ? "hot-film" : "hot-wire";
}

/** What the laws assert and a file could break. */
function faultOf({ form, band, at }: FlowCurve): Failure | null {
  const film = form.kind === "film" || form.kind === "film-period" ? form : null;
  if (film !== null && !(film.scaleFlow > 0 && film.leak >= 0 && film.leak <= 100 && film.span !== 0)) {
    return failure(
      "value-invalid",
      "The film law of the curve has a scale flow, a leak or a span that cannot be.",
      "scaleFlow must be above zero, leak from 0 to 100, span not zero.",
    );
  }
  const plausible = (sd: number, i: number) =>
    sd >= 0 && sd <= LARGEST_FLOW && Math.abs(band!.signal[i]!) <= LARGEST_SIGNAL;
  if (band !== null && !band.sd.every(plausible)) {
    return failure(
      "value-invalid",
      "The band of the curve has an sd or a signal that cannot be.",
      "Give standard deviations, or no band.",
    );
  }
  return airFault(at);
}
