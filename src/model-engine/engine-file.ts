/** The engine file of a model engine: what its owner could know, in the words and units of the file ("airtally-engine/1"). */
import { formatQuantity } from "../quantities/index.ts";
import type { EngineDesign } from "./engine-design.ts";
import { printedCurve } from "./hot-wire-meter.ts";

export type EngineFileObject = { readonly [key: string]: unknown };

export function engineFileOf(design: EngineDesign): EngineFileObject {
  const { intake, injectors, manifoldSensor, meter, computer } = design;
  const spark = design.ignition === "spark";
  return {
    format: "airtally-engine/1",
    note: design.note,
    displacement: formatQuantity(design.displacement, "cm3", 5),
    cylinders: design.cylinders,
    strokes: 4,
    banks: 1,
    compressionRatio: design.compressionRatio,
    valveTiming: "fixed",
    fuel: design.fuel,
    ignition: design.ignition,
    induction: design.charger === null ? "natural" : "boosted",
    injection: design.injection,
    metering: computer.dosedBy,
    meters:
      meter === null
        ? []
        : [
            {
              id: "meter",
              kind: meter.kind,
              bore: formatQuantity(meter.bore, "mm", 4),
              reference: formatQuantity(meter.reference, "V", 3),
              curve: {
                signalUnit: "V",
                flowUnit: "g/s",
                points: printedCurve(meter, 25).map(([volts, flow]) => [volts, Number((flow * 1e3).toPrecision(5))]),
              },
            },
          ],
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
            pressureReference: "manifold",
            pulsesPerCycle: 1,
          },
          trimLimits: formatQuantity(computer.trimLimit, "%", 3),
          trims: "multiplied",
          purge: "fitted",
        }
      : {}),
    lambdaProbe: design.lambdaProbe,
    independentProbe: "none",
    egr: design.egrValveArea === null ? "none" : "fitted",
    ...(design.egrValveArea === null ? {} : { egrControl: "meter" }),
    secondaryAir: "none",
    intakeTemperatureAt: design.intakeTemperatureAt,
    manifoldVolume: formatQuantity(intake.manifoldVolume, "L", 3),
    chargeVolume: formatQuantity(intake.chargeVolume, "L", 3),
    throttleBore: formatQuantity(intake.throttleBore, "mm", 4),
  };
}
