/**
 * The rows of a job's basis for functions of its unknowns in any state of the engine, also where the job never went.
 *
 * Equation    f(x) = row(x) beta + left(x),  var left = s^2 - |row(x)|^2 for each smooth part of amplitude s
 * Why         few columns can't carry the function beyond the states they were laid for: what they lack is independent noise,
 *             so that nothing is claimed there
 * Source      [rasmussen2006] 8.3.2 (fully independent conditional)
 */
import type { AssumptionKey } from "../assumptions.ts";
import type { PointPhysics, TallyModel } from "../tally-model.ts";
import { breathingLevelSd, unknownsOf } from "../unknowns.ts";
import { type FunctionState, type ReferenceQuantity, witnessOf } from "./reference-quantities.ts";
import { SPREADS } from "./spreads.ts";

export type FunctionRow = { readonly row: Float64Array; readonly left: number };

export type Told = { readonly quantity: ReferenceQuantity; readonly state: FunctionState };

export function functionRows(model: TallyModel, told: readonly Told[]): FunctionRow[] {
  const k = model.points.length;
  const states = told.map((t) => t.state);
  const unknowns = unknownsOf(
    {
      engine: model.engine,
      a: model.assumptions,
      points: [...model.points, ...states.map(() => ({ ...NOWHERE }))],
      physics: withStates(model.physics, states),
      visited: model.physics,
    },
    model.witnesses,
  );
  return told.map(({ quantity }, n) => {
    const row = new Float64Array(model.columns);
    let left = 0;
    for (const name of quantity.unknowns) {
      const placed = model.unknowns.find((u) => u.name === name);
      const unknown = unknowns.find((u) => u.name === name);
      if (placed === undefined || unknown === undefined)
        throw new Error(`Assertion failed: the job has no unknown "${name}"`);
      unknown.fill(k + n, witnessOf(model, quantity), row, placed.from);
      if (placed.columns === 1) continue;
      const own = row.subarray(placed.from, placed.from + placed.columns);
      left += Math.max(0, believedSd(model, name) ** 2 - own.reduce((sum, v) => sum + v * v, 0));
    }
    return { row: row.map((v) => quantity.sign * v), left };
  });
}

/** sd believed of an unknown before looking, in the unit of its assumption. */
export function believedSd(model: TallyModel, unknown: string): number {
  if (unknown === "breathing level") return breathingLevelSd(model.engine, model.assumptions);
  const key = SPREADS.get(unknown)?.of;
  if (key === undefined) throw new Error(`Assertion failed: no assumption is the spread of "${unknown}"`);
  return model.assumptions[key as AssumptionKey];
}

const NOWHERE = { id: 0, recording: 0, start: 0, end: 0, states: [], region: "", readings: new Map() } as const;

/** The physical state of the points, and of the states asked for behind them. */
function withStates(physics: PointPhysics, states: readonly FunctionState[]): PointPhysics {
  const longer = (values: Float64Array, more: (s: FunctionState) => number) =>
    Float64Array.from([...values, ...states.map(more)]);
  return {
    ...physics,
    speed: longer(physics.speed, (s) => s.speed),
    pressure: longer(physics.pressure, (s) => s.pressure),
    air: longer(physics.air, (s) => s.air),
    intakeTemperature: longer(physics.intakeTemperature, (s) => s.intakeTemperature),
    exhaustPressure: longer(physics.exhaustPressure, (s) => s.exhaustPressure),
    effectivePulse: longer(physics.effectivePulse, (s) => s.effectivePulse),
    barometer: longer(physics.barometer, (s) => s.exhaustPressure),
  };
}
