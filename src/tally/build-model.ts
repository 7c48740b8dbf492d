/** Lays operating points, engine and assumptions out as a TallyModel. */
import type { OperatingData } from "../channels/index.ts";
import type { EngineDescription } from "../engine/index.ts";
import type { Assumptions } from "./assumptions.ts";
import { discrepancies } from "./discrepancies.ts";
import { layBasis } from "./lay-basis.ts";
import { layRows } from "./lay-rows.ts";
import { setPressureAside } from "./least-recirculation.ts";
import { meterSlots } from "./meter-slots.ts";
import { pointPhysics } from "./point-physics.ts";
import { recirculationMap } from "./recirculation.ts";
import { standingObservations } from "./standing-observations.ts";
import type { TallyModel, TallyWitness } from "./tally-model.ts";
import { throttleState } from "./throttle-state.ts";
import { unknownsOf } from "./unknowns.ts";
import { fuelWitnesses } from "./witness-row.ts";
import { witnessRows } from "./witness-rows.ts";

export function buildTallyModel(data: OperatingData, engine: EngineDescription, assumptions: Assumptions): TallyModel {
  const { points } = data;
  const slots = meterSlots(engine);
  const state = pointPhysics(engine, data, slots, assumptions);
  const throttle = throttleState(engine, points, state, assumptions);
  const rows = witnessRows(points, engine, slots, state, throttle, assumptions);
  const pressureAir = Float64Array.from(rows, (row) => Math.exp(row.y.get("pressure") ?? Number.NaN));
  const physics = { ...state, pressureAir, throttle };
  setPressureAside(engine, points, rows);
  const fuels = fuelWitnesses(engine).map((f) => f.id);
  const order: TallyWitness[] = ["meter", "meter-2", "pressure", "throttle", ...fuels, "exhaust"];
  const witnesses = order.filter((id) => rows.some((row) => row.y.has(id) || row.boundWitness.includes(id)));
  const fuelFrom = (i: number, w: TallyWitness) => rows[i]?.fuelFrom.get(w);
  const unknowns = unknownsOf({ engine, a: assumptions, points, physics, visited: physics, fuelFrom }, witnesses);
  const map = recirculationMap(engine, assumptions, points, physics);
  // Healthy recirculation is in the manifold pressure, and in the table of a computer that doses by it.
  const recirculates = (w: TallyWitness, i: number) => w === "pressure" || fuelFrom(i, w) === "table";
  const regionNames = [...new Set(points.map((p) => p.region))];

  const scatter = (i: number) =>
    engine.ignition === "compression" && map?.open(i) === true ? assumptions.egrScatter ** 2 : 0;
  const basis = layBasis(points.length, witnesses, unknowns, map, recirculates);
  const offset = basis.unknowns.find((u) => u.name === "pressure sensor offset")?.from ?? null;
  return {
    engine,
    assumptions,
    points,
    witnesses,
    ...layRows(rows, witnesses, assumptions.pointNoise, scatter),
    ...discrepancies(witnesses, assumptions),
    region: Int32Array.from(points, (p) => regionNames.indexOf(p.region)),
    regions: regionNames.length,
    ...basis,
    standing: standingObservations(data, engine, slots, witnesses, state, assumptions, basis.columns, offset),
    physics,
  };
}
