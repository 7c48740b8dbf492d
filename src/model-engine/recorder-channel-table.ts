/**
 * What a recorder can show: which column of the trace, in which unit, with which steps and noise, under which names.
 *
 * `step`, `low`, `high` are those of the SAE J1979 parameter where there is one (`pid`), in the unit shown: a polled reading is
 * rounded to them. A workshop logger has its own finer steps (`loggerStep`). Noise: common practice, no source.
 * Source [j1979]; the values also stand in the check set of published/j1979.test.ts
 */
import { assert, findUnit, type Unit } from "../quantities/index.ts";
import type { TraceColumn } from "./trace.ts";

export type RecorderChannel = {
  readonly column: TraceColumn;
  /** as the recording writes it; "" and "lambda" are plain numbers */
  readonly unit: string;
  readonly conversion: Unit | null;
  readonly pid: string | null;
  readonly step: number;
  readonly low: number;
  readonly high: number;
  readonly loggerStep: number;
  /** standard deviation of one reading: absolute in the unit shown, and relative */
  readonly noise: number;
  readonly relativeNoise: number;
  readonly longName: string;
  readonly shortName: string;
};

const percent = 100 / 255;
const trim = 100 / 128;
const lambda = 2 / 65_536;

function channel(
  column: TraceColumn,
  unit: string,
  pid: string | null,
  steps: readonly [step: number, low: number, high: number, loggerStep: number],
  noise: readonly [absolute: number, relative: number],
  names: readonly [long: string, short: string],
): RecorderChannel {
  const [step, low, high, loggerStep] = steps;
  const [longName, shortName] = names;
  const plain = unit === "" || unit === "lambda";
  const conversion = plain ? null : (findUnit(unit) ?? null);
  assert(plain || conversion !== null, `no unit ${unit} for ${column}`);
  return {
    column,
    unit,
    conversion,
    pid,
    step,
    low,
    high,
    loggerStep,
    noise: noise[0],
    relativeNoise: noise[1],
    longName,
    shortName,
  };
}

export const RECORDER_CHANNELS = {
  speed: channel("speed", "rpm", "0C", [0.25, 0, 16_383.75, 1], [4, 0], ["Engine speed", "RPM"]),
  manifoldPressure: channel(
    "pressureReading",
    "kPa",
    "0B",
    [1, 0, 255, 0.1],
    [0.25, 0],
    ["Intake manifold absolute pressure", "MAP"],
  ),
  meterFlow: channel("meterReading", "g/s", "10", [0.01, 0, 655.35, 0.01], [0, 0.01], ["Mass air flow rate", "MAF"]),
  intakeTemperature: channel(
    "intakeTemperatureReading",
    "degC",
    "0F",
    [1, -40, 215, 0.1],
    [0.1, 0],
    ["Intake air temperature", "IAT"],
  ),
  coolant: channel("coolantReading", "degC", "05", [1, -40, 215, 0.1], [0.1, 0], ["Engine coolant temperature", "ECT"]),
  ambientTemperature: channel(
    "ambientTemperatureReading",
    "degC",
    "46",
    [1, -40, 215, 0.1],
    [0, 0],
    ["Ambient air temperature", "AAT"],
  ),
  shortTrim: channel(
    "shortTrim",
    "%",
    "06",
    [trim, -100, 127 * trim, 0.1],
    [0, 0],
    ["Short term fuel trim bank 1", "STFT1"],
  ),
  longTrim: channel(
    "longTrim",
    "%",
    "07",
    [trim, -100, 127 * trim, 0.1],
    [0, 0],
    ["Long term fuel trim bank 1", "LTFT1"],
  ),
  shortTrim2: channel(
    "shortTrim2",
    "%",
    "08",
    [trim, -100, 127 * trim, 0.1],
    [0, 0],
    ["Short term fuel trim bank 2", "STFT2"],
  ),
  longTrim2: channel(
    "longTrim2",
    "%",
    "09",
    [trim, -100, 127 * trim, 0.1],
    [0, 0],
    ["Long term fuel trim bank 2", "LTFT2"],
  ),
  lambda2: channel(
    "lambdaReading2",
    "lambda",
    "38",
    [lambda, 0, 2 - lambda, 0.001],
    [0.003, 0],
    ["Lambda bank 2 sensor 1", "LAMBDA2"],
  ),
  throttle: channel(
    "throttleReading",
    "%",
    "11",
    [percent, 0, 100, 0.1],
    [0.1, 0],
    ["Absolute throttle position", "TPS"],
  ),
  pedal: channel("pedalReading", "%", "49", [percent, 0, 100, 0.1], [0.1, 0], ["Accelerator pedal position D", "APP"]),
  calculatedLoad: channel(
    "calculatedLoad",
    "%",
    "04",
    [percent, 0, 100, 0.1],
    [0, 0],
    ["Calculated engine load", "LOAD"],
  ),
  absoluteLoad: channel(
    "absoluteLoad",
    "%",
    "43",
    [percent, 0, 25_700, 0.1],
    [0, 0],
    ["Absolute load value", "ABS_LOAD"],
  ),
  lambda: channel(
    "lambdaReading",
    "lambda",
    "34",
    [lambda, 0, 2 - lambda, 0.001],
    [0.003, 0],
    ["Lambda bank 1 sensor 1", "LAMBDA1"],
  ),
  probeVoltage: channel(
    "probeVoltage",
    "V",
    "14",
    [0.005, 0, 1.275, 0.001],
    [0.01, 0],
    ["Oxygen sensor voltage bank 1 sensor 1", "O2S11"],
  ),
  probeVoltage2: channel(
    "probeVoltage2",
    "V",
    "18",
    [0.005, 0, 1.275, 0.001],
    [0.01, 0],
    ["Oxygen sensor voltage bank 2 sensor 1", "O2S21"],
  ),
  lambdaCommanded: channel(
    "lambdaCommanded",
    "lambda",
    "44",
    [lambda, 0, 2 - lambda, 0.001],
    [0, 0],
    ["Lambda commanded", "LAMBDA_CMD"],
  ),
  loopState: channel("loopState", "", "03", [1, 0, 32, 1], [0, 0], ["Fuel system status bank 1", "FUELSYS1"]),
  barometer: channel("barometerReading", "kPa", "33", [1, 0, 255, 0.1], [0, 0], ["Barometric pressure", "BARO"]),
  battery: channel(
    "batteryVoltage",
    "V",
    "42",
    [0.001, 0, 65.535, 0.01],
    [0.02, 0],
    ["Control module voltage", "VPWR"],
  ),
  roadSpeed: channel("roadSpeed", "km/h", "0D", [1, 0, 255, 0.1], [0, 0], ["Vehicle speed", "VSS"]),
  fuelRate: channel(
    "fuelRateReported",
    "L/h",
    "5E",
    [0.05, 0, 3276.75, 0.01],
    [0, 0],
    ["Engine fuel rate", "FUEL_RATE"],
  ),
  egrCommanded: channel("egrCommanded", "%", "2C", [percent, 0, 100, 0.1], [0, 0], ["Commanded EGR", "EGR_CMD"]),
  purgeCommanded: channel(
    "purgeCommanded",
    "%",
    "2E",
    [percent, 0, 100, 0.1],
    [0, 0],
    ["Commanded evaporative purge", "PURGE"],
  ),
  // Read by a workshop logger only.
  meterVoltage: channel("meterSignal", "V", null, [0.001, 0, 5, 0.001], [0.003, 0], ["Air meter voltage", "MAF_V"]),
  meterFrequency: channel(
    "meterSignal",
    "Hz",
    null,
    [0.1, 0, 20_000, 0.1],
    [0.2, 0.003],
    ["Air meter frequency", "MAF_HZ"],
  ),
  meterRatio: channel("meterSignal", "", null, [0.0001, 0, 1, 0.0001], [0.0008, 0], ["Air meter ratio", "MAF_RATIO"]),
  boostPressure: channel("boostReading", "kPa", null, [0.1, 0, 400, 0.1], [0.2, 0], ["Boost pressure", "BOOST"]),
  pulseWidth: channel("pulseWidth", "ms", null, [0.001, 0, 100, 0.001], [0.004, 0], ["Injector pulse width", "INJ_PW"]),
  lambdaIndependent: channel(
    "independentLambdaReading",
    "lambda",
    null,
    [0.001, 0, 2, 0.001],
    [0.003, 0],
    ["Lambda independent probe", "EXT_LAMBDA"],
  ),
} as const satisfies { readonly [id: string]: RecorderChannel };

export type RecorderChannelId = keyof typeof RECORDER_CHANNELS;
export const recorderChannel = (id: RecorderChannelId): RecorderChannel => RECORDER_CHANNELS[id];
