/** A starting engine file: an invented engine with every key in use, to be changed. */
export const ENGINE_TEMPLATE = {
  format: "airtally-engine/1",
  note: "An invented engine. Change what you know, remove what you do not know: it then gets a wider assumption.",
  displacement: "1998 cm3",
  cylinders: 4,
  strokes: 4,
  banks: 1,
  compressionRatio: 10.5,
  valveTiming: "fixed",
  fuel: "petrol",
  ignition: "spark",
  induction: "natural",
  injection: "port",
  metering: "meter",
  meters: [
    {
      id: "meter",
      kind: "hot-wire",
      bore: "70 mm",
      reference: "5 V",
      curve: {
        note: "needed only where the recording holds the raw signal; invented points",
        signalUnit: "V",
        flowUnit: "g/s",
        at: { pressure: "101.325 kPa", temperature: "20 degC" },
        points: [
          [0.98, 2.1],
          [1.4, 6],
          [2, 17.5],
          [2.6, 38],
          [3.2, 70],
          [3.8, 118],
          [4.4, 184],
        ],
      },
    },
  ],
  manifoldSensor: {
    reads: "absolute",
    reference: "5 V",
    points: [
      ["0.5 V", "20 kPa"],
      ["4.5 V", "115 kPa"],
    ],
  },
  volumetricEfficiency: { value: 0.85, sd: 0.05 },
  injectors: {
    flow: "240 cm3/min",
    atPressure: "300 kPa",
    deadTime: "0.9 ms",
    pressureReference: "manifold",
    pulsesPerCycle: 1,
  },
  lambdaProbe: "wide",
  independentProbe: "none",
  site: { barometer: "98.9 kPa", outside: "12 degC" },
  trimLimits: "25 %",
  trims: "multiplied",
  egr: "none",
  egrControl: "unknown",
  purge: "fitted",
  secondaryAir: "none",
  intakeTemperatureAt: "meter",
  manifoldVolume: "3.0 L",
  chargeVolume: "5 L",
  throttleBore: "60 mm",
} as const;

export function engineTemplate(): string {
  return `${JSON.stringify(ENGINE_TEMPLATE, null, 2)}\n`;
}
