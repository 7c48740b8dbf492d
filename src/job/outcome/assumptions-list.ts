/** The assumptions that took part, with how much the first finding rests on each. */
import type { Sensitivity } from "../../findings/index.ts";
import { ASSUMPTION_TABLE, type Assumptions, type StandingKind, type TallyModel } from "../../tally/index.ts";
import type { AssumptionResult } from "../result.ts";

/** Which unknown of the tally an assumption is the spread of. */
export const SPREAD_OF: { readonly [key: string]: string } = {
  meterScale: "meter scale",
  meterShape: "meter curve",
  breathingStated: "breathing level",
  breathingUnknown: "breathing level",
  breathingShape: "breathing shape",
  residualStrengthSd: "residual-gas strength",
  chargeHeating: "charge heating",
  heatSoak: "heat soak",
  temperatureUnknown: "intake temperature",
  pressureOffset: "pressure sensor offset",
  humidity: "humidity",
  fuelScale: "fuel delivery",
  fuelShape: "fuel shape",
  deadTime: "injector dead time",
  purge: "purge",
  tableScale: "engine computer's table, level",
  tableShape: "engine computer's table, shape",
  motoredBreathing: "breathing with the fuel cut",
  barometer: "barometer",
  controlProbe: "control probe",
  independentProbe: "independent probe",
  injectorFlow: "injector flow",
  alcohol: "alcohol of the fuel",
  throttleLevel: "throttle level",
  throttleUnknown: "throttle level",
  throttleStop: "throttle stop",
  throttleBypass: "throttle bypass",
  throttleShape: "throttle curve",
};

export function assumptionsList(
  model: TallyModel,
  assumptions: Assumptions,
  sensitivities: readonly Sensitivity[],
  first: string | null,
): AssumptionResult[] {
  const took = new Set(model.unknowns.map((u) => u.name));
  // A barometer is also read where none of the witnesses hangs on it: with the engine standing.
  return ASSUMPTION_TABLE.filter(
    ({ key }) => SPREAD_OF[key] === undefined || took.has(SPREAD_OF[key]) || key === "barometer",
  )
    .filter((row) => tookPart(row.key, model))
    .filter((row) => row.key !== (model.engine.volumetricEfficiency === null ? "breathingStated" : "breathingUnknown"))
    .filter((row) => row.key !== (model.engine.throttleBore === null ? "throttleLevel" : "throttleUnknown"))
    .map((row) => {
      const found = sensitivities.find((s) => s.unknown === SPREAD_OF[row.key]);
      const sensitivity =
        found === undefined || first === null
          ? "not varied"
          : `${first}: ${inHundred(found.halved)} if halved, ${inHundred(found.doubled)} if doubled`;
      return { name: row.name, value: assumptions[row.key], unit: row.unit, reason: row.reason, sensitivity };
    });
}

/** Assumptions about parts that this engine, or this recording, has not. */
function tookPart(key: string, model: TallyModel): boolean {
  const diesel = model.engine.ignition === "compression";
  const has = (id: string) => model.witnesses.some((w) => w.startsWith(id));
  const stood = (kind: StandingKind) => model.standing.some((s) => s.kind === kind);
  switch (key) {
    case "egrSpark":
    case "egrSparkShut":
      return model.nonNegative.length > 0 && !diesel;
    case "egrDiesel":
    case "egrScatter":
      return model.nonNegative.length > 0 && diesel;
    case "discrepancyFuel":
    case "idlePulse":
      return has("fuel");
    case "discrepancyMeter":
    case "meterLength":
    case "ductDrop":
      return has("meter");
    case "discrepancyPressure":
    case "breathingMean":
    case "breathingLengthSpeed":
    case "breathingLengthPressure":
    case "residualStrength":
      return has("pressure");
    case "discrepancyThrottle":
    case "throttleLength":
    case "throttleRatio":
    case "idleValve":
      return has("throttle");
    case "discrepancyExhaust":
      return has("exhaust");
    case "motoredScatter":
      return model.points.some((p) => p.states.includes("fuel-cut"));
    case "draught":
    case "meterRestVoltage":
    case "meterRestRatio":
    case "meterRestFlow":
      return stood("meter-at-zero-flow");
    case "temperatureSensor":
    case "soakSpread":
      return stood("intake-temperature-at-cold-soak");
    case "ductDropSpread":
      return stood("full-load-pressure-drop");
    default:
      return true;
  }
}

export function restsOnAssumptions(sensitivities: readonly Sensitivity[], probability: number): string[] {
  return sensitivities
    .filter((s) => Math.max(Math.abs(s.doubled - probability), Math.abs(s.halved - probability)) > 0.2)
    .map((s) => `assumption: ${s.unknown}`);
}

function inHundred(probability: number): string {
  const n = Math.round(100 * probability);
  return n === 0 ? "less than 1 in 100" : n === 100 ? "more than 99 in 100" : `${n} in 100`;
}
