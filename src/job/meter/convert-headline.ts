/** What a conversion comes to, in a sentence. */
import { figure } from "../outcome/words.ts";
import type { MeterSource } from "./read-source.ts";
import type { MeterConversion } from "./result/meter-result-schema.ts";
import { tellSignal } from "./signals.ts";

type Row = MeterConversion["signals"][number];

export function convertHeadline(source: MeterSource, signals: readonly Row[], flows: readonly Row[]): string {
  const [one, back] = [signals[0], flows[0]];
  if (one !== undefined && signals.length === 1 && back === undefined) return oneSignal(source, one);
  if (back !== undefined && flows.length === 1 && one === undefined) return oneFlow(source, back);
  const found = signals.flatMap((row) => row.massFlow_g_per_s ?? []);
  const range = found.length === 0 ? "" : ` (${figure(Math.min(...found))} to ${figure(Math.max(...found))} g/s)`;
  const parts = [
    signals.length > 0 ? `${counted(signals.length, "signal")} to air mass${range}` : null,
    flows.length > 0 ? `${counted(flows.length, "flow")} back to signals` : null,
  ];
  return `${parts.filter((part) => part !== null).join(", ")}.`;
}

function oneSignal(source: MeterSource, row: Row): string {
  const signal = tellRow(source, row);
  if (row.massFlow_g_per_s === null) return `${signal} has no flow on this curve.`;
  const interval =
    row.low90_g_per_s === null || row.high90_g_per_s === null
      ? ""
      : ` (${figure(row.low90_g_per_s)} to ${figure(row.high90_g_per_s)} at 90 %)`;
  return `${signal} is ${figure(row.massFlow_g_per_s)} g/s of air${interval}.`;
}

function oneFlow(source: MeterSource, row: Row): string {
  const flow = `${figure(row.massFlow_g_per_s ?? 0)} g/s`;
  if (row.signal === null) return `No signal of this meter stands for ${flow}.`;
  return `${flow} of air gives ${tellRow(source, row)}.`;
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? "" : "s"}`;
}

function tellRow(source: MeterSource, row: Row): string {
  const { signalUnit } = source.meter;
  const si = (row.signal ?? Number.NaN) * (signalUnit === "ms" ? 1e-3 : 1);
  return tellSignal(signalUnit, si);
}
