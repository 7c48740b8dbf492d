/** Air a cycle over pressure, by region of speed and pressure: comparable between recordings without knowing the engine. */
import { bestChannel } from "../best-channel.ts";
import type { ChannelSet } from "../channel-set.ts";
import { heldAt } from "../held-track.ts";

/** Region -> median of ln(flow T / (speed pressure)). */
export type Cells = ReadonlyMap<string, number>;

const RUNNING = 400 / 60; // 1/s
const USUAL_TEMPERATURE = 310; // K
/** ln, size of a region in speed and in pressure */
const CELL = 0.15;
const FEWEST_SAMPLES = 5;
const FEWEST_CELLS = 3;

export function breathingCells(set: Pick<ChannelSet, "channels">): Cells {
  const flow = bestChannel(set, "meterFlow");
  const speed = bestChannel(set, "engineSpeed");
  const pressure = bestChannel(set, "manifoldPressure");
  if (flow === undefined || flow.standing !== "measured" || speed === undefined || pressure === undefined)
    return new Map();
  const temperature = bestChannel(set, "intakeTemperature");
  const n = heldAt(speed, flow.times);
  const p = heldAt(pressure, flow.times);
  const t = temperature === undefined ? null : heldAt(temperature, flow.times);
  const samples = new Map<string, number[]>();
  for (let i = 0; i < flow.values.length; i++) {
    if (flow.quality[i] !== 0 || !(n[i]! > RUNNING) || !(p[i]! > 0) || !(flow.values[i]! > 0)) continue;
    const kelvin = t === null || Number.isNaN(t[i]!) ? USUAL_TEMPERATURE : t[i]!;
    const region = `${Math.round(Math.log(n[i]!) / CELL)}/${Math.round(Math.log(p[i]!) / CELL)}`;
    const list = samples.get(region) ?? [];
    list.push(Math.log((flow.values[i]! * kelvin) / (n[i]! * p[i]!)));
    samples.set(region, list);
  }
  const cells = new Map<string, number>();
  for (const [region, list] of samples) if (list.length >= FEWEST_SAMPLES) cells.set(region, median(list));
  return cells;
}

/** Median of ln(second / first) over the regions both visited; null where they share too few. */
export function compareCells(first: Cells, second: Cells): { logRatio: number; cells: number } | null {
  const ratios = [...first].flatMap(([region, value]) => {
    const other = second.get(region);
    return other === undefined ? [] : [other - value];
  });
  return ratios.length < FEWEST_CELLS ? null : { logRatio: median(ratios), cells: ratios.length };
}

function median(values: number[]): number {
  return values.sort((a, b) => a - b)[values.length >> 1]!;
}
