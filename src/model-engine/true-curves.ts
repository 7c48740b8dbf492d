/** What was true of an engine as it ran: the curve of its meter and the breathing of its cylinders, planted faults included. */
import { efficiencyAt } from "./breathing.ts";
import { CALIBRATION_DENSITY } from "./meter-law.ts";
import { printedCurve, signalAt } from "./meter-response.ts";
import { timingShare } from "./planted-laws.ts";
import type { PreparedEngine } from "./prepared-engine.ts";

/** The signal that a flow really gives, kg/s in the air of calibration, at the flows the maker prints; steady, no pulsation. */
export function trueMeterCurve(e: PreparedEngine): readonly { readonly signal: number; readonly massFlow: number }[] {
  const { meter } = e;
  if (meter === null) return [];
  return printedCurve(meter.design, 25)
    .filter(([, massFlow]) => massFlow > 0)
    .map(([, massFlow]) => ({ signal: signalAt(meter, massFlow, CALIBRATION_DENSITY), massFlow }));
}

export type BreathingPoint = { readonly speed: number; readonly pressure: number; readonly efficiency: number };

/** Volumetric efficiency where exhaust and manifold pressure are equal; what grows with flow (breathing-reduced) left out. */
export function trueBreathing(e: PreparedEngine): readonly BreathingPoint[] {
  const speeds = e.design.breathing.map(([speed]) => speed).filter((speed) => speed <= e.design.largestSpeed);
  const boost = e.design.charger?.largestRatio ?? 1;
  return speeds.flatMap((speed) =>
    [30e3, 50e3, 70e3, 100e3, 100e3 * boost]
      .filter((pressure, i, all) => all.indexOf(pressure) === i)
      .map((pressure) => ({
        speed,
        pressure,
        efficiency:
          efficiencyAt(e.breathing, speed, pressure) *
          timingShare(e.faults.valveTimingLate, speed, e.design.largestSpeed),
      })),
  );
}
