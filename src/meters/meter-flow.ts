/**
 * Raw signal of a meter to mass flow of moist air.
 *
 * Equation    m = m_cal(signal) (rho/rho_cal)^k                                                  see sensed-density.ts
 * Symbols     signal in V, Hz, s or ratio, as the curve has it | rho kg/m3 | m kg/s
 * Validity    inside the curve's points; beyond them the end tangent is followed and the quality is `outsideValidity`. A meter that
 *             cannot sense direction never reads below zero
 * Assumes     the air behaves as an ideal gas: rho and rho_cal alike, so what is left of Z cancels (below 0.1 %)
 * Source      [roshko1954], [king1914] for the exponents                     Check published/roshko1954.test.ts
 */
import { idealMoistAirDensity, type MoistAir } from "../gas/index.ts";
import { evaluateMonotoneCubic, evaluateMonotoneCubicAt } from "../numerics/index.ts";
import { AIR_WATER_MOLAR_RATIO, GAS_CONSTANT_DRY_AIR, QUALITY, type Quality } from "../quantities/index.ts";
import { isPeriod, type PreparedMeter } from "./prepare-meter.ts";

const { good: GOOD, outsideValidity: OUTSIDE, notANumber: NOT_A_NUMBER } = QUALITY;

export type MeterReading = {
  /** kg/s of moist air; NaN where the quality is `notANumber` */
  readonly massFlow: number;
  readonly quality: Quality;
};

export function meterFlow(meter: PreparedMeter, signal: number, air: MoistAir): MeterReading {
  const abscissa = isPeriod(meter) ? 1 / signal : signal;
  if (!Number.isFinite(abscissa)) return { massFlow: Number.NaN, quality: QUALITY.notANumber };
  const { x } = meter.curve;
  const atCalibration = evaluateMonotoneCubic(meter.curve, abscissa);
  return {
    massFlow: Math.max(atCalibration, lowestReading(meter)) * densityFactor(meter, idealMoistAirDensity(air)),
    quality: abscissa >= x[0]! && abscissa <= x[x.length - 1]! ? QUALITY.good : QUALITY.outsideValidity,
  };
}

/** Air at the meter: a number where it does not change. */
export type AirSamples = {
  readonly pressure: Float64Array | number;
  readonly temperature: Float64Array | number;
  readonly humidityRatio: number;
};

/**
 * The same for a whole channel, into arrays of the caller: nothing is allocated for a sample. Samples whose quality on
 * entry is not `good` are left out and keep their quality, with NaN as their flow.
 */
export function meterFlows(
  meter: PreparedMeter,
  samples: { readonly signal: Float64Array; readonly air: AirSamples },
  out: { readonly massFlow: Float64Array; readonly quality: Uint8Array },
): void {
  const { signal, air } = samples;
  const { massFlow, quality } = out;
  const { x } = meter.curve;
  const first = x[0]!;
  const last = x[x.length - 1]!;
  const floor = lowestReading(meter);
  const period = isPeriod(meter);
  if (period) {
    for (let i = 0; i < signal.length; i++) massFlow[i] = 1 / signal[i]!;
  }
  const abscissae = period ? massFlow : signal;
  for (let i = 0; i < signal.length; i++) {
    if (quality[i] !== GOOD) continue;
    const at = abscissae[i]!;
    if (!(at >= first && at <= last)) quality[i] = Number.isFinite(at) ? OUTSIDE : NOT_A_NUMBER;
  }
  evaluateMonotoneCubicAt(meter.curve, abscissae, massFlow);
  toAir(meter, air, massFlow);
  for (let i = 0; i < signal.length; i++) {
    if (quality[i] === GOOD) continue;
    if (quality[i] !== OUTSIDE) massFlow[i] = Number.NaN;
    else if (massFlow[i]! < floor) massFlow[i] = floor;
  }
}

/** Multiplies the flows by (rho/rho_cal)^k, in place. */
function toAir(meter: PreparedMeter, air: AirSamples, massFlow: Float64Array): void {
  const { densityExponent: k } = meter;
  if (k === 0) return;
  const w = air.humidityRatio;
  const scale = (1 + w) / (GAS_CONSTANT_DRY_AIR * (1 + AIR_WATER_MOLAR_RATIO * w) * meter.referenceDensity);
  const { pressure, temperature } = air;
  for (let i = 0; i < massFlow.length; i++) {
    const p = typeof pressure === "number" ? pressure : pressure[i]!;
    const t = typeof temperature === "number" ? temperature : temperature[i]!;
    const relativeDensity = (p / t) * scale;
    massFlow[i] = massFlow[i]! * (k === 1 ? relativeDensity : Math.sqrt(relativeDensity));
  }
}

/** (rho/rho_cal)^k */
export function densityFactor(meter: PreparedMeter, density: number): number {
  return (density / meter.referenceDensity) ** meter.densityExponent;
}

/** Only a film tells the direction: the tangent of the others must not run below zero. */
function lowestReading(meter: PreparedMeter): number {
  return meter.kind === "hot-film" ? Number.NEGATIVE_INFINITY : 0;
}
