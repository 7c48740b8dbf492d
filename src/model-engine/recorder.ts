/**
 * Recorders: what a tester makes of the trace. A polled one asks for one channel after the other and rounds to SAE J1979 steps;
 * a workshop logger samples all channels at once. Both add their noise; the truth stays in the trace.
 */

import type { SeededRandom } from "../numerics/index.ts";
import { fromSi } from "../quantities/index.ts";
import { type Blemishes, blemish } from "./blemishes.ts";
import { type RecorderChannel, type RecorderChannelId, recorderChannel } from "./recorder-channel-table.ts";
import { type TableStyle, writeTable } from "./table-text.ts";
import type { Trace } from "./trace.ts";

export type Recorder = {
  readonly channels: readonly RecorderChannelId[];
  readonly style: TableStyle;
  /** readings lost or stuck on the way; none where not given */
  readonly blemishes?: Blemishes;
} & (
  | {
      readonly kind: "polled";
      /** s for one request and its answer, and the standard deviation of it */
      readonly requestTime: number;
      readonly jitter: number;
      /** a row for each reading or for each round, the rest of the row repeated or left empty */
      readonly rows: "each-reading" | "each-round" | "sparse";
    }
  | { readonly kind: "logger"; readonly rate: number }
);

export function recordText(trace: Trace, recorder: Recorder, random: SeededRandom): string {
  const channels = recorder.channels.map(recorderChannel);
  const rows = recorder.kind === "polled" ? polledRows(trace, recorder, random) : loggerRows(trace, recorder, random);
  const kept = recorder.blemishes === undefined ? rows : blemish(rows, recorder.blemishes, random.fork("blemishes"));
  return writeTable(channels, kept, recorder.style, recorder.kind === "logger" ? "loggerStep" : "step");
}

/** Time in s, then one value a channel; NaN where the cell is empty. */
export type Row = Float64Array;

function polledRows(trace: Trace, recorder: Extract<Recorder, { kind: "polled" }>, random: SeededRandom): Row[] {
  const channels = recorder.channels.map(recorderChannel);
  const end = (trace.rows - 1) * trace.step;
  const rows: Row[] = [];
  const last = new Float64Array(channels.length + 1).fill(Number.NaN);
  let time = 0;
  while (time <= end) {
    const roundStart = time;
    for (let i = 0; i < channels.length && time <= end; i++) {
      const value = reading(trace, channels[i]!, "step", time, random);
      if (recorder.rows === "sparse") last.fill(Number.NaN);
      last[0] = time;
      last[i + 1] = value;
      if (recorder.rows !== "each-round") rows.push(last.slice());
      time += Math.max(0.2 * recorder.requestTime, recorder.requestTime + recorder.jitter * random.normal());
    }
    if (recorder.rows === "each-round") {
      last[0] = roundStart;
      rows.push(last.slice());
    }
  }
  return rows;
}

function loggerRows(trace: Trace, recorder: Extract<Recorder, { kind: "logger" }>, random: SeededRandom): Row[] {
  const channels = recorder.channels.map(recorderChannel);
  const count = Math.floor((trace.rows - 1) * trace.step * recorder.rate + 1e-9) + 1;
  return Array.from({ length: count }, (_, k) => {
    const time = k / recorder.rate;
    const row = new Float64Array(channels.length + 1);
    row[0] = time;
    for (let i = 0; i < channels.length; i++) row[i + 1] = reading(trace, channels[i]!, "loggerStep", time, random);
    return row;
  });
}

function reading(
  trace: Trace,
  channel: RecorderChannel,
  resolution: "step" | "loggerStep",
  time: number,
  random: SeededRandom,
): number {
  const column = trace[channel.column];
  const si = resolution === "step" ? at(column, trace, time) : betweenRows(channel, column, trace, time);
  const clean = channel.conversion === null ? si : fromSi(si, channel.conversion);
  const spread = channel.noise + channel.relativeNoise * Math.abs(clean);
  // An exact zero is a counter at rest or a pulse that was not given: it has no noise.
  const noisy = spread === 0 || clean === 0 ? clean : clean + spread * random.normal();
  return quantise(noisy, channel[resolution], channel.low, channel.high);
}

function at(column: Float64Array, trace: Trace, time: number): number {
  return column[Math.min(trace.rows - 1, Math.round(time / trace.step))]!;
}

/** A logger may be faster than the rows: straight between them, but a state of the loop is one or the other. */
function betweenRows(channel: RecorderChannel, column: Float64Array, trace: Trace, time: number): number {
  const row = Math.min(trace.rows - 1, Math.floor(time / trace.step + 1e-9));
  const share = time / trace.step - row;
  if (channel.column === "loopState" || share < 1e-6 || row === trace.rows - 1) return at(column, trace, time);
  return column[row]! + share * (column[row + 1]! - column[row]!);
}

/** Nearest step inside the range. */
export function quantise(value: number, step: number, low: number, high: number): number {
  const stepped = Math.round(value / step) * step;
  return Math.min(Math.max(stepped, low), high);
}
