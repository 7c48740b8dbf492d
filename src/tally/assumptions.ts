/** The table of assumptions (assumptions.json) as numbers by key, with changes by the user laid over it. */
import { type Failure, failure, type Result, success } from "../quantities/index.ts";
import table from "./assumptions.json" with { type: "json" };

export type AssumptionKey =
  | "meterScale"
  | "meterShape"
  | "meterLength"
  | "breathingStated"
  | "breathingUnknown"
  | "breathingMean"
  | "breathingShape"
  | "breathingLengthSpeed"
  | "breathingLengthPressure"
  | "residualStrength"
  | "residualStrengthSd"
  | "motoredBreathing"
  | "motoredSlope"
  | "motoredScatter"
  | "chargeHeating"
  | "heatSoak"
  | "temperatureUnknown"
  | "pressureOffset"
  | "barometer"
  | "humidity"
  | "fuelScale"
  | "fuelShape"
  | "deadTime"
  | "idlePulse"
  | "tableScale"
  | "tableShape"
  | "purge"
  | "discrepancyMeter"
  | "discrepancyPressure"
  | "discrepancyFuel"
  | "pointNoise"
  | "egrSpark"
  | "egrSparkShut"
  | "egrDiesel"
  | "egrScatter"
  | "ductDrop"
  | "ductDropSpread"
  | "exhaustRise"
  | "exhaustTemperature"
  | "leakDischarge"
  | "controlProbe"
  | "independentProbe"
  | "injectorFlow"
  | "deadTimeStated"
  | "alcohol"
  | "throttleLevel"
  | "throttleUnknown"
  | "throttleStop"
  | "throttleBypass"
  | "throttleShape"
  | "throttleLength"
  | "throttleRatio"
  | "idleValve"
  | "discrepancyThrottle"
  | "discrepancyExhaust"
  | "draught"
  | "meterRestVoltage"
  | "meterRestRatio"
  | "meterRestFlow"
  | "temperatureSensor"
  | "soakSpread";

export type Assumption = {
  readonly name: string;
  readonly key: AssumptionKey;
  readonly value: number;
  readonly unit: string;
  readonly reason: string;
};
export type Assumptions = { readonly [key in AssumptionKey]: number };

export const ASSUMPTION_TABLE: readonly Assumption[] = table.assumptions.map((row) => ({
  ...row,
  key: row.key as AssumptionKey,
}));

export function defaultAssumptions(): Assumptions {
  return Object.fromEntries(ASSUMPTION_TABLE.map((a) => [a.key, a.value])) as Assumptions;
}

export type AssumptionReason = "unknown-assumption" | "not-a-positive-number";

/** Lays a user's numbers (by key) over the defaults. */
export function withAssumptions(changes: { readonly [key: string]: unknown }): Result<Assumptions, AssumptionReason> {
  const values: { [key: string]: number } = { ...defaultAssumptions() };
  for (const [key, value] of Object.entries(changes)) {
    if (key === "note") continue;
    const problem = checkChange(key, value, values);
    if (problem !== null) return problem;
    values[key] = value as number;
  }
  return success(values as Assumptions);
}

function checkChange(
  key: string,
  value: unknown,
  known: { readonly [key: string]: number },
): Failure<AssumptionReason> | null {
  if (!(key in known)) {
    return failure(
      "unknown-assumption",
      `There is no assumption "${key}".`,
      `Known ones: ${Object.keys(known).join(", ")}.`,
    );
  }
  if (typeof value !== "number" || !(value > 0) || !Number.isFinite(value)) {
    return failure(
      "not-a-positive-number",
      `The assumption "${key}" is ${JSON.stringify(value)}.`,
      "Give a positive number in the unit of the table.",
    );
  }
  return null;
}
