/**
 * Mass flow from the pressure drop over an orifice plate, a nozzle or a Venturi nozzle in a pipe, after ISO 5167.
 *
 * Equation    m = C/sqrt(1 - b^4) e (pi/4) d^2 sqrt(2 dp rho_1)                                                   (1)
 *             Re = 4 m/(pi mu D)                                                                                (2)
 * Symbols     m kg/s | C discharge coefficient | b = d/D | e expansibility | d, D m bore of the device and of the pipe | dp Pa |
 *             rho_1 kg/m3 upstream | mu Pa s
 * Validity    limits of each device, see orifice-plate.ts and flow-nozzle.ts; p_2/p_1 >= 0.75. Broken limits are named in `outside`
 *             and the value is given all the same
 * Numerics    C depends on Re through m: direct substitution until m moves by less than 1e-13
 * Source      [iso5167-1] eq. (1), [iso5167-2], [iso5167-3]                   Check published/iso5167.test.ts
 */
import { requirePositive, requireWithin } from "../numerics/index.ts";
import type { DeviceGeometry } from "./device-geometry.ts";
import { isaNozzle, longRadiusNozzle, nozzleExpansibility, venturiNozzle } from "./flow-nozzle.ts";
import {
  type OrificeTaps,
  orificeDischargeCoefficient,
  orificeExpansibility,
  orificeLimits,
  orificeUncertainty,
} from "./orifice-plate.ts";

const NOZZLES = {
  "isa-1932-nozzle": isaNozzle,
  "long-radius-nozzle": longRadiusNozzle,
  "venturi-nozzle": venturiNozzle,
} as const;

export type DifferentialPressureDevice = {
  readonly kind: "orifice-plate" | keyof typeof NOZZLES;
  /** of an orifice plate; corner taps where not given */
  readonly taps?: OrificeTaps;
  /** m */
  readonly pipeDiameter: number;
  /** m */
  readonly boreDiameter: number;
};

export type DeviceReading = {
  readonly upstreamPressure: number;
  readonly pressureDrop: number;
  readonly upstreamDensity: number;
  readonly viscosity: number;
  readonly gamma: number;
};

export type DeviceFlow = {
  readonly massFlow: number;
  readonly dischargeCoefficient: number;
  readonly expansibility: number;
  readonly reynolds: number;
  /** relative standard uncertainties stated by the standard (half of its 95 % figures) */
  readonly uncertainty: { readonly dischargeCoefficient: number; readonly expansibility: number };
  /** limits of the standard that this reading breaks, in words */
  readonly outside: readonly string[];
};

export function differentialPressureFlow(device: DifferentialPressureDevice, reading: DeviceReading): DeviceFlow {
  const { pipeDiameter, boreDiameter } = device;
  const { pressureDrop, upstreamPressure, upstreamDensity, viscosity, gamma } = reading;
  requirePositive("pipe diameter", pipeDiameter);
  requireWithin("bore diameter", boreDiameter, Number.MIN_VALUE, pipeDiameter * (1 - Number.EPSILON));
  requireWithin("pressure drop", pressureDrop, 0, upstreamPressure);
  requirePositive("density", upstreamDensity);
  requirePositive("viscosity", viscosity);
  const geometry = { pipeDiameter, diameterRatio: boreDiameter / pipeDiameter };
  const law = lawOf(device);
  const pressureRatio = 1 - pressureDrop / upstreamPressure;
  const expansibility = law.expansibility(geometry.diameterRatio, pressureRatio, gamma);
  const perCoefficient =
    ((expansibility * Math.PI) / 4) *
    boreDiameter ** 2 *
    Math.sqrt((2 * pressureDrop * upstreamDensity) / (1 - geometry.diameterRatio ** 4));
  const toReynolds = 4 / (Math.PI * viscosity * pipeDiameter);
  let massFlow = 0.8 * perCoefficient;
  for (let pass = 0; pass < 100 && massFlow > 0; pass++) {
    const next = law.coefficient(geometry, massFlow * toReynolds) * perCoefficient;
    const settled = Math.abs(next - massFlow) <= 1e-13 * next;
    massFlow = next;
    if (settled) break;
  }
  const reynolds = massFlow * toReynolds;
  const outside = law.limits(geometry, reynolds);
  if (pressureRatio < 0.75) outside.push(`pressure ratio ${pressureRatio.toPrecision(3)} below 0.75`);
  return {
    massFlow,
    dischargeCoefficient: massFlow === 0 ? law.coefficient(geometry, 1e6) : massFlow / perCoefficient,
    expansibility,
    reynolds,
    uncertainty: {
      dischargeCoefficient: law.uncertainty(geometry, reynolds) / 2,
      expansibility: law.expansibilityUncertainty(pressureRatio, gamma) / 2,
    },
    outside,
  };
}

export type DeviceLaw = {
  coefficient(geometry: DeviceGeometry, reynolds: number): number;
  expansibility(diameterRatio: number, pressureRatio: number, gamma: number): number;
  limits(geometry: DeviceGeometry, reynolds: number): string[];
  /** relative, 95 % */
  uncertainty(geometry: DeviceGeometry, reynolds: number): number;
  expansibilityUncertainty(pressureRatio: number, gamma: number): number;
};

function lawOf(device: DifferentialPressureDevice): DeviceLaw {
  if (device.kind === "orifice-plate") {
    const taps = device.taps ?? "corner";
    return {
      coefficient: (geometry, reynolds) => orificeDischargeCoefficient({ ...geometry, reynolds, taps }),
      expansibility: orificeExpansibility,
      limits: (geometry, reynolds) => orificeLimits(geometry, reynolds, taps),
      uncertainty: orificeUncertainty,
      expansibilityUncertainty: (ratio, gamma) => (0.035 * (1 - ratio)) / gamma,
    };
  }
  const nozzle = NOZZLES[device.kind];
  return {
    coefficient: (geometry, reynolds) => nozzle.coefficient(geometry.diameterRatio, reynolds),
    expansibility: nozzleExpansibility,
    limits: nozzle.limits,
    uncertainty: nozzle.uncertainty,
    expansibilityUncertainty: (ratio) => 0.02 * (1 - ratio),
  };
}
