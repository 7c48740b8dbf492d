/**
 * ISA 1932, long-radius and Venturi nozzles: discharge coefficient, expansibility, limits and uncertainty.
 *
 * Equation    C = 0.9900 - 0.2262 b^4.1 - (0.00175 b^2 - 0.0033 b^4.15)(1e6/Re)^1.15        ISA 1932              (1)
 *             C = 0.9965 - 0.00653 b^0.5 (1e6/Re)^0.5                                       long radius           (2)
 *             C = 0.9858 - 0.196 b^4.5                                                      Venturi nozzle        (3)
 *             e = sqrt( (g t^(2/g)/(g-1)) ((1-b^4)/(1-b^4 t^(2/g))) ((1-t^((g-1)/g))/(1-t)) )                       (4)
 * Symbols     b diameter ratio | Re pipe Reynolds number | g isentropic exponent | t = p2/p1
 * Validity    ISA 1932: 50 <= D <= 500 mm, 0.3 <= b <= 0.8, Re from 7e4 (b < 0.44) or 2e4 to 1e7;
 *             long radius: 50 <= D <= 630 mm, 0.2 <= b <= 0.8, Re from 1e4 to 1e7;
 *             Venturi nozzle: 65 <= D <= 500 mm, d >= 50 mm, 0.316 <= b <= 0.775, Re from 1.5e5 to 2e6
 * Source      [iso5167-3] 5.1.6, 5.2.6, 5.3.4 (limits and uncertainties, and all of the Venturi nozzle, from memory)
 * Check       published/iso5167.test.ts
 */
import type { DeviceGeometry } from "./device-geometry.ts";

type Nozzle = {
  coefficient(diameterRatio: number, reynolds: number): number;
  limits(geometry: DeviceGeometry, reynolds: number): string[];
  uncertainty(geometry: DeviceGeometry): number;
};

/** m, of a Venturi nozzle */
const SMALLEST_THROAT = 0.05;

export const isaNozzle: Nozzle = {
  coefficient: (b, reynolds) =>
    0.99 - 0.2262 * b ** 4.1 - (0.00175 * b * b - 0.0033 * b ** 4.15) * (1e6 / reynolds) ** 1.15,
  limits: ({ pipeDiameter, diameterRatio }, reynolds) =>
    brokenLimits(
      { pipeDiameter, diameterRatio, reynolds },
      [0.05, 0.5],
      [0.3, 0.8],
      [diameterRatio < 0.44 ? 7e4 : 2e4, 1e7],
    ),
  uncertainty: ({ diameterRatio: b }) => (b <= 0.6 ? 0.008 : (2 * b - 0.4) / 100),
};

export const longRadiusNozzle: Nozzle = {
  coefficient: (b, reynolds) => 0.9965 - 0.00653 * Math.sqrt(b) * Math.sqrt(1e6 / reynolds),
  limits: ({ pipeDiameter, diameterRatio }, reynolds) =>
    brokenLimits({ pipeDiameter, diameterRatio, reynolds }, [0.05, 0.63], [0.2, 0.8], [1e4, 1e7]),
  uncertainty: () => 0.02,
};

/** (3): ISA 1932 at the inlet, with a throat and a diffuser behind it. */
export const venturiNozzle: Nozzle = {
  coefficient: (b) => 0.9858 - 0.196 * b ** 4.5,
  limits: ({ pipeDiameter, diameterRatio }, reynolds) => {
    const broken = brokenLimits({ pipeDiameter, diameterRatio, reynolds }, [0.065, 0.5], [0.316, 0.775], [1.5e5, 2e6]);
    const bore = pipeDiameter * diameterRatio;
    if (bore < SMALLEST_THROAT) broken.push(`bore in m ${bore.toPrecision(3)} below ${SMALLEST_THROAT}`);
    return broken;
  },
  uncertainty: ({ diameterRatio: b }) => (1.2 + 1.5 * b ** 4) / 100,
};

/** (4) */
export function nozzleExpansibility(diameterRatio: number, pressureRatio: number, gamma: number): number {
  if (pressureRatio === 1) return 1;
  const b4 = diameterRatio ** 4;
  const logRatio = Math.log(pressureRatio);
  const t = Math.exp((2 / gamma) * logRatio);
  const drop = Math.expm1(((gamma - 1) / gamma) * logRatio) / Math.expm1(logRatio);
  return Math.sqrt(((gamma * t) / (gamma - 1)) * ((1 - b4) / (1 - b4 * t)) * drop);
}

type Range = readonly [number, number];

function brokenLimits(
  at: DeviceGeometry & { readonly reynolds: number },
  pipe: Range,
  ratio: Range,
  reynolds: Range,
): string[] {
  const broken: string[] = [];
  const note = (what: string, value: number, [low, high]: Range): void => {
    if (value < low || value > high) broken.push(`${what} ${value.toPrecision(3)} outside ${low} to ${high}`);
  };
  note("pipe diameter in m", at.pipeDiameter, pipe);
  note("diameter ratio", at.diameterRatio, ratio);
  note("Reynolds number", at.reynolds, reynolds);
  return broken;
}
