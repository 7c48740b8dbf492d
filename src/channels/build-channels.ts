/** Columns that were assigned into channels: real readings only, in SI, each on its own time stamps. */
import { QUALITY } from "../quantities/index.ts";
import type { RawColumn, TimeBase } from "../recording/index.ts";
import type { Assignment } from "./assign-columns.ts";
import type { RecognisedChannel } from "./channel-set.ts";
import { findPolling } from "./polling/find-polling.ts";
import { filledRows, realReadings } from "./polling/real-readings.ts";
import { quantityInfo } from "./quantity-id.ts";
import { allInSi } from "./recognition/si-scale.ts";
import { smallestStep } from "./recognition/summary.ts";
import { markImpossible } from "./standing/impossible-samples.ts";

const INTERVALS_SAMPLED = 1_000;

export type BuiltChannel = { readonly channel: RecognisedChannel; readonly assignment: Assignment };

export function buildChannels(
  assignments: readonly Assignment[],
  columns: readonly RawColumn[],
  base: TimeBase,
): BuiltChannel[] {
  const numeric = columns.filter((column) => column.form === "number");
  const polling = findPolling(numeric);
  const instances = instanceNumbers(assignments);
  return assignments.map((assignment, i) => {
    const at = numeric.indexOf(assignment.column);
    const { period, changes } = polling[at] ?? { period: null, changes: [] };
    const rows = period === null ? null : realReadings(assignment.column, changes, period);
    return { assignment, channel: build(assignment, rows, period, instances[i]!, base) };
  });
}

/** 1 for the surest channel of its quantity and bank, then in the order of certainty. */
function instanceNumbers(assignments: readonly Assignment[]): number[] {
  return assignments.map((own, i) => {
    const rivals = assignments.filter((other) => other.quantity === own.quantity && other.bank === own.bank);
    const surer = rivals.filter(
      (other) =>
        other.confidence > own.confidence || (other.confidence === own.confidence && assignments.indexOf(other) < i),
    );
    return surer.length + 1;
  });
}

function build(
  assignment: Assignment,
  polledRows: Uint32Array | null,
  period: number | null,
  instance: number,
  base: TimeBase,
): RecognisedChannel {
  const { column, quantity, bank, conversion } = assignment;
  const rows = polledRows ?? filledRows(column);
  const times = rows === null ? base.seconds.slice() : Float64Array.from(rows, (row) => base.seconds[row]!);
  const values = allInSi(conversion.scale, column.values, rows);
  const quality = new Uint8Array(values.length);
  for (let i = 0; i < values.length; i++) {
    if (Number.isFinite(values[i]!)) continue;
    values[i] = Number.NaN;
    quality[i] = QUALITY.notANumber;
  }
  markImpossible(quantity, times, values, quality);
  const pollInterval = rows === null ? base.interval : medianInterval(times, base.interval);
  const polled =
    period === null
      ? []
      : [`read every ${Number((period * base.interval).toPrecision(3))} s; rows between repeat the last value`];
  return {
    name: column.headerText,
    unit: quantityInfo(quantity).unit,
    times,
    values,
    quality,
    quantity,
    bank,
    instance,
    source: {
      column: column.position,
      header: column.headerText,
      unitText: column.unitText,
      unitUsed: conversion.unitUsed,
    },
    resolution: resolutionOf(assignment),
    pollInterval,
    timeSkew: (base.interval + base.resolution) / 2,
    confidence: assignment.confidence,
    reasons: [...assignment.reasons, ...polled],
    standing: "measured",
    standingReason: null,
  };
}

/** Smallest step between the values of the sample, in SI. */
function resolutionOf({ summary, conversion }: Assignment): number | null {
  return smallestStep(allInSi(conversion.scale, summary.sorted, null).sort());
}

/** s, median time between readings, from a sample of them. */
function medianInterval(times: Float64Array, otherwise: number): number {
  if (times.length < 2) return otherwise;
  const stride = Math.max(1, Math.floor(times.length / INTERVALS_SAMPLED));
  const steps: number[] = [];
  for (let i = 1; i < times.length; i += stride) steps.push(times[i]! - times[i - 1]!);
  return steps.sort((a, b) => a - b)[steps.length >> 1]!;
}
