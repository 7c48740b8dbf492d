/**
 * Vortex meter: shedding frequency to volume, to mass.
 *
 * Equation    f = St(Re) v/d,  Q = f/K,  m = rho Q                                                              (1)
 *             Q_min = Re_min nu pi D/(4 x)               lowest usable flow, x = d/D, v = Q/(m pi D^2/4)           (2)
 * Symbols     f Hz | K 1/m3 | Q m3/s | m kg/s (m in (2): free share of the section) | rho kg/m3 | nu m2/s
 * Validity    f >= 0, K > 0 (asserted); above Q_min. Blind to density: temperature and pressure are needed for mass
 * Source      [roshko1954] for St; (1) definition                            Check  published/roshko1954.test.ts
 */
import { requirePositive, requireWithin } from "../../numerics/index.ts";

export type VortexMeter = { readonly pulsesPerVolume: number };

export function vortexMassFlow(meter: VortexMeter, frequency: number, density: number): number {
  requireWithin("frequency", frequency, 0, Number.MAX_VALUE);
  requirePositive("pulses per volume", meter.pulsesPerVolume);
  return (density * frequency) / meter.pulsesPerVolume;
}

/** The inverse. */
export function vortexFrequency(meter: VortexMeter, massFlow: number, density: number): number {
  requirePositive("density", density);
  return (massFlow * meter.pulsesPerVolume) / density;
}

/** (2), m3/s: below it vortices are not shed regularly. */
export function lowestUsableVolumeFlow(meter: {
  readonly leastReynolds: number;
  readonly kinematicViscosity: number;
  readonly bore: number;
  readonly bodyWidth: number;
  readonly freeArea: number;
}): number {
  const velocity = (meter.leastReynolds * meter.kinematicViscosity) / meter.bodyWidth;
  return velocity * meter.freeArea * (Math.PI / 4) * meter.bore ** 2;
}

/** A period-reading computer and a counting one see the same signal: f = 1/T. */
export function frequencyOfPeriod(period: number): number {
  requirePositive("period", period);
  return 1 / period;
}
