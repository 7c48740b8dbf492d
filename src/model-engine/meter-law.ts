/**
 * Every kind of air meter of the model engine as one law between its signal and the flow in the air of calibration.
 *
 * Equation    heated   U^2 = A + B m^(1/2)                                    hot-wire-meter.ts
 *             vane     x = ln(m_c/m_0)/ln(m_1/m_0), ratio = r_0 + (r_1 - r_0) x                                    (1)
 *             vortex   f = K m_c/rho_c                                                                           (2)
 *             m_c = m (rho_c/rho)^k: what the meter senses, k of meters/sensed-density                              (3)
 * Symbols     m kg/s moist air, m_c the flow that gives the same signal in the air of calibration | x 0..1 opening |
 *             m_0, m_1 where the vane begins and ends to open | f Hz | K 1/m3
 * Validity    m >= 0; vane held at its stops, vortex silent below its smallest flow
 * Source      (1) gap cut so that opening grows with ln of flow: common practice, no source; (2), (3) of meters/
 * Check       meter-law.test.ts
 */
import { idealMoistAirDensity } from "../gas/index.ts";
import { ASSUMED_CALIBRATION_AIR, sensedDensityExponent } from "../meters/index.ts";
import type { MeterDesign, VaneDesign, VortexDesign } from "./engine-design.ts";
import { flowOf, kingLaw, voltageOf } from "./hot-wire-meter.ts";

export type MeterLaw = {
  readonly signalUnit: "V" | "ratio" | "Hz";
  readonly atRest: number;
  readonly largestSignal: number;
  /** k of (3) */
  readonly densityExponent: number;
  signalOf(flowAtCalibration: number): number;
  /** zero at and below rest */
  flowOf(signal: number): number;
};

export const CALIBRATION_DENSITY = idealMoistAirDensity(ASSUMED_CALIBRATION_AIR);

export function meterLaw(meter: MeterDesign): MeterLaw {
  const densityExponent = sensedDensityExponent(meter.kind);
  switch (meter.kind) {
    case "vane":
      return { ...vaneLaw(meter), densityExponent };
    case "vortex":
      return { ...vortexLaw(meter), densityExponent };
    default: {
      const law = kingLaw(meter);
      return {
        signalUnit: "V",
        atRest: meter.voltageAtRest,
        largestSignal: meter.largestVoltage,
        densityExponent,
        signalOf: (flow) => voltageOf(law, flow),
        flowOf: (voltage) => flowOf(law, voltage),
      };
    }
  }
}

type Own = Omit<MeterLaw, "densityExponent">;

/** Opening of a vane whose spring is as designed. */
export function vaneOpening(vane: VaneDesign, flowAtCalibration: number): number {
  if (flowAtCalibration <= vane.smallestFlow) return 0;
  return Math.min(1, Math.log(flowAtCalibration / vane.smallestFlow) / Math.log(vane.largestFlow / vane.smallestFlow));
}

function vaneLaw(vane: VaneDesign): Own {
  const span = vane.openRatio - vane.closedRatio;
  return {
    signalUnit: "ratio",
    atRest: vane.closedRatio,
    largestSignal: vane.openRatio,
    signalOf: (flow) => vane.closedRatio + span * vaneOpening(vane, flow),
    flowOf: (ratio) => {
      const opening = (ratio - vane.closedRatio) / span;
      if (opening <= 1e-9) return 0;
      return vane.smallestFlow * (vane.largestFlow / vane.smallestFlow) ** opening;
    },
  };
}

function vortexLaw(meter: VortexDesign): Own {
  const perMass = meter.pulsesPerVolume / CALIBRATION_DENSITY;
  return {
    signalUnit: "Hz",
    atRest: 0,
    largestSignal: perMass * meter.largestFlow,
    signalOf: (flow) => (flow < meter.smallestFlow ? 0 : perMass * flow),
    flowOf: (frequency) => Math.max(0, frequency) / perMass,
  };
}
