/** The forms an unknown can take: one number, or a smooth function along something, as columns of the basis. */
import type { OperatingPoint } from "../channels/index.ts";
import type { EngineDescription } from "../engine/index.ts";
import type { Assumptions } from "./assumptions.ts";
import { smoothFunction } from "./smooth-function.ts";
import type { PointPhysics, TallyWitness } from "./tally-model.ts";
import type { FuelSource } from "./witness-row.ts";

/** Writes the effect of one unknown on one witness at one point into `row` from `offset` on. */
export type Unknown = {
  readonly name: string;
  readonly columns: number;
  readonly fill: (i: number, witness: TallyWitness, row: Float64Array, offset: number) => void;
};

export type UnknownContext = {
  readonly engine: EngineDescription;
  readonly a: Assumptions;
  readonly points: readonly OperatingPoint[];
  readonly physics: PointPhysics;
  /** the states over which the knots of smooth functions are laid: those of the job, also where others are asked for */
  readonly visited: PointPhysics;
  /** by what the fuel of a fuel-side witness is known at a point; left out: as the engine file says it is dosed */
  readonly fuelFrom?: (i: number, w: TallyWitness) => FuelSource | undefined;
};

type On = (w: TallyWitness, i: number) => boolean;

export const isFuelSide = (w: TallyWitness): boolean => w.startsWith("fuel") || w === "exhaust";
export const isMeter = (w: TallyWitness): boolean => w.startsWith("meter");

export function single(name: string, effect: (i: number, w: TallyWitness) => number): Unknown {
  return { name, columns: 1, fill: (i, w, row, offset) => (row[offset] = row[offset]! + effect(i, w)) };
}

/** Along the logarithm of `values`, knots laid over `visited`. */
export function smoothOver(
  name: string,
  values: Float64Array,
  visited: Float64Array,
  { amplitude, length }: { readonly amplitude: number; readonly length: number },
  on: On,
): Unknown {
  const f = smoothFunction({ amplitude, lengths: [length], spans: [span(visited)] });
  return {
    name,
    columns: f.columns,
    fill: (i, w, row, offset) => {
      if (on(w, i) && values[i]! > 0) f.row([Math.log(values[i]!)], row, offset, 1);
    },
  };
}

export function alongFlow(
  { physics, visited }: UnknownContext,
  name: string,
  amplitude: number,
  length: number,
  on: On,
): Unknown {
  return smoothOver(name, physics.air, visited.air, { amplitude, length }, on);
}

export function overSpeedAndPressure(context: UnknownContext, name: string, amplitude: number, on: On): Unknown {
  const { a, physics, visited } = context;
  const f = smoothFunction({
    amplitude,
    lengths: [a.breathingLengthSpeed, a.breathingLengthPressure],
    spans: [span(visited.speed), span(visited.pressure)],
  });
  return {
    name,
    columns: f.columns,
    fill: (i, w, row, offset) => {
      if (on(w, i)) f.row([Math.log(physics.speed[i]!), Math.log(physics.pressure[i]!)], row, offset, 1);
    },
  };
}

function span(values: Float64Array): readonly [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (const v of values) {
    if (!(v > 0)) continue;
    low = Math.min(low, Math.log(v));
    high = Math.max(high, Math.log(v));
  }
  return low <= high ? [low, high] : [0, 1];
}
