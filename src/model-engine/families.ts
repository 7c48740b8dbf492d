/**
 * Families of invented engines: a drawing each, and one engine of the family for each seed. None is a real engine.
 */

import { seededRandom } from "../numerics/index.ts";
import type { EngineDesign } from "./engine-design.ts";
import { drawParts } from "./engine-parts.ts";
import { LARGEST_HEALTHY_TRIM, largestTrim } from "./healthy-trim.ts";
import type { ModelEngine } from "./model-engine.ts";
import { rpm } from "./protocol.ts";

export const CUBIC_CENTIMETRE = 1e-6;
export const PER_MINUTE = 1 / 60;

/** 2.0 L four-cylinder petrol saloon, hot wire and manifold pressure sensor, dosed by the meter. */
export const PETROL_WITH_METER: EngineDesign = {
  note: "invented 2.0 L four-cylinder petrol saloon engine",
  displacement: 1998 * CUBIC_CENTIMETRE,
  cylinders: 4,
  compressionRatio: 10.5,
  fuel: "petrol",
  ignition: "spark",
  injection: "port",
  idleSpeed: rpm(780),
  largestSpeed: rpm(6200),
  breathing: [
    [rpm(600), 0.8],
    [rpm(1500), 0.84],
    [rpm(2500), 0.88],
    [rpm(3500), 0.93],
    [rpm(4500), 0.96],
    [rpm(5500), 0.92],
    [rpm(6500), 0.82],
  ],
  residualStrength: 0.9,
  intake: {
    filterDrop: 1800,
    coolerDrop: 0,
    chargeVolume: 5e-3,
    manifoldVolume: 3e-3,
    throttleBore: 0.06,
  },
  charger: null,
  exhaust: { pressureRise: 18e3, volumeToProbe: 1.2e-3 },
  egrValveArea: null,
  meter: {
    kind: "hot-wire",
    bore: 0.07,
    reference: 5,
    voltageAtRest: 0.6,
    largestVoltage: 4.8,
    largestFlow: 0.22,
    lag: 0.03,
  },
  manifoldSensor: {
    reference: 5,
    points: [
      [0.5, 20e3],
      [4.5, 115e3],
    ],
  },
  intakeTemperatureAt: "meter",
  injectors: { flow: 240 * CUBIC_CENTIMETRE * PER_MINUTE, atPressure: 300e3, deadTime: 0.9e-3 },
  lambdaProbe: "narrow",
  computer: { dosedBy: "meter", trimLimit: 0.25, fullLoadLambda: 0.88 },
  inertia: 0.16,
};

/** 1.6 L four-cylinder petrol engine without an air meter, dosed by manifold pressure. */
export const PETROL_WITH_PRESSURE: EngineDesign = {
  ...PETROL_WITH_METER,
  note: "invented 1.6 L four-cylinder petrol engine without an air meter",
  displacement: 1596 * CUBIC_CENTIMETRE,
  compressionRatio: 10,
  idleSpeed: rpm(820),
  breathing: [
    [rpm(600), 0.78],
    [rpm(1500), 0.85],
    [rpm(2500), 0.9],
    [rpm(4000), 0.94],
    [rpm(5500), 0.89],
    [rpm(6500), 0.8],
  ],
  residualStrength: 1.05,
  intake: { ...PETROL_WITH_METER.intake, chargeVolume: 4e-3, manifoldVolume: 2.4e-3, throttleBore: 0.052 },
  meter: null,
  intakeTemperatureAt: "manifold",
  injectors: { flow: 190 * CUBIC_CENTIMETRE * PER_MINUTE, atPressure: 300e3, deadTime: 0.85e-3 },
  computer: { dosedBy: "pressure", trimLimit: 0.25, fullLoadLambda: 0.9 },
  inertia: 0.14,
};

/** 1.8 L turbocharged direct-injection petrol engine with meter and pressure sensor, wide probe. */
export const BOOSTED_BOTH: EngineDesign = {
  ...PETROL_WITH_METER,
  note: "invented 1.8 L turbocharged petrol engine with meter and pressure sensor",
  displacement: 1798 * CUBIC_CENTIMETRE,
  compressionRatio: 9.6,
  injection: "direct",
  idleSpeed: rpm(760),
  breathing: [
    [rpm(600), 0.82],
    [rpm(1500), 0.88],
    [rpm(2500), 0.93],
    [rpm(4000), 0.95],
    [rpm(5500), 0.9],
    [rpm(6500), 0.82],
  ],
  residualStrength: 0.95,
  intake: { filterDrop: 3500, coolerDrop: 7000, chargeVolume: 7e-3, manifoldVolume: 3e-3, throttleBore: 0.056 },
  charger: { largestRatio: 1.8, spooledAt: 0.3, lag: 0.7, efficiency: 0.68, coolerEffectiveness: 0.75 },
  exhaust: { pressureRise: 25e3, volumeToProbe: 1.5e-3 },
  meter: {
    kind: "hot-film",
    bore: 0.07,
    reference: 5,
    voltageAtRest: 1,
    largestVoltage: 4.9,
    largestFlow: 0.28,
    lag: 0.02,
  },
  manifoldSensor: {
    reference: 5,
    points: [
      [0.4, 20e3],
      [4.65, 250e3],
    ],
  },
  intakeTemperatureAt: "manifold",
  injectors: { flow: 900 * CUBIC_CENTIMETRE * PER_MINUTE, atPressure: 10e6, deadTime: 0.3e-3 },
  lambdaProbe: "wide",
  computer: { dosedBy: "both", trimLimit: 0.25, fullLoadLambda: 0.88 },
  inertia: 0.18,
};

/** 2.0 L turbocharged diesel, dosed by the pedal, EGR controlled by the meter. */
export const DIESEL_WITH_EGR: EngineDesign = {
  ...BOOSTED_BOTH,
  note: "invented 2.0 L turbocharged diesel engine whose meter controls exhaust-gas recirculation",
  displacement: 1968 * CUBIC_CENTIMETRE,
  compressionRatio: 16.5,
  fuel: "diesel",
  ignition: "compression",
  idleSpeed: rpm(830),
  largestSpeed: rpm(4600),
  breathing: [
    [rpm(600), 0.86],
    [rpm(1500), 0.89],
    [rpm(2500), 0.9],
    [rpm(3500), 0.87],
    [rpm(4600), 0.8],
  ],
  residualStrength: 0.8,
  intake: { filterDrop: 4000, coolerDrop: 6000, chargeVolume: 7e-3, manifoldVolume: 3.5e-3, throttleBore: 0.06 },
  charger: { largestRatio: 2.3, spooledAt: 0.4, lag: 0.7, efficiency: 0.68, coolerEffectiveness: 0.75 },
  egrValveArea: 380e-6,
  intakeTemperatureAt: "meter",
  lambdaProbe: "none",
  computer: { dosedBy: "pedal", trimLimit: 0.25, fullLoadLambda: 1 },
  inertia: 0.22,
};

/**
 * One engine of a drawing, its parts drawn within healthy tolerances times `spread`. Tolerances can add up to an engine whose
 * trims would leave the 6 % that is called healthy: such a draw is discarded and the next one taken.
 */
export function buildEngine(design: EngineDesign, seed: number, spread = 1): ModelEngine {
  const random = seededRandom(seed);
  for (let draw = 0; ; draw++) {
    const parts = drawParts(random.fork(`parts ${draw}`), spread);
    if (largestTrim(design, parts) <= LARGEST_HEALTHY_TRIM)
      return { name: `${design.note}, number ${seed}`, design, parts };
  }
}

export const petrolWithMeter = (seed: number): ModelEngine => buildEngine(PETROL_WITH_METER, seed);
export const petrolWithPressure = (seed: number): ModelEngine => buildEngine(PETROL_WITH_PRESSURE, seed);
export const boostedBoth = (seed: number): ModelEngine => buildEngine(BOOSTED_BOTH, seed);
export const dieselWithEgr = (seed: number): ModelEngine => buildEngine(DIESEL_WITH_EGR, seed);
