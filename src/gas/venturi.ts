/**
 * Mass flow through a venturi with its approach velocity, subsonic to choked.
 *
 * Equation    m = C_d C_f A p_1 sqrt(M)/sqrt(Z R T_1)                                                            (1)
 *             C_f = sqrt(2g (1 - r^((g-1)/g)) / ((g-1)(r^(-2/g) - b^4)))                                         (2)
 *             r_c^((1-g)/g) + (g-1)/2 b^4 r_c^(2/g) = (g+1)/2                     where (2) is greatest: choked    (3)
 *             V = K_v p_1/sqrt(T_1)                     calibrated critical venturi, at reference conditions          (4)
 * Symbols     m kg/s | V m3/s | K_v m3 K^0.5/(Pa s) its calibration constant | A m2 throat | p_1 Pa, T_1 K static at the inlet | M kg/mol | r throat over inlet pressure | b throat over inlet
 *             diameter | g ratio of specific heats | Z compressibility factor
 * Validity    0 <= b < 1, 0 < r <= 1, g > 1 (asserted); b = 0 is the flow from rest of orifice-flow-function.ts
 * Source      [cfr1065] 1065.640 eq. 1065.640-6, 1065.642; (4) [cfr1066] 1066.630(c)      Check published/cfr1065.test.ts
 */
import { findRoot, requirePositive, requireWithin } from "../numerics/index.ts";
import { MOLAR_GAS_CONSTANT } from "../quantities/index.ts";

export type VenturiShape = { readonly diameterRatio: number; readonly gamma: number };

/** (2); below the critical ratio the choked value. */
export function venturiFlowCoefficient(pressureRatio: number, shape: VenturiShape): number {
  requireWithin("pressure ratio", pressureRatio, Number.MIN_VALUE, 1);
  const { gamma, diameterRatio } = shape;
  const logRatio = Math.log(Math.max(pressureRatio, venturiCriticalRatio(shape)));
  const drop = -Math.expm1(((gamma - 1) / gamma) * logRatio);
  return Math.sqrt((2 * gamma * drop) / ((gamma - 1) * (Math.exp((-2 / gamma) * logRatio) - diameterRatio ** 4)));
}

/** (3) */
export function venturiCriticalRatio(shape: VenturiShape): number {
  const { gamma, diameterRatio } = shape;
  requireWithin("diameter ratio", diameterRatio, 0, 1 - Number.EPSILON);
  requirePositive("ratio of specific heats less one", gamma - 1);
  const beta4 = diameterRatio ** 4;
  const excess = (r: number): number =>
    r ** ((1 - gamma) / gamma) + ((gamma - 1) / 2) * beta4 * r ** (2 / gamma) - (gamma + 1) / 2;
  const outcome = findRoot(excess, { low: 0.2, high: 1 });
  if (outcome.status !== "found") throw new Error(`Assertion failed: no critical ratio for beta ${diameterRatio}`);
  return outcome.root;
}

export type VenturiInlet = {
  readonly dischargeCoefficient: number;
  readonly flowCoefficient: number;
  readonly throatArea: number;
  readonly inletPressure: number;
  readonly inletTemperature: number;
  /** kg/mol */
  readonly molarMass: number;
  readonly compressibility?: number;
  readonly gasConstant?: number;
};

/** (1) over M, mol/s. */
export function venturiMolarFlow(inlet: VenturiInlet): number {
  const { dischargeCoefficient, flowCoefficient, throatArea, inletPressure, inletTemperature, molarMass } = inlet;
  const { compressibility = 1, gasConstant = MOLAR_GAS_CONSTANT } = inlet;
  requirePositive("inlet temperature", inletTemperature);
  requirePositive("molar mass", molarMass);
  return (
    (dischargeCoefficient * flowCoefficient * throatArea * inletPressure) /
    Math.sqrt(compressibility * molarMass * gasConstant * inletTemperature)
  );
}

/** (1), kg/s. */
export function venturiMassFlow(inlet: VenturiInlet): number {
  return venturiMolarFlow(inlet) * inlet.molarMass;
}

/** (4), m3/s at the reference conditions that the calibration constant holds for. */
export function calibratedVenturiFlow(venturi: {
  readonly calibrationConstant: number;
  readonly inletPressure: number;
  readonly inletTemperature: number;
}): number {
  const { calibrationConstant, inletPressure, inletTemperature } = venturi;
  requirePositive("calibration constant", calibrationConstant);
  requirePositive("inlet pressure", inletPressure);
  requirePositive("inlet temperature", inletTemperature);
  return (calibrationConstant * inletPressure) / Math.sqrt(inletTemperature);
}
