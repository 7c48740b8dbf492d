/** The engine as the page shows it: one sentence, and every line that the answer leans on, known or not. */
import type { EngineDescription } from "../../engine/index.ts";
import { fromSi, unit } from "../../quantities/index.ts";
import type { Assumptions } from "../../tally/index.ts";
import type { EngineFact, EngineView } from "../result.ts";

const DOSED: { readonly [metering: string]: string } = {
  meter: "dosed by the air meter",
  pressure: "dosed by manifold pressure",
  both: "dosed by meter and pressure",
  pedal: "dosed by the pedal",
  unknown: "what it doses by is not known",
};

export function engineView(engine: EngineDescription, assumptions: Assumptions): EngineView {
  const fuel =
    typeof engine.fuel === "string" ? engine.fuel : `fuel of ratio ${engine.fuel.stoichiometricAirFuelRatio}`;
  const boosted = engine.induction === "boosted";
  const parts = [
    `${Math.round(engine.displacement * 1e6)} cm³`,
    `${engine.cylinders} cylinders`,
    fuel,
    ...(boosted ? ["boosted"] : []),
    DOSED[engine.metering]!,
  ];
  return {
    sentence: parts.join(", "),
    note: engine.note,
    meterKinds: engine.meters.map((m) => m.kind),
    banks: engine.banks,
    boosted,
    egr: engine.egr === "fitted" || (engine.egr === null && engine.ignition === "compression"),
    throttle: engine.ignition === "spark",
    cylinders: engine.cylinders,
    injection: engine.injection,
    probe: engine.lambdaProbe,
    facts: factsOf(engine, assumptions, parts[0]!, fuel),
  };
}

function factsOf(engine: EngineDescription, a: Assumptions, displacement: string, fuel: string): EngineFact[] {
  const known = (label: string, value: string | null, cost: string): EngineFact => ({
    label,
    value,
    cost: value === null ? cost : null,
  });
  const ve = engine.volumetricEfficiency;
  const { barometer, outside } = engine.site;
  return [
    known("displacement", displacement, ""),
    known("number of cylinders", String(engine.cylinders), ""),
    known("fuel", fuel, ""),
    known("fuel dosing", DOSED[engine.metering]!, ""),
    known("induction", engine.induction, "taken as natural in the drawing; pressures decide in the tally"),
    known(
      "meters",
      engine.meters.length === 0 ? null : engine.meters.map((m) => m.kind.replace("-", " ")).join(", "),
      "a recorded flow is used as it stands; raw signals need the meter and its curve",
    ),
    known(
      "volumetric efficiency",
      ve === null ? null : `${ve.value}${ve.sd === null ? "" : ` ± ${(1.645 * ve.sd).toFixed(2)}`}`,
      `assumed ${a.breathingMean} ± ${Math.round(164.5 * a.breathingUnknown)} %: the absolute level of the pressure witness is loose`,
    ),
    known(
      "barometer",
      barometer === null ? null : `${fromSi(barometer, unit("kPa")).toFixed(1)} kPa`,
      "taken from the recording, else sea level",
    ),
    known(
      "outside temperature",
      outside === null ? null : `${fromSi(outside, unit("degC")).toFixed(0)} °C`,
      "taken from the recording, else 20 °C",
    ),
    known(
      "injectors",
      engine.injectors === null ? null : "described",
      "effective pulse at idle assumed 1.6 ms: sizes of injector faults are rough",
    ),
    known("lambda probe", engine.lambdaProbe, "taken as narrow unless a wide lambda is recorded"),
    known(
      "trim limits",
      engine.trimLimits === null ? null : `${Math.round(100 * engine.trimLimits)} %`,
      "taken as 25 %",
    ),
    known(
      "EGR",
      engine.egr,
      engine.ignition === "compression"
        ? "taken as fitted and open wherever not commanded shut"
        : "taken as none for healthy running; still a possible fault",
    ),
    known("intake temperature measured at", engine.intakeTemperatureAt, "taken as near the manifold"),
  ];
}
