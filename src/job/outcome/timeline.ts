/** A recording over time, thinned for drawing: extremes of each stretch of time are kept, so that no peak is lost. */
import {
  type ChannelSet,
  type OperatingPoint,
  quantityInfo,
  type RecognisedChannel,
  type StateSpan,
} from "../../channels/index.ts";
import { findUnit, fromSi, QUALITY, unit } from "../../quantities/index.ts";
import type { ChannelView, TimelineView } from "../result.ts";
import { round } from "./points.ts";

const BUCKETS = 500;

/** Drawn where recorded, in this order, in these units. */
const DRAWN = [
  ["engineSpeed", "1/min", "rev/min"],
  ["manifoldPressure", "kPa", "kPa"],
  ["meterFlow", "g/s", "g/s"],
  ["meterVoltage", "V", "V"],
  ["throttlePosition", "%", "%"],
  ["shortTrim", "%", "%"],
  ["longTrim", "%", "%"],
  ["lambda", "1", ""],
] as const;

export function timelineView(
  recording: number,
  name: string,
  set: ChannelSet,
  states: readonly StateSpan[],
  points: readonly OperatingPoint[],
): TimelineView {
  const traces = DRAWN.flatMap(([quantity, symbol, shown]) => {
    const channel = set.channels.find((c) => c.quantity === quantity && c.standing === "measured");
    return channel === undefined
      ? []
      : [{ quantity, label: quantityInfo(quantity).name, unit: shown, ...thin(channel, symbol) }];
  });
  return {
    recording,
    name,
    duration_s: round(set.duration),
    traces,
    states: states.map((s) => ({ state: s.state, start_s: round(s.start), end_s: round(s.end) })),
    steady: points
      .filter((p) => p.recording === recording)
      .map((p) => ({ point: p.id, start_s: round(p.start), end_s: round(p.end) })),
  };
}

function thin(channel: RecognisedChannel, symbol: string): { time_s: number[]; values: (number | null)[] } {
  const { times, values, quality } = channel;
  const shown = unit(symbol);
  const time_s: number[] = [];
  const out: (number | null)[] = [];
  const put = (i: number) => {
    time_s.push(round(times[i]!));
    out.push(quality[i] === QUALITY.good ? round(fromSi(values[i]!, shown)) : null);
  };
  const width = Math.max(1, times.length / BUCKETS);
  for (let b = 0; b * width < times.length; b++) {
    const from = Math.floor(b * width);
    const to = Math.min(times.length, Math.floor((b + 1) * width));
    if (to - from <= 2) {
      for (let i = from; i < to; i++) put(i);
      continue;
    }
    let low = -1;
    let high = -1;
    for (let i = from; i < to; i++) {
      if (quality[i] !== QUALITY.good) continue;
      if (low < 0 || values[i]! < values[low]!) low = i;
      if (high < 0 || values[i]! > values[high]!) high = i;
    }
    if (low < 0) put(from);
    else for (const i of [...new Set([Math.min(low, high), Math.max(low, high)])]) put(i);
  }
  return { time_s, values: out };
}

export function channelViews(set: ChannelSet): ChannelView[] {
  const known = set.channels.map((c): ChannelView => {
    const info = quantityInfo(c.quantity);
    const shown = findUnit(c.source.unitUsed) ?? unit(EDGE_UNIT[info.unit] ?? info.unit);
    const { low, high } = extremes(c);
    return {
      column: c.source.column,
      header: c.source.header,
      quantity: c.quantity,
      quantityName: `${info.name}${c.bank === null ? "" : `, bank ${c.bank}`}`,
      unit: c.source.unitUsed,
      standing: c.standing,
      confidence: round(c.confidence),
      reasons: c.standingReason === null ? c.reasons : [...c.reasons, c.standingReason],
      interval_s: Number.isFinite(c.pollInterval) ? round(c.pollInterval) : null,
      low: low === null ? null : round(fromSi(low, shown)),
      high: high === null ? null : round(fromSi(high, shown)),
    };
  });
  const unknown = set.unrecognised.map(
    (u): ChannelView => ({
      column: u.column,
      header: u.header,
      quantity: null,
      quantityName: null,
      unit: u.unitText,
      standing: "not recognised",
      confidence: u.candidates[0]?.confidence ?? 0,
      reasons: [u.reason],
      interval_s: null,
      low: null,
      high: null,
    }),
  );
  return [...known, ...unknown].sort((a, b) => a.column - b.column);
}

/** What people read instead of the SI unit. */
export const EDGE_UNIT: { readonly [si: string]: string } = {
  Pa: "kPa",
  K: "degC",
  "kg/s": "g/s",
  "m3/s": "L/s",
  "m/s": "km/h",
  rad: "deg",
  kg: "mg",
  s: "s",
  "1": "1",
  V: "V",
  A: "A",
  "1/s": "Hz",
};

function extremes(channel: RecognisedChannel): { low: number | null; high: number | null } {
  let low: number | null = null;
  let high: number | null = null;
  for (let i = 0; i < channel.values.length; i++) {
    if (channel.quality[i] !== QUALITY.good) continue;
    const v = channel.values[i]!;
    low = low === null ? v : Math.min(low, v);
    high = high === null ? v : Math.max(high, v);
  }
  return { low, high };
}
