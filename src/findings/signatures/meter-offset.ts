/**
 * Signal added to or lost from the meter's reading: ground drop, leakage current, supply.
 *
 * Equation    along the meter's own curve c, where the file has it:  M = c(S),  m = c(S - d),  d = S(m_idle + b) - S(m_idle)
 *             else  M = m + b (m/m_idle)^q;  dM = ln(M/m),  d ln M/d ln m = m c'(S)/(M c'(S - d)) or (m + q (M - m))/M
 *             standing, no flow: d; as a flow c(S_0 + d) - c(S_0), or b where q = 0
 * Symbols     S signal, d signal added | b kg/s at idle flow, reading minus truth | q 0 for an offset of flow itself; for an offset of voltage
 *             on a hot element E ~ m^(1/4) the flow error grows with about m^(3/4), between for other curves
 * Limits      strongest at low flow, whatever the pressure
 */
import { evaluateMonotoneCubic, slopeOfMonotoneCubic } from "../../numerics/index.ts";
import type { StandingObservation, TallyModel } from "../../tally/index.ts";
import type { Law } from "../cause.ts";
import { type MeterSignals, signalOfFlow, signalsOf } from "./meter-signals.ts";
import { least, MOST_SHARE } from "./most-share.ts";
import { hasMeter, isMeter, meterReads } from "./prediction.ts";

/** in place of an exponent: the offset lies on the signal, and the curve is known */
const ON_SIGNAL = -1;
/** a reading holds at least this share of truth */
const LEAST_TRUTH = 0.1;

export const meterOffset: Law = {
  id: "meter-offset",
  applies: hasMeter,
  shapes: (model) =>
    knownCurve(model) === null
      ? [
          { value: 0, weight: 0.5 },
          { value: 0.6, weight: 0.5 },
        ]
      : [
          { value: ON_SIGNAL, weight: 0.7 },
          { value: 0, weight: 0.3 },
        ],
  /** a reading holds some truth */
  most: ({ physics }, sign) =>
    sign > 0 ? MOST_SHARE * least(physics.meter.meter ?? physics.meter["meter-2"]) : Infinity,
  predict: (model, offset, exponent) => {
    const added = signalAdded(model, offset);
    const standing = (observation: StandingObservation) => atZeroFlow(model, observation, offset, exponent, added);
    if (exponent === ON_SIGNAL && added !== null)
      return meterReads(model, (i, metered, id) => alongCurve(model, i, metered, id, added), standing);
    return meterReads(model, (_, metered) => alongFlow(model, metered, offset, exponent), standing);
  },
  otherSizes: (model, offset) => {
    const added = model.physics.meterVoltage === null ? null : signalAdded(model, offset);
    return added === null || knownCurve(model)?.signalUnit !== "V"
      ? []
      : [{ name: "offset of the signal", unit: "V", value: added }];
  },
};

/** Of a meter whose signal is a voltage or a ratio of one: pulses are not added by a wire. */
function knownCurve(model: TallyModel): MeterSignals | null {
  const id = model.engine.meters[0]?.id;
  const known = id === undefined ? null : signalsOf(model, id);
  return known !== null && (known.signalUnit === "V" || known.signalUnit === "ratio") ? known : null;
}

/** d; null without a curve */
function signalAdded(model: TallyModel, offset: number): number | null {
  const known = knownCurve(model);
  if (known === null) return null;
  const idle = model.physics.idleFlow / known.share;
  const truth = Math.max(LEAST_TRUTH * idle, idle - offset / known.share);
  return signalOfFlow(known, idle) - signalOfFlow(known, truth);
}

function alongCurve(model: TallyModel, i: number, metered: number, id: "meter" | "meter-2", added: number) {
  const known = signalsOf(model, id);
  if (known === null) return { air: metered, response: 1 };
  const { curve, signal } = known;
  const read = signal[i]!;
  const flow = evaluateMonotoneCubic(curve, read);
  const truth = Math.max(LEAST_TRUTH * flow, evaluateMonotoneCubic(curve, read - added));
  const steepness = slopeOfMonotoneCubic(curve, read) / slopeOfMonotoneCubic(curve, read - added);
  const response = (truth / flow) * steepness;
  return { air: (metered * truth) / flow, response: response > 0.2 && response < 5 ? response : 1 };
}

function alongFlow(model: TallyModel, metered: number, offset: number, exponent: number) {
  const idle = model.physics.idleFlow;
  let air = metered;
  // Fixed point of m = M - b (m/m_idle)^q: the error changes slowly with m, so a few steps settle it.
  for (let n = 0; n < 6; n++)
    air = Math.max(metered - offset * (Math.max(air, 0.02 * idle) / idle) ** exponent, LEAST_TRUTH * metered);
  return { air, response: (air + exponent * (metered - air)) / metered };
}

function atZeroFlow(
  model: TallyModel,
  { kind, unit, meter }: StandingObservation,
  offset: number,
  exponent: number,
  added: number | null,
): number {
  if (kind !== "meter-at-zero-flow" || meter === null || !isMeter(meter)) return 0;
  if (unit !== "g/s") return added ?? 0;
  if (exponent === 0) return 1000 * offset;
  const known = signalsOf(model, meter);
  if (known === null || added === null) return 0;
  const { x, y } = known.curve;
  const shut = known.falling ? x.length - 1 : 0;
  return 1000 * known.share * Math.max(-y[shut]!, evaluateMonotoneCubic(known.curve, x[shut]! + added) - y[shut]!);
}
