/**
 * A flow column that was computed from the other columns is no witness. Computed from speed, pressure and temperature it is
 *   flow = const * N p / T                                                          (speed-density, four-stroke: const = eta V / (120 R))
 * so flow T / (N p) is the same in every row to rounding; from the load column flow / (N load) is; and a column that is a
 * fixed multiple of another one tells nothing new. A meter never fits such a formula better than to some per cent.
 */
import { GAS_CONSTANT_DRY_AIR, QUALITY } from "../../quantities/index.ts";

export type Row = { readonly values: Float64Array; readonly quality: Uint8Array };

export type ComputedFrom = {
  /** the constant of the formula, SI */
  readonly constant: number;
  /** rows compared */
  readonly rows: number;
};

/** Two numbers of a formula agree to this, beside the rounding of the flow itself. */
const TOLERANCE = 0.003;
const AGREEING_SHARE = 0.95;
const FEWEST_ROWS = 20;
const GLANCE = 300;
/** Where the formula's own factors hardly vary, a true flow is as constant as a computed one: nothing can be told. */
const LEAST_VARIATION = 0.05;

/** `formula` is the product of the other columns, row by row; NaN where a factor is missing. `step` is the flow's resolution. */
export function isMultipleOf(flow: Float64Array, formula: Float64Array, step: number): ComputedFrom | null {
  // A few hundred rows show what is no multiple; all rows must bear out what looks like one.
  const glance = compare(flow, formula, step, Math.max(1, Math.floor(flow.length / GLANCE)));
  return glance === null || glance.rows === flow.length ? glance : compare(flow, formula, step, 1);
}

function compare(flow: Float64Array, formula: Float64Array, step: number, stride: number): ComputedFrom | null {
  const rows: number[] = [];
  for (let i = 0; i < flow.length; i += stride) if (flow[i]! > 0 && formula[i]! > 0) rows.push(i);
  if (rows.length < FEWEST_ROWS) return null;
  const ratios = rows.map((i) => flow[i]! / formula[i]!).sort((a, b) => a - b);
  const constant = ratios[ratios.length >> 1]!;
  let agreeing = 0;
  let sum = 0;
  let squares = 0;
  for (const i of rows) {
    if (Math.abs(flow[i]! - constant * formula[i]!) <= TOLERANCE * flow[i]! + step) agreeing++;
    const logarithm = Math.log(formula[i]!);
    sum += logarithm;
    squares += logarithm * logarithm;
  }
  const variance = squares / rows.length - (sum / rows.length) ** 2;
  const varied = variance > LEAST_VARIATION ** 2;
  return varied && agreeing >= AGREEING_SHARE * rows.length ? { constant, rows: rows.length } : null;
}

/** Product of columns, each to a power of 1 or -1, row by row. */
export function product(
  factors: readonly { readonly row: Row; readonly power: 1 | -1 }[],
  length: number,
): Float64Array {
  const out = new Float64Array(length).fill(1);
  for (const { row, power } of factors) {
    for (let i = 0; i < length; i++) {
      const value = row.quality[i] === QUALITY.good ? row.values[i]! : Number.NaN;
      out[i] = power === 1 ? out[i]! * value : out[i]! / value;
    }
  }
  return out;
}

/** m3: displacement times volumetric efficiency, from the constant of the speed-density formula (N in 1/s). */
export function effectiveDisplacement(constant: number): number {
  return constant * 2 * GAS_CONSTANT_DRY_AIR;
}
