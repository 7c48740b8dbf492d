/** The engine file of a model engine: what its owner could know, in the words and units of the file ("airtally-engine/1"). */

import { ASSUMED_CALIBRATION_AIR } from "../meters/index.ts";
import { formatQuantity } from "../quantities/index.ts";
import type { EngineDesign, MeterDesign } from "./engine-design.ts";
import { CALIBRATION_DENSITY, meterLaw } from "./meter-law.ts";
import { printedCurve } from "./meter-response.ts";

export type EngineFileObject = { readonly [key: string]: unknown };

/** `independentProbe`: whether a wide probe of the workshop is in the exhaust as well. */
export function engineFileOf(design: EngineDesign, independentProbe = false): EngineFileObject {
  const { intake, injectors, manifoldSensor, meter, computer } = design;
  const spark = design.ignition === "spark";
  return {
    format: "airtally-engine/1",
    note: design.note,
    displacement: formatQuantity(design.displacement, "cm3", 5),
    cylinders: design.cylinders,
    strokes: 4,
    banks: design.banks ?? 1,
    compressionRatio: design.compressionRatio,
    valveTiming: "fixed",
    fuel: design.fuel,
    ignition: design.ignition,
    induction: design.charger === null ? "natural" : "boosted",
    injection: design.injection,
    metering: computer.dosedBy,
    meters: meter === null ? [] : [meterOf(meter)],
    ...(manifoldSensor === null
      ? {}
      : {
          manifoldSensor: {
            reads: "absolute",
            reference: formatQuantity(manifoldSensor.reference, "V", 3),
            points: manifoldSensor.points.map(([volts, pascal]) => [
              formatQuantity(volts, "V", 4),
              formatQuantity(pascal, "kPa", 5),
            ]),
          },
        }),
    ...(spark
      ? {
          injectors: {
            flow: formatQuantity(injectors.flow, "cm3/min", 5),
            atPressure: formatQuantity(injectors.atPressure, "kPa", 5),
            deadTime: formatQuantity(injectors.deadTime, "ms", 3),
            pressureReference: injectors.pressureReference ?? "manifold",
            pulsesPerCycle: 1,
          },
          trimLimits: formatQuantity(computer.trimLimit, "%", 3),
          trims: "multiplied",
          purge: "fitted",
        }
      : {}),
    lambdaProbe: design.lambdaProbe,
    independentProbe: independentProbe ? "wide" : "none",
    egr: design.egrValveArea === null ? "none" : "fitted",
    ...(design.egrValveArea === null ? {} : { egrControl: spark ? "position" : "meter" }),
    secondaryAir: "none",
    intakeTemperatureAt: design.intakeTemperatureAt,
    manifoldVolume: formatQuantity(intake.manifoldVolume, "L", 3),
    chargeVolume: formatQuantity(intake.chargeVolume, "L", 3),
    throttleBore: formatQuantity(intake.throttleBore, "mm", 4),
  };
}

function meterOf(meter: MeterDesign): EngineFileObject {
  const tidy = (value: number) => Number(value.toPrecision(5));
  const at = {
    pressure: formatQuantity(ASSUMED_CALIBRATION_AIR.pressure, "kPa", 6),
    temperature: formatQuantity(ASSUMED_CALIBRATION_AIR.temperature, "degC", 3),
  };
  const { signalUnit } = meterLaw(meter);
  const volume = meter.kind === "vortex";
  const curve = printedCurve(meter, 25, volume ? 1 : 3).map(([signal, flow]) => [
    signal,
    tidy(volume ? (flow / CALIBRATION_DENSITY) * 1e3 : flow * 1e3),
  ]);
  return {
    id: "meter",
    kind: meter.kind,
    bore: formatQuantity(meter.bore, "mm", 4),
    ...(meter.kind === "vortex" ? {} : { reference: formatQuantity(meter.reference, "V", 3) }),
    curve: {
      signalUnit,
      flowUnit: volume ? "L/s" : "g/s",
      ...(meter.kind === "vane" || volume ? { at } : {}),
      points: curve,
    },
  };
}
