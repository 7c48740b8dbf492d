/** The assumptions that took part, with how much the first finding rests on each. */
import type { Sensitivity } from "../../findings/index.ts";
import { ASSUMPTION_TABLE, type Assumptions, type TallyModel } from "../../tally/index.ts";
import type { AssumptionResult } from "../result.ts";

/** Which unknown of the tally an assumption is the spread of. */
const SPREAD_OF: { readonly [key: string]: string } = {
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
};

export function assumptionsList(
  model: TallyModel,
  assumptions: Assumptions,
  sensitivities: readonly Sensitivity[],
  first: string | null,
): AssumptionResult[] {
  const took = new Set(model.unknowns.map((u) => u.name));
  return ASSUMPTION_TABLE.filter((row) => SPREAD_OF[row.key] === undefined || took.has(SPREAD_OF[row.key]!))
    .filter((row) => tookPart(row.key, model))
    .filter((row) => row.key !== (model.engine.volumetricEfficiency === null ? "breathingStated" : "breathingUnknown"))
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
