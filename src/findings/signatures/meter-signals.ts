/**
 * The signal of a meter at every point, with the curve that reads it: as recorded, else worked back from the flow through the
 * engine file's curve. Worked out once for each tally.
 */
import { idealMoistAirDensity } from "../../gas/index.ts";
import {
  ASSUMED_CALIBRATION_AIR,
  densityFactor,
  meterSignal,
  type PreparedMeter,
  prepareMeter,
} from "../../meters/index.ts";
import { findReading, type TallyModel } from "../../tally/index.ts";

export type MeterSignals = PreparedMeter & {
  /** air of the whole engine over what this meter sees */
  readonly share: number;
  /** abscissa of the curve; NaN where the meter was not read */
  readonly signal: Float64Array;
};

/** the humidity changes a density by half a per cent, which no signal here is known to */
const DRY = 0;
const RAW = { V: "meterVoltage", Hz: "meterFrequency", ms: "meterPeriod", ratio: "meterRatio" } as const;

type Kept = Map<"meter" | "meter-2", MeterSignals | null>;
const kept = new WeakMap<TallyModel, Kept>();

/** null where the engine file has no usable curve of this meter */
export function signalsOf(model: TallyModel, id: "meter" | "meter-2"): MeterSignals | null {
  const known = kept.get(model) ?? new Map();
  kept.set(model, known);
  if (!known.has(id)) known.set(id, workOut(model, id));
  return known.get(id) ?? null;
}

function workOut(model: TallyModel, id: "meter" | "meter-2"): MeterSignals | null {
  const description = model.engine.meters.find((m) => m.id === id);
  const prepared = description === undefined || description.curve === null ? null : prepareMeter(description);
  if (prepared === null || !prepared.ok || description === undefined) return null;
  const meter = prepared.value;
  const { physics, points, engine } = model;
  // A meter of one bank was counted for the whole engine.
  const share = description.bank === null ? 1 : engine.banks;
  const abscissa = (signal: number) => (meter.signalUnit === "ms" ? 1 / signal : signal);
  const signal = Float64Array.from(points, (point, i) => {
    const raw = findReading(point, RAW[meter.signalUnit], description.bank);
    if (raw !== null) return abscissa(raw.mean);
    const flow = physics.meter[id]?.[i] ?? Number.NaN;
    if (!(flow > 0)) return Number.NaN;
    const air = { pressure: physics.barometer[i]!, temperature: physics.intakeTemperature[i]!, humidityRatio: DRY };
    return abscissa(meterSignal(meter, flow / share, air).signal);
  });
  return { ...meter, share, signal };
}

/** Abscissa at a flow in the air of calibration, kg/s of this meter alone. */
export function signalOfFlow(meter: MeterSignals, flow: number): number {
  const air = ASSUMED_CALIBRATION_AIR;
  const { signal } = meterSignal(meter, flow * densityFactor(meter, idealMoistAirDensity(air)), air);
  return meter.signalUnit === "ms" ? 1 / signal : signal;
}
