/** A curve as the engine file takes it: few enough points to be read, near enough to the law. */
import type { FlowCurve } from "../../meters/index.ts";
import { tabulateCurve } from "../../meters/index.ts";
import { fromSi, type Result, success, unit } from "../../quantities/index.ts";
import { round } from "../outcome/points.ts";
import type { CurveSheet } from "./result/meter-result-schema.ts";
import { shownSignal } from "./signals.ts";

/** of the largest flow: below what any meter's curve is known to */
const TOLERANCE = 1e-3;

export function engineFileCurve(curve: FlowCurve): Result<CurveSheet["engineFileCurve"], "not-monotone"> {
  const table = tabulateCurve(curve, TOLERANCE);
  if (!table.ok) return table;
  const flowUnit = flowUnitOf(curve.flow);
  const { at, signalUnit } = curve;
  return success({
    signalUnit,
    flowUnit,
    ...(at === null
      ? {}
      : {
          at: {
            pressure: `${round(at.pressure / 1000)} kPa`,
            temperature: `${round(fromSi(at.temperature, unit("degC")))} degC`,
          },
        }),
    points: table.value.curve.points.map(
      ([signal, flow]) => [round(shownSignal(signalUnit, signal)), round(shownFlow(curve.flow, flow))] as const,
    ),
  });
}

export function flowUnitOf(flow: "mass" | "volume"): "g/s" | "L/s" {
  return flow === "mass" ? "g/s" : "L/s";
}

/** kg/s to g/s, m3/s to L/s */
export function shownFlow(flow: "mass" | "volume", value: number): number {
  return fromSi(value, unit(flowUnitOf(flow)));
}
