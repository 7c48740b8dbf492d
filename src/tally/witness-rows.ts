/**
 * The logarithm of every witness at one operating point, and the errors that shared primitive readings give them.
 *
 * Equation    R = sum over primitives var(z) J J'
 * Source      design of the tally; each witness in a file of its own (meter-row, pressure-row, throttle-row, fuel-row)
 */
import type { OperatingPoint } from "../channels/index.ts";
import type { EngineDescription } from "../engine/index.ts";
import type { Assumptions } from "./assumptions.ts";
import { addFuelSide } from "./fuel-row.ts";
import { addMeter } from "./meter-row.ts";
import type { MeterSlot } from "./meter-slots.ts";
import { addPressure } from "./pressure-row.ts";
import { sensorEnds } from "./sensor-ends.ts";
import type { PointState, ThrottleState } from "./tally-model.ts";
import { addThrottle } from "./throttle-row.ts";
import { fuelWitnesses, type RowContext, type WitnessRow } from "./witness-row.ts";

export function witnessRows(
  points: readonly OperatingPoint[],
  engine: EngineDescription,
  slots: readonly MeterSlot[],
  physics: PointState,
  throttle: ThrottleState | null,
  a: Assumptions,
): WitnessRow[] {
  const loopIsTold = points.some((p) => p.states.includes("closed-loop"));
  const fuels = fuelWitnesses(engine);
  const ends = sensorEnds(engine, slots, points);
  return points.map((point, i) => {
    const row: WitnessRow = { y: new Map(), shared: [], bounds: [], boundWitness: [], fuelFrom: new Map() };
    const context: RowContext = {
      point,
      i,
      engine,
      physics,
      throttle,
      a,
      fuels,
      dosedBy: new Map(),
      row,
      loopIsTold,
      ends,
    };
    slots.forEach((slot, n) => {
      addMeter(context, slot, ends.meterStopped[n]!(point));
    });
    addPressure(context);
    addThrottle(context);
    addFuelSide(context);
    return row;
  });
}
