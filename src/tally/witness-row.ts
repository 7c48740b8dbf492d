/** What one operating point says through each witness, before it is laid out for the algebra. */
import type { OperatingPoint } from "../channels/index.ts";
import type { EngineDescription } from "../engine/index.ts";
import { GAS_CONSTANT_DRY_AIR } from "../quantities/index.ts";
import type { Assumptions } from "./assumptions.ts";
import { find } from "./readings.ts";
import type { SensorEnds } from "./sensor-ends.ts";
import type { Bound, PointState, TallyWitness, ThrottleState } from "./tally-model.ts";

/**
 * By what the fuel of a fuel-side witness is known: trims on the metered air; on the engine computer's own breathing table, which
 * nobody knows; on its own air, recorded; the injectors' opening time; or not at all.
 */
export type FuelSource = "meter" | "table" | "own-air" | "pulse" | "nobody";

export type WitnessRow = {
  readonly y: Map<TallyWitness, number>;
  /** shared errors: variance of a primitive and its effect on each witness */
  readonly shared: { readonly variance: number; readonly effect: ReadonlyMap<TallyWitness, number> }[];
  readonly bounds: Omit<Bound, "point" | "witness">[];
  readonly boundWitness: TallyWitness[];
  readonly fuelFrom: Map<TallyWitness, FuelSource>;
};

export type Fuel = { readonly id: TallyWitness; readonly bank: 1 | 2 | null };

export type RowContext = {
  readonly point: OperatingPoint;
  readonly i: number;
  readonly engine: EngineDescription;
  readonly physics: PointState;
  readonly throttle: ThrottleState | null;
  readonly a: Assumptions;
  readonly fuels: readonly Fuel[];
  /** ln of the air by which the engine computer doses each bank */
  readonly dosedBy: Map<TallyWitness, number>;
  readonly row: WitnessRow;
  /** some point of the job is known to be in closed loop */
  readonly loopIsTold: boolean;
  readonly ends: SensorEnds;
};

export function fuelWitnesses(engine: EngineDescription): readonly Fuel[] {
  return engine.banks === 2
    ? [
        { id: "fuel-bank1", bank: 1 },
        { id: "fuel-bank2", bank: 2 },
      ]
    : [{ id: "fuel", bank: null }];
}

/** Which witness the engine computer doses fuel by; null where that is not known or fuel leads (diesel). */
export function dosesBy(engine: EngineDescription): "meter" | "pressure" | null {
  if (engine.metering === "pressure") return "pressure";
  return engine.metering === "meter" || engine.metering === "both" ? "meter" : null;
}

export function effectOn(ids: readonly TallyWitness[], size = 1): ReadonlyMap<TallyWitness, number> {
  return new Map(ids.map((id) => [id, size]));
}

/** Says that the true value of this witness lies on one side of what was read. */
export function addBound({ row }: RowContext, id: TallyWitness, value: number, sign: 1 | -1, variance: number): void {
  row.bounds.push({ value, sign, variance });
  row.boundWitness.push(id);
}

/** kg/s that a volume takes up while its pressure changes: d/dt(p V/R T). */
export function storageRate(point: OperatingPoint, volume: number, temperature: number): number {
  const slope = find(point, "manifoldPressure", null)?.slope ?? 0;
  return (slope * volume) / (GAS_CONSTANT_DRY_AIR * temperature);
}

/** m3 between throttle and valves */
export function manifoldVolume(engine: EngineDescription): number {
  return engine.manifoldVolume ?? 1.5 * engine.displacement;
}
