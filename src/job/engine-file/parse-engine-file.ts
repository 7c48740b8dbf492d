/** Engine file text to EngineDescription in SI. */
import type { EngineDescription, MeterCurve, MeterDescription } from "../../engine/index.ts";
import { prepareMeter } from "../../meters/index.ts";
import { type Dimension, failure, parseQuantity, type Result, success, toSi, unit } from "../../quantities/index.ts";
import { parseJson } from "../json-text.ts";
import { schemaProblem } from "../schema-problem.ts";
import { ENGINE_FILE_SCHEMA, type EngineFile } from "./engine-file-schema.ts";

export type EngineFileReason =
  | "not-json"
  | "not-valid"
  | "two-stroke"
  | "no-curve"
  | "too-few-points"
  | "curve-not-monotone"
  | "curve-point-invalid";

const DOCUMENT = { name: "engine file", schema: ENGINE_FILE_SCHEMA, describedIn: "docs/engine-file.md" };

export function parseEngineFile(text: string): Result<EngineDescription, EngineFileReason> {
  const json = parseJson(text, "engine file");
  if (!json.ok) return json;
  const parsed = ENGINE_FILE_SCHEMA.safeParse(json.value, { reportInput: true });
  if (!parsed.success) return schemaProblem(parsed.error, DOCUMENT);
  const file = parsed.data;
  if (file.strokes !== 4) {
    return failure(
      "two-stroke",
      `The engine file says ${file.strokes} strokes.`,
      "Only four-stroke engines are judged: in a two-stroke part of the air leaves unburnt, so no witness here tells what is trapped.",
    );
  }
  const engine = describe(file);
  for (const meter of engine.meters) {
    if (meter.curve === null) continue;
    const prepared = prepareMeter(meter);
    if (!prepared.ok)
      return failure(prepared.reason, `The engine file is not right: ${prepared.message}`, prepared.remedy);
  }
  return success(engine);
}

function describe(file: EngineFile): EngineDescription {
  const { injectors, manifoldSensor, volumetricEfficiency: ve } = file;
  return {
    note: file.note ?? null,
    displacement: si(file.displacement, "volume")!,
    cylinders: file.cylinders,
    strokes: 4,
    banks: file.banks ?? 1,
    compressionRatio: file.compressionRatio ?? null,
    valveTiming: file.valveTiming ?? null,
    fuel:
      typeof file.fuel === "string" ? file.fuel : { stoichiometricAirFuelRatio: file.fuel.stoichiometricAirFuelRatio },
    ignition: file.ignition ?? (file.fuel === "diesel" ? "compression" : "spark"),
    induction: file.induction ?? null,
    injection: file.injection ?? null,
    metering: file.metering,
    meters: (file.meters ?? []).map(meterOf),
    manifoldSensor:
      manifoldSensor === undefined
        ? null
        : {
            reads: manifoldSensor.reads ?? "absolute",
            reference: si(manifoldSensor.reference, "voltage"),
            points: manifoldSensor.points?.map(([v, p]) => [si(v, "voltage")!, si(p, "pressure")!] as const) ?? null,
          },
    volumetricEfficiency: ve === undefined ? null : { value: ve.value, sd: ve.sd ?? null },
    injectors:
      injectors === undefined
        ? null
        : {
            flow: si(injectors.flow, "volumeFlow"),
            atPressure: si(injectors.atPressure, "pressure"),
            deadTime: si(injectors.deadTime, "time"),
            pressureReference: injectors.pressureReference ?? null,
            pulsesPerCycle: injectors.pulsesPerCycle ?? null,
          },
    lambdaProbe: file.lambdaProbe ?? null,
    independentProbe: file.independentProbe ?? null,
    site: { barometer: si(file.site?.barometer, "pressure"), outside: si(file.site?.outside, "temperature") },
    trimLimits: si(file.trimLimits, "ratio"),
    trims: file.trims ?? null,
    egr: file.egr ?? null,
    egrControl: file.egrControl ?? null,
    purge: file.purge ?? null,
    secondaryAir: file.secondaryAir ?? null,
    intakeTemperatureAt: file.intakeTemperatureAt ?? null,
    manifoldVolume: si(file.manifoldVolume, "volume"),
    chargeVolume: si(file.chargeVolume, "volume"),
    throttleBore: si(file.throttleBore, "length"),
  };
}

function meterOf(meter: NonNullable<EngineFile["meters"]>[number]): MeterDescription {
  return {
    id: meter.id,
    kind: meter.kind,
    bank: meter.bank ?? null,
    bore: si(meter.bore, "length"),
    reference: si(meter.reference, "voltage"),
    curve: meter.curve === undefined ? null : curveOf(meter.curve),
  };
}

function curveOf(curve: NonNullable<NonNullable<EngineFile["meters"]>[number]["curve"]>): MeterCurve {
  const flowUnit = unit(curve.flowUnit);
  const signal = (x: number) => (curve.signalUnit === "ms" ? toSi(x, unit("ms")) : x);
  return {
    signalUnit: curve.signalUnit,
    flow: flowUnit.dimension === "massFlow" ? "mass" : "volume",
    points: curve.points.map(([x, y]) => [signal(x), toSi(y, flowUnit)] as const),
    at:
      curve.at === undefined
        ? null
        : { pressure: si(curve.at.pressure, "pressure")!, temperature: si(curve.at.temperature, "temperature")! },
  };
}

/** SI value of a text that the schema has already accepted. */
function si(text: string | undefined, dimension: Dimension): number | null {
  if (text === undefined) return null;
  const parsed = parseQuantity(text, dimension);
  return parsed.ok ? parsed.value : null;
}
