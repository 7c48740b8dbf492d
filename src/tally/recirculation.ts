/**
 * Recirculated exhaust where it may flow: one smooth map g(N, p) = ln(1 + E/m) that can't be negative.
 *
 * Equation    g(x) = sum_j h_j(x) g_j, h_j bilinear hats on a grid in ln N and ln p; g_j = s_j (L beta)_j >= 0
 * Symbols     E recirculated gas in fresh-air equivalents, kg/s | m fresh air, kg/s | s_j scale believed at node j | L L' smooth
 *             correlation between nodes
 * Why         zero only where the valve is commanded shut (or blocked); elsewhere nobody may assume it shut
 */

import type { OperatingPoint } from "../channels/index.ts";
import type { EngineDescription } from "../engine/index.ts";
import { cholesky } from "../numerics/index.ts";
import type { Assumptions } from "./assumptions.ts";
import { find } from "./readings.ts";
import type { PointState, TallyModel } from "./tally-model.ts";

const NODES = 3; // along each axis
const CORRELATION = 0.5; // between neighbours
const SHUT = 0.02;

export type RecirculationMap = {
  readonly columns: number;
  /** one row a node: the node's value as a linear form of its columns */
  readonly nodes: readonly Float64Array[];
  readonly fill: (i: number, row: Float64Array, offset: number) => void;
  /** whether recirculation may flow at this point */
  readonly open: (i: number) => boolean;
};

export function mayRecirculate(engine: EngineDescription): boolean {
  return engine.egr === "fitted" || (engine.egr === null && engine.ignition === "compression");
}

export function commandedShut(point: OperatingPoint): boolean {
  const command = find(point, "egrCommanded", null) ?? find(point, "egrPosition", null);
  return command !== null && command.high <= SHUT;
}

export function recirculationMap(
  engine: EngineDescription,
  a: Assumptions,
  points: readonly OperatingPoint[],
  physics: PointState,
): RecirculationMap | null {
  if (!mayRecirculate(engine) || points.every(commandedShut)) return null;
  const speedAxis = axis(physics.speed);
  const pressureAxis = axis(physics.pressure);
  const n = NODES * NODES;
  const factor = correlationFactor();
  const nodes: Float64Array[] = [];
  for (let j = 0; j < n; j++) {
    const scale = nodeScale(engine, a, Math.exp(pressureAxis[Math.floor(j / NODES)]!), physics);
    nodes.push(Float64Array.from({ length: n }, (_, c) => (c <= j ? scale * factor[j * n + c]! : 0)));
  }
  const open = (i: number) => !commandedShut(points[i]!);
  return {
    columns: n,
    nodes,
    open,
    fill: (i, row, offset) => {
      if (!open(i)) return;
      const hatsSpeed = hats(speedAxis, Math.log(physics.speed[i]!));
      const hatsPressure = hats(pressureAxis, Math.log(physics.pressure[i]!));
      for (let p = 0; p < NODES; p++) {
        for (let s = 0; s < NODES; s++) {
          const h = hatsPressure[p]! * hatsSpeed[s]!;
          if (h === 0) continue;
          const node = nodes[p * NODES + s]!;
          for (let c = 0; c < n; c++) row[offset + c] = row[offset + c]! + h * node[c]!;
        }
      }
    },
  };
}

/**
 * The same engine with less recirculation than its valve is told to give: the map counts by this share in the manifold pressure. The
 * table of a computer that doses by pressure goes on expecting all of it.
 */
export function narrowRecirculation(model: TallyModel, share: number): TallyModel {
  const { columns, nonNegative, witnesses } = model;
  const pressure = witnesses.indexOf("pressure");
  if (pressure < 0 || nonNegative.length === 0) return model;
  const ofMap = Array.from({ length: columns }, (_, c) => c).filter((c) => nonNegative.some((form) => form[c] !== 0));
  const basis = model.basis.slice();
  for (let i = 0; i < model.points.length; i++) {
    const row = (i * witnesses.length + pressure) * columns;
    for (const c of ofMap) basis[row + c] = share * basis[row + c]!;
  }
  return { ...model, basis };
}

/** A spark engine's valve is usually shut at idle (the lowest pressure) and near atmospheric pressure. */
function nodeScale(engine: EngineDescription, a: Assumptions, pressure: number, physics: PointState): number {
  if (engine.ignition === "compression") return a.egrDiesel;
  const lowest = Math.min(...physics.pressure.filter((p) => p > 0));
  const barometer = physics.barometer[0]!;
  return pressure > 0.9 * barometer || pressure <= 1.02 * lowest ? a.egrSparkShut : a.egrSpark;
}

function axis(values: Float64Array): number[] {
  let low = Infinity;
  let high = -Infinity;
  for (const v of values) {
    if (!(v > 0)) continue;
    low = Math.min(low, Math.log(v));
    high = Math.max(high, Math.log(v));
  }
  if (!(high > low + 0.05)) high = low + 0.05;
  return Array.from({ length: NODES }, (_, i) => low + ((high - low) * i) / (NODES - 1));
}

function hats(knots: readonly number[], x: number): number[] {
  const step = knots[1]! - knots[0]!;
  const inside = Math.min(Math.max(x, knots[0]!), knots[knots.length - 1]!);
  return knots.map((z) => Math.max(0, 1 - Math.abs(inside - z) / step));
}

function correlationFactor(): Float64Array {
  const n = NODES * NODES;
  const c = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const distance = Math.abs((i % NODES) - (j % NODES)) + Math.abs(Math.floor(i / NODES) - Math.floor(j / NODES));
      c[i * n + j] = CORRELATION ** distance;
    }
  }
  if (!cholesky(c, n)) throw new Error("Assertion failed: correlation of the recirculation map");
  return c;
}
