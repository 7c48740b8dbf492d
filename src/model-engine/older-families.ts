/** Two more invented engines, with meters that sense drag and volume. None is a real engine. */
import type { EngineDesign } from "./engine-design.ts";
import { CUBIC_CENTIMETRE, PER_MINUTE, PETROL_WITH_METER } from "./families.ts";
import { rpm } from "./protocol.ts";

/** 2.2 L four-cylinder petrol engine with a spring-loaded vane that corrects for temperature alone. */
export const PETROL_WITH_VANE: EngineDesign = {
  ...PETROL_WITH_METER,
  note: "invented 2.2 L four-cylinder petrol engine with a vane meter",
  displacement: 2198 * CUBIC_CENTIMETRE,
  compressionRatio: 9.4,
  breathing: [
    [rpm(600), 0.78],
    [rpm(1500), 0.83],
    [rpm(2500), 0.88],
    [rpm(3500), 0.9],
    [rpm(4500), 0.88],
    [rpm(6000), 0.76],
  ],
  largestSpeed: rpm(5800),
  meter: {
    kind: "vane",
    bore: 0.065,
    reference: 5,
    closedRatio: 0.06,
    openRatio: 0.94,
    smallestFlow: 1.2e-3,
    largestFlow: 0.13,
    angularFrequency: 45,
    dampingRatio: 0.8,
    compensation: "temperature",
  },
  injectors: { flow: 260 * CUBIC_CENTIMETRE * PER_MINUTE, atPressure: 250e3, deadTime: 1.1e-3 },
  computer: { dosedBy: "meter", trimLimit: 0.25, fullLoadLambda: 0.87 },
};

/** 2.0 L four-cylinder petrol engine with a vortex-counting meter, temperature and barometer. */
export const PETROL_WITH_VORTEX: EngineDesign = {
  ...PETROL_WITH_METER,
  note: "invented 2.0 L four-cylinder petrol engine with a vortex meter",
  displacement: 1997 * CUBIC_CENTIMETRE,
  compressionRatio: 10,
  meter: {
    kind: "vortex",
    bore: 0.07,
    pulsesPerVolume: 14_500,
    smallestFlow: 0.8e-3,
    largestFlow: 0.16,
    lag: 0.02,
    compensation: "temperature-and-pressure",
  },
};
