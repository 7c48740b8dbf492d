/**
 * The air meter of the model engine: a heated element by King's law, its healthy error, and what faults do to its signal.
 *
 * Equation    U^2 = A + B m^n, n = 1/2                                                                            (1)
 *             m' = m exp(c + e(ln m)) healthy                                                                   (2)
 *             fouled: U^2 = (1 + a) q/(1 + r (1 + a) q), q = A + B m^n: added area a, added thermal resistance r    (3)
 * Symbols     U V | m kg/s of moist air | c scale, e shape of this meter | A, B from the ends of the curve
 * Validity    m >= 0: a wire does not sense direction
 * Assumes     (3) with a and r such that the error is zero at idle flow and as planted at 70 % of the largest flow
 * Source      [king1914] for (1); (3) common practice, no source             Check hot-wire-meter.test.ts
 */
import type { MeterDesign } from "./engine-design.ts";
import type { EngineParts } from "./engine-parts.ts";
import type { FaultState } from "./fault.ts";
import { variationAt } from "./smooth-variation.ts";
import { lookUp, type Table1, tabulate } from "./uniform-table.ts";

const EXPONENT = 0.5;

export type KingLaw = { readonly atRest: number; readonly slope: number };

export function kingLaw(meter: MeterDesign): KingLaw {
  const atRest = meter.voltageAtRest ** 2;
  return { atRest, slope: (meter.largestVoltage ** 2 - atRest) / meter.largestFlow ** EXPONENT };
}

export function voltageOf(law: KingLaw, massFlow: number): number {
  return Math.sqrt(law.atRest + law.slope * Math.max(0, massFlow) ** EXPONENT);
}

/** Inverse of `voltageOf`: zero at and below the voltage at rest. */
export function flowOf(law: KingLaw, voltage: number): number {
  return (Math.max(0, voltage * voltage - law.atRest) / law.slope) ** (1 / EXPONENT);
}

/** Points of (signal, flow) as the maker would print them, evenly by voltage. */
export function printedCurve(meter: MeterDesign, count: number): (readonly [number, number])[] {
  const law = kingLaw(meter);
  const { voltageAtRest: low, largestVoltage: high } = meter;
  return Array.from({ length: count }, (_, i) => {
    const voltage = Number((low + ((high - low) * i) / (count - 1)).toFixed(3));
    return [voltage, flowOf(law, voltage)] as const;
  });
}

/** Signal of this meter over ln(flow), and the law by which the engine computer reads it. */
export type MeterResponse = { readonly law: KingLaw; readonly voltage: Table1; readonly atRest: number };

const LOWEST = Math.log(1e-5);

export function meterResponse(
  meter: MeterDesign,
  parts: EngineParts,
  faults: FaultState,
  flows: { readonly idle: number; readonly largest: number },
): MeterResponse {
  const law = kingLaw(meter);
  const foul = fouling(law, faults.meterFouling, flows);
  const reading = (massFlow: number) =>
    massFlow * Math.exp(parts.meterScale + variationAt(parts.meterShape, Math.log(massFlow)));
  // A signal added or lost, such that the reading at idle flow moves by the planted amount.
  const shift = voltageOf(law, flows.idle + faults.meterOffset) - voltageOf(law, flows.idle);
  const signal = (massFlow: number) => {
    const clean = voltageOf(law, reading(massFlow) * faults.meterScale);
    return foul(clean) + shift;
  };
  return {
    law,
    voltage: tabulate({ low: LOWEST, high: Math.log(meter.largestFlow * 1.5), cells: 400 }, (x) => signal(Math.exp(x))),
    atRest: foul(meter.voltageAtRest) + shift,
  };
}

export function signalAt(response: MeterResponse, massFlow: number): number {
  const logFlow = Math.log(Math.abs(massFlow));
  return logFlow <= LOWEST ? response.atRest : lookUp(response.voltage, logFlow);
}

/** (3): 1/q' = 1/((1 + a) q) + r through two points gives 1/(1 + a) and r in closed form. */
function fouling(
  law: KingLaw,
  errorAt70: number,
  flows: { readonly idle: number; readonly largest: number },
): (voltage: number) => number {
  if (errorAt70 === 0) return (voltage) => voltage;
  const high = 0.7 * flows.largest;
  const q = (massFlow: number) => voltageOf(law, massFlow) ** 2;
  const clean = [1 / q(flows.idle), 1 / q(high)] as const;
  const fouled = [1 / q(flows.idle), 1 / q(high * (1 + errorAt70))] as const;
  const areaInverse = (fouled[0] - fouled[1]) / (clean[0] - clean[1]);
  const resistance = fouled[0] - areaInverse * clean[0];
  return (voltage) => 1 / Math.sqrt(areaInverse / (voltage * voltage) + resistance);
}
