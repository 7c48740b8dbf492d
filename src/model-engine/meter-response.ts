/**
 * The signal of one meter as built and as it has become: its healthy error and what planted faults do to it.
 *
 * Equation    m' = m_c exp(c + e(ln m_c)) (1 + wrong curve) k                                                     (1)
 *             signal = fouled or tilted law of m', plus a signal added or lost                                    (2)
 * Symbols     m_c kg/s in the air of calibration, meter-law.ts | c scale, e shape of this meter | k planted scale
 * Assumes     the added signal is such that the reading at idle flow moves by the planted amount; a tilt as in meters/vane
 * Source      meter-law.ts, hot-wire-meter.ts, meters/vane                    Check hot-wire-meter.test.ts, meter-law.test.ts
 */
import { vaneTorqueErrorRatio } from "../meters/index.ts";
import { findRoot } from "../numerics/index.ts";
import { assert } from "../quantities/index.ts";
import type { MeterDesign } from "./engine-design.ts";
import type { EngineParts } from "./engine-parts.ts";
import type { FaultState } from "./fault.ts";
import { fouling, kingLaw } from "./hot-wire-meter.ts";
import { CALIBRATION_DENSITY, type MeterLaw, meterLaw } from "./meter-law.ts";
import { wrongCurveShare } from "./planted-laws.ts";
import { variationAt } from "./smooth-variation.ts";
import { lookUp, type Table1, tabulate } from "./uniform-table.ts";

/** The law by which the engine computer reads, and the signal over ln(flow in the air of calibration). */
export type MeterResponse = {
  readonly design: MeterDesign;
  readonly law: MeterLaw;
  readonly signal: Table1;
  readonly atRest: number;
};

type Flows = { readonly idle: number; readonly largest: number };

const LOWEST = Math.log(1e-5);

export function meterResponse(
  design: MeterDesign,
  parts: EngineParts,
  faults: FaultState,
  flows: Flows,
): MeterResponse {
  const law = meterLaw(design);
  const changed = changedLaw(design, law, faults, flows);
  const reading = (flow: number) =>
    flow *
    Math.exp(parts.meterScale + variationAt(parts.meterShape, Math.log(flow))) *
    wrongCurveShare(faults.curveError, flow / flows.largest) *
    faults.meterScale;
  const shift = law.signalOf(flows.idle + faults.meterOffset) - law.signalOf(flows.idle);
  return {
    design,
    law,
    signal: tabulate({ low: LOWEST, high: Math.log(design.largestFlow * 1.5), cells: 400 }, (x) =>
      Math.max(0, changed(reading(Math.exp(x))) + shift),
    ),
    atRest: Math.max(0, changed(0) + shift),
  };
}

/** Signal in steady flow; `density` of the moist air at the meter. */
export function signalAt(response: MeterResponse, massFlow: number, density: number): number {
  const { densityExponent } = response.law;
  const atCalibration = densityExponent === 0 ? 1 : (CALIBRATION_DENSITY / density) ** densityExponent;
  const logFlow = Math.log(Math.abs(massFlow) * atCalibration);
  return logFlow <= LOWEST ? response.atRest : lookUp(response.signal, logFlow);
}

/** What the engine computer makes of a signal, with the density it assumes. */
export function readingOf(response: MeterResponse, signal: number, assumedDensity: number): number {
  const { densityExponent } = response.law;
  const density = densityExponent === 0 ? 1 : (assumedDensity / CALIBRATION_DENSITY) ** densityExponent;
  return response.law.flowOf(signal) * density;
}

/** Points of (signal, flow at calibration) as the maker would print them, evenly by signal; `digits` of the signal. */
export function printedCurve(design: MeterDesign, count: number, digits = 3): (readonly [number, number])[] {
  const law = meterLaw(design);
  const { atRest: low, largestSignal: high } = law;
  return Array.from({ length: count }, (_, i) => {
    const signal = Number((low + ((high - low) * i) / (count - 1)).toFixed(digits));
    return [signal, law.flowOf(signal)] as const;
  });
}

function changedLaw(design: MeterDesign, law: MeterLaw, faults: FaultState, flows: Flows): (flow: number) => number {
  assert(faults.vaneTorque === 0 || design.kind === "vane", "only a vane is tilted");
  if (design.kind === "vane" && faults.vaneTorque !== 0) {
    const wiper = design.openRatio - design.closedRatio;
    return (flow) => design.closedRatio + wiper * tiltedOpening(design, law, flow, faults.vaneTorque);
  }
  if (design.kind === "vane" || design.kind === "vortex") {
    assert(faults.meterFouling === 0, `meter-fouled is a fault of heated meters, not of a ${design.kind}`);
    return law.signalOf;
  }
  const foul = fouling(kingLaw(design), faults.meterFouling, flows);
  return (flow) => foul(law.signalOf(flow));
}

/** The opening at which the curve's flow over the torque error's ratio is the true flow. */
function tiltedOpening(
  vane: Extract<MeterDesign, { readonly kind: "vane" }>,
  law: MeterLaw,
  flow: number,
  torqueError: number,
): number {
  const wiper = vane.openRatio - vane.closedRatio;
  const excess = (opening: number) => {
    const ratio = vaneTorqueErrorRatio({ opening, torqueError });
    return ratio === null ? -flow : law.flowOf(vane.closedRatio + wiper * Math.max(opening, 1e-8)) / ratio - flow;
  };
  if (excess(0) >= 0) return 0;
  if (excess(1) <= 0) return 1;
  const found = findRoot(excess, { low: 0, high: 1 });
  assert(found.status === "found", `a vane opening for ${flow} kg/s`);
  return found.root;
}
