/**
 * airtally meter convert: signals of a meter to air mass, and flows back to the signal that stands for them, in the air at the meter.
 * Uncertainty is told where one is stated or the curve has a band; it is propagated by the GUM (meters/meter-uncertainty.ts).
 */
import { idealMoistAirDensity, type MoistAir } from "../../gas/index.ts";
import { type MeterUncertainties, meterFlow, meterSignal, meterUncertainty, signalRange } from "../../meters/index.ts";
import { parseQuantity, QUALITY, type Result, success } from "../../quantities/index.ts";
import { round } from "../outcome/points.ts";
import { type AirOptions, airAtMeter } from "./air-at-meter.ts";
import { convertHeadline } from "./convert-headline.ts";
import { bandOf, readUncertainties, type UncertaintyOptions } from "./convert-uncertainty.ts";
import { drawingOf, SD_TO_90 } from "./drawing.ts";
import { airWarnings, identityOf } from "./identity.ts";
import { optionFailure } from "./option-values.ts";
import { type MeterChoice, type MeterSource, type NamedText, readMeterSource } from "./read-source.ts";
import type { MeterConversion } from "./result/meter-result-schema.ts";
import { readSignal, shownSignal, signalCanBe, tellSignal } from "./signals.ts";

export type MeterConvertInput = MeterChoice & {
  readonly file: NamedText;
  /** "2.5 V", or bare numbers in the curve's unit */
  readonly signals: readonly string[];
  /** "20 g/s": the way back */
  readonly flows: readonly string[];
  readonly air: AirOptions;
  readonly uncertainty: UncertaintyOptions;
  readonly toolVersion: string;
};

type Row = MeterConversion["signals"][number];

const CAN_BE = {
  V: "Give a finite voltage.",
  Hz: "Give a frequency of nothing or more.",
  ms: "Give a period of nothing or more.",
  ratio: "Give a part of the reference, from 0 to 1 (0 % to 100 %).",
} as const;

export function meterConvert(input: MeterConvertInput): Result<MeterConversion> {
  if (input.signals.length + input.flows.length === 0)
    return optionFailure(
      "There is nothing to convert.",
      'Name signals ("2.5 V"), or flows to go back from ("20 g/s").',
    );
  const source = readMeterSource(input.file, input);
  if (!source.ok) return source;
  if (source.value.kind === null) {
    return optionFailure(
      "A curve file does not say what kind its meter is, and air mass depends on it.",
      "Say which kind: vane, vortex, hot-wire or hot-film.",
    );
  }
  const air = airAtMeter(source.value, input.air, true);
  if (!air.ok) return air;
  const { signalUnit } = source.value.curve;
  const uncertainties = readUncertainties(input.uncertainty, signalUnit);
  if (!uncertainties.ok) return uncertainties;
  const band = bandOf(source.value);
  const signals: Row[] = [];
  for (const text of input.signals) {
    const signal = readSignal(text, signalUnit);
    if (!signal.ok) return optionFailure(signal.message, signal.remedy);
    if (!signalCanBe(signalUnit, signal.value)) return optionFailure(`No meter gives "${text}".`, CAN_BE[signalUnit]);
    const told = toldOf(band(signal.value), uncertainties.value);
    signals.push(fromSignal(source.value, signal.value, air.value.air, told));
  }
  const flows: Row[] = [];
  for (const text of input.flows) {
    const flow = parseQuantity(text, "massFlow");
    if (!flow.ok) return optionFailure(flow.message, flow.remedy);
    flows.push(fromFlow(source.value, flow.value, air.value.air));
  }
  return success({
    format: "airtally-meter/1",
    kind: "convert",
    toolVersion: input.toolVersion,
    headline: convertHeadline(source.value, signals, flows),
    meter: identityOf(source.value),
    air: air.value.sheet,
    signals,
    flows,
    drawing: drawingOf(source.value, air.value.air),
    warnings: [...airWarnings(source.value), ...beyondWarning(source.value, [...signals, ...flows])],
  });
}

function fromSignal(source: MeterSource, signal: number, air: MoistAir, told: MeterUncertainties | null): Row {
  const { meter } = source;
  const { massFlow, quality } = meterFlow(meter, signal, air);
  const budget = told === null ? null : meterUncertainty(meter, signal, air, told);
  const sd = budget !== null && Number.isFinite(budget.standardUncertainty) ? budget.standardUncertainty : null;
  const none = quality === QUALITY.notANumber;
  return {
    signal: round(shownSignal(meter.signalUnit, signal)),
    massFlow_g_per_s: none ? null : round(1000 * massFlow),
    volumeFlow_L_per_s: none ? null : round((1000 * massFlow) / idealMoistAirDensity(air)),
    where: none ? "no-flow" : whereIs(source, signal),
    sd_g_per_s: sd === null ? null : round(1000 * sd),
    low90_g_per_s: sd === null ? null : round(1000 * (massFlow - SD_TO_90 * sd)),
    high90_g_per_s: sd === null ? null : round(1000 * (massFlow + SD_TO_90 * sd)),
    budget:
      sd === null || budget === null
        ? []
        : budget.lines.filter((l) => l.share > 0).map(({ name, share }) => ({ name, share: round(share) })),
  };
}

/** The band of the curve and what is stated, together; null where neither is there. */
function toldOf(band: number | null, stated: MeterUncertainties | null): MeterUncertainties | null {
  return band === null ? stated : { curve: band, ...stated };
}

function fromFlow(source: MeterSource, massFlow: number, air: MoistAir): Row {
  const { signal, quality } = meterSignal(source.meter, massFlow, air);
  const usable = quality !== QUALITY.notANumber && signalCanBe(source.meter.signalUnit, signal);
  return {
    signal: usable ? round(shownSignal(source.meter.signalUnit, signal)) : null,
    massFlow_g_per_s: round(1000 * massFlow),
    volumeFlow_L_per_s: round((1000 * massFlow) / idealMoistAirDensity(air)),
    // a flow just at the end of the curve may come back a rounding beyond it
    where: !usable ? "no-signal" : quality === QUALITY.good ? "inside" : whereIs(source, signal),
    sd_g_per_s: null,
    low90_g_per_s: null,
    high90_g_per_s: null,
    budget: [],
  };
}

function whereIs({ meter }: MeterSource, signal: number): "inside" | "below" | "above" {
  const [low, high] = signalRange(meter);
  return signal < low ? "below" : signal > high ? "above" : "inside";
}

function beyondWarning(source: MeterSource, rows: readonly Row[]): { code: string; text: string }[] {
  if (rows.every((row) => row.where === "inside")) return [];
  const [low, high] = signalRange(source.meter).map((s) => tellSignal(source.meter.signalUnit, s));
  return [
    {
      code: "beyond-curve",
      text: `Some of it lies beyond the curve, which was taken from ${low} to ${high}: there the last slope is followed, and nothing vouches for it.`,
    },
  ];
}
