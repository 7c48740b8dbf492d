/** Flow-bench sheet text to readings in SI, ready for meters/bench. */
import type { SignalUnit } from "../../../engine/index.ts";
import type { BenchRow, BenchUncertainties, ReferenceDevice } from "../../../meters/index.ts";
import {
  type Dimension,
  type Failure,
  failure,
  parseQuantity,
  type Result,
  success,
} from "../../../quantities/index.ts";
import { parseJson } from "../../json-text.ts";
import { schemaProblem } from "../../schema-problem.ts";
import { moistAir } from "../air-at-meter.ts";
import { readDifference } from "../option-values.ts";
import { formatOf } from "../read-source.ts";
import { readAnySignal } from "../signals.ts";
import { type BenchSheetFile, schemaForReference } from "./bench-sheet-schema.ts";
import { deviceOf, deviceRowFault } from "./reference-of-sheet.ts";

export type BenchInput = {
  readonly device: ReferenceDevice;
  readonly rows: readonly BenchRow[];
  readonly uncertainties: BenchUncertainties;
  readonly signalUnit: SignalUnit;
  /** air at the meter under test */
  readonly at: { readonly pressure: number; readonly temperature: number } | null;
  /** what the sheet leaves out and is counted as nothing */
  readonly notStated: readonly string[];
  /** rows without a humidity exist: half of saturation was taken, with all from dry to saturated as its interval */
  readonly humidityAssumed: boolean;
};

/** relative humidity where not stated: the middle, and the standard deviation of anything between dry and saturated */
const ASSUMED_HUMIDITY = { value: 0.5, sd: 1 / Math.sqrt(12) } as const;

export function parseBenchSheet(text: string): Result<BenchInput> {
  const json = parseJson(text, "bench sheet");
  if (!json.ok) return json;
  const format = formatOf(json.value);
  if (format !== null && !format.startsWith("airtally-bench-sheet/")) {
    return failure(
      "not-bench-sheet",
      `The file is JSON of the format "${format}", not a bench sheet.`,
      "Give a bench sheet (airtally-bench-sheet/1); bench points go straight to the fit. docs/meter.md shows each.",
    );
  }
  const schema = schemaForReference((json.value as { reference?: { kind?: unknown } } | null)?.reference?.kind);
  const parsed = schema.safeParse(json.value, { reportInput: true });
  if (!parsed.success)
    return schemaProblem(parsed.error, { name: "bench sheet", schema, describedIn: "docs/meter.md" });
  const file = parsed.data;
  const device = deviceOf(file.reference, si(file.uncertainties.bore, "ratio"));
  if (!device.ok) return device;
  const signals = readSignals(file);
  if (!signals.ok) return signals;
  const rows: BenchRow[] = [];
  let humiditySlope = 0;
  for (const [i, row] of file.rows.entries()) {
    const read = readRow(row, device.value, signals.value.values[i]!);
    if (!read.ok) return atRow(i, read);
    const fault = deviceRowFault(device.value, read.value.row, file.uncertainties);
    if (fault !== null) return atRow(i, fault);
    rows.push(read.value.row);
    humiditySlope = Math.max(humiditySlope, read.value.humiditySlope);
  }
  const humidityAssumed = file.rows.some((row) => row.humidity === undefined);
  const u = file.uncertainties;
  const humiditySd = humidityAssumed ? ASSUMED_HUMIDITY.sd : si(u.humidity, "ratio");
  return success({
    device: device.value,
    rows,
    uncertainties: {
      pressure: si(u.pressure, "pressure"),
      temperature: u.temperature === undefined ? 0 : accepted(readDifference(u.temperature)),
      pressureDrop: si(u.pressureDrop, "pressure"),
      humidityRatio: humiditySd * humiditySlope,
      boreRelative: si(u.bore, "ratio"),
      leakRelative: si(u.leak, "ratio"),
      signal: signals.value.sd,
    },
    signalUnit: signals.value.signalUnit,
    at:
      file.at === undefined
        ? null
        : { pressure: si(file.at.pressure, "pressure"), temperature: si(file.at.temperature, "temperature") },
    notStated: notStated(file, device.value),
    humidityAssumed,
  });
}

/** The row in SI, and how the humidity ratio moves with the relative humidity at its temperature. */
function readRow(
  row: BenchSheetFile["rows"][number],
  device: ReferenceDevice,
  signal: number,
): Result<{ readonly row: BenchRow; readonly humiditySlope: number }> {
  const pressure = si(row.pressure, "pressure");
  const temperature = si(row.temperature, "temperature");
  const saturated = moistAir(pressure, temperature, 1);
  if (!saturated.ok) return saturated;
  const relative = row.humidity === undefined ? ASSUMED_HUMIDITY.value : si(row.humidity, "ratio");
  const air = moistAir(pressure, temperature, relative);
  if (!air.ok) return air;
  const needsDrop = device.kind === "differential-pressure" || device.kind === "venturi";
  if (needsDrop !== (row.pressureDrop !== undefined)) {
    return failure(
      "reading-invalid",
      needsDrop ? "the pressure drop is missing" : "this reference has no pressure drop to read",
      needsDrop ? "Add it, or leave the row out." : "Leave it out.",
    );
  }
  if ((device.kind === "master-meter") !== (row.masterFlow !== undefined)) {
    return failure(
      "reading-invalid",
      device.kind === "master-meter" ? "the master meter's flow is missing" : "only a master meter has a flow to read",
      device.kind === "master-meter" ? "Add it, or leave the row out." : "Leave it out.",
    );
  }
  const plain = {
    pressure,
    temperature,
    pressureDrop: si(row.pressureDrop, "pressure"),
    humidityRatio: air.value.humidityRatio,
    signal,
  };
  const masterFlow = row.masterFlow === undefined ? {} : { masterFlow: si(row.masterFlow, "massFlow") };
  return success({ row: { ...plain, ...masterFlow }, humiditySlope: saturated.value.humidityRatio });
}

/** All signals in one unit: that of the first row. */
function readSignals(file: BenchSheetFile) {
  const read = file.rows.map((row) => accepted(readAnySignal(row.signal, null)));
  const { signalUnit } = read[0]!;
  const other = read.findIndex((s) => s.signalUnit !== signalUnit);
  const sd = file.uncertainties.signal;
  const sdRead = sd === undefined ? null : accepted(readAnySignal(sd, null));
  const remedy = "Give all signals, and their uncertainty, in units of one kind.";
  if (other >= 0)
    return failure(
      "signal-invalid",
      `Row ${other + 1} of the bench sheet: the signal "${file.rows[other]!.signal}" is of another kind than that of row 1.`,
      remedy,
    );
  if (sdRead !== null && (sdRead.signalUnit !== signalUnit || sdRead.signal < 0))
    return failure("signal-invalid", `The uncertainty of the signal, "${sd}", does not fit the signals.`, remedy);
  return success({ values: read.map((s) => s.signal), signalUnit, sd: sdRead?.signal ?? 0 });
}

function notStated(file: BenchSheetFile, device: ReferenceDevice): string[] {
  const u = file.uncertainties;
  const byPressures = device.kind !== "master-meter";
  const drop = device.kind === "differential-pressure" || device.kind === "venturi";
  const all: readonly (readonly [string, boolean, unknown])[] = [
    ["pressure", byPressures, u.pressure],
    ["temperature", byPressures, u.temperature],
    ["pressure drop", drop, u.pressureDrop],
    ["bore", byPressures, u.bore],
    ["leak", true, u.leak],
    ["signal", true, u.signal],
    ["humidity", byPressures && file.rows.every((row) => row.humidity !== undefined), u.humidity],
  ];
  return all.filter(([, matters, value]) => matters && value === undefined).map(([name]) => name);
}

function atRow(i: number, fault: Failure): Failure {
  return { ...fault, message: `Row ${i + 1} of the bench sheet: ${fault.message.replace(/\.$/, "")}.` };
}

/** The common wording points to the engine file's document. */
/** SI value of a text that the schema has already accepted; nothing where left out. */
export function si(text: string | undefined, dimension: Dimension): number {
  return text === undefined ? 0 : accepted(parseQuantity(text, dimension));
}

function accepted<Value>(result: Result<Value>): Value {
  if (!result.ok) throw new Error(`Assertion failed: the schema let through what cannot be read: ${result.message}`);
  return result.value;
}
