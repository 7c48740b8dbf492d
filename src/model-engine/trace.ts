/** What really happened, step by step, and what the sensors and the engine computer said of it. SI, one row a step. */
export const TRACE_COLUMNS = [
  // truth; flows in kg/s of moist air, `airIntoCylinders` of dry fresh air, `storage` of both volumes
  "time",
  "segment",
  "speed",
  "roadSpeed",
  "pressureBeforeThrottle",
  "manifoldPressure",
  "chargeTemperature",
  "exhaustPressure",
  "meterFlow",
  "throttleFlow",
  "leakFlow",
  "purgeFlow",
  "leakBeforeThrottleFlow",
  "boostLeakFlow",
  "egrFlow",
  "recirculatedFlow",
  "airIntoCylinders",
  "storage",
  "fuelFlow",
  "lambda",
  // read by sensors
  "meterSignal",
  "meterReading",
  "pressureReading",
  "boostReading",
  "barometerReading",
  "intakeTemperatureReading",
  "ambientTemperatureReading",
  "coolantReading",
  "lambdaReading",
  "lambdaReading2",
  "independentLambdaReading",
  "probeVoltage",
  "probeVoltage2",
  "throttleReading",
  "pedalReading",
  "batteryVoltage",
  // said or commanded by the engine computer
  "shortTrim",
  "longTrim",
  "shortTrim2",
  "longTrim2",
  "lambdaCommanded",
  "loopState",
  "pulseWidth",
  "fuelRateReported",
  "airReported",
  "calculatedLoad",
  "absoluteLoad",
  "egrCommanded",
  "purgeCommanded",
] as const;

export type TraceColumn = (typeof TRACE_COLUMNS)[number];
export type Trace = { readonly rows: number; readonly step: number } & {
  readonly [column in TraceColumn]: Float64Array;
};

export function newTrace(rows: number, step: number): Trace {
  const columns = Object.fromEntries(TRACE_COLUMNS.map((name) => [name, new Float64Array(rows)]));
  return { rows, step, ...columns } as Trace;
}
