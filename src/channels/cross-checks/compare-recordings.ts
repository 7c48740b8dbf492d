/**
 * Recordings given as one job must come from one engine: what they state of it, what is fitted to it and how it breathes
 * must not contradict. Before and after a repair breathing may differ; then the reader knows why it is told.
 */
import type { EngineDescription } from "../../engine/index.ts";
import type { Warning } from "../../quantities/index.ts";
import { bestChannel } from "../best-channel.ts";
import type { ChannelSet } from "../channel-set.ts";
import { breathingCells, compareCells } from "./breathing-cells.ts";
import type { StatedEngine } from "./stated-engine.ts";

export type OneRecording = { readonly name: string; readonly set: ChannelSet; readonly stated: StatedEngine };

/** Rounding of a displacement in conversation: 1998 cm3 is a two-litre. */
const SAME_DISPLACEMENT = 0.03;
/** ln, breathing at the same speed and pressure; recirculation moves it by a tenth. Common practice, no source. */
const SAME_BREATHING = 0.18;

export function compareRecordings(recordings: readonly OneRecording[], engine: EngineDescription | null): Warning[] {
  const warnings = recordings.flatMap((recording) => againstEngineFile(recording, engine));
  const [first, ...others] = recordings;
  if (first === undefined) return warnings;
  const against = others.flatMap((other) => [
    ...statements(first, other),
    ...fittings(first, other),
    ...breathing(first, other),
  ]);
  return [...warnings, ...against];
}

const cm3 = (volume: number) => `${Math.round(volume * 1e6)} cm3`;
const differs = (a: number, b: number) => Math.abs(a / b - 1) > SAME_DISPLACEMENT;

function againstEngineFile({ name, stated }: OneRecording, engine: EngineDescription | null): Warning[] {
  if (engine === null) return [];
  const warnings: Warning[] = [];
  if (stated.displacement !== null && differs(stated.displacement, engine.displacement)) {
    const text = `"${name}" states a displacement of ${cm3(stated.displacement)}, the engine file ${cm3(engine.displacement)}.`;
    warnings.push({ code: "engine-contradiction", text });
  }
  const fuel = engine.ignition === "compression" ? "diesel" : "petrol";
  const burnsLiquid = engine.fuel === "petrol" || engine.fuel === "e10" || engine.fuel === "diesel";
  if (stated.fuel !== null && burnsLiquid && stated.fuel !== fuel) {
    warnings.push({ code: "engine-contradiction", text: `"${name}" states ${stated.fuel}, the engine file ${fuel}.` });
  }
  return warnings;
}

function statements(a: OneRecording, b: OneRecording): Warning[] {
  const warnings: Warning[] = [];
  const [volumeA, volumeB] = [a.stated.displacement, b.stated.displacement];
  if (volumeA !== null && volumeB !== null && differs(volumeA, volumeB)) {
    const text = `"${a.name}" states a displacement of ${cm3(volumeA)}, "${b.name}" ${cm3(volumeB)}: not the same engine?`;
    warnings.push({ code: "recordings-contradict", text });
  }
  if (a.stated.fuel !== null && b.stated.fuel !== null && a.stated.fuel !== b.stated.fuel) {
    const text = `"${a.name}" states ${a.stated.fuel}, "${b.name}" ${b.stated.fuel}: not the same engine?`;
    warnings.push({ code: "recordings-contradict", text });
  }
  return warnings;
}

/** Signals of which an engine has one kind only. */
const METER_SIGNALS = ["meterVoltage", "meterFrequency", "meterPeriod", "meterRatio"] as const;

function fittings(a: OneRecording, b: OneRecording): Warning[] {
  const warnings: Warning[] = [];
  const meterOf = ({ set }: OneRecording) => METER_SIGNALS.find((quantity) => bestChannel(set, quantity) !== undefined);
  const [meterA, meterB] = [meterOf(a), meterOf(b)];
  if (meterA !== undefined && meterB !== undefined && meterA !== meterB) {
    const text = `The air meter of "${a.name}" gives ${wordsOf(meterA)}, that of "${b.name}" ${wordsOf(meterB)}: not the same meter?`;
    warnings.push({ code: "recordings-contradict", text });
  }
  const banksOf = ({ set }: OneRecording) => (set.channels.some((channel) => channel.bank === 2) ? 2 : 1);
  const hasTrims = ({ set }: OneRecording) => bestChannel(set, "shortTrim") !== undefined;
  if (hasTrims(a) && hasTrims(b) && banksOf(a) !== banksOf(b)) {
    const [two, one] = banksOf(a) === 2 ? [a, b] : [b, a];
    const text = `"${two.name}" has channels of two banks, "${one.name}" of one.`;
    warnings.push({ code: "recordings-contradict", text });
  }
  return warnings;
}

function wordsOf(signal: (typeof METER_SIGNALS)[number]): string {
  return { meterVoltage: "a voltage", meterFrequency: "a frequency", meterPeriod: "a period", meterRatio: "a ratio" }[
    signal
  ];
}

function breathing(a: OneRecording, b: OneRecording): Warning[] {
  const compared = compareCells(breathingCells(a.set), breathingCells(b.set));
  if (compared === null || Math.abs(compared.logRatio) <= SAME_BREATHING) return [];
  const percent = Math.round((Math.exp(compared.logRatio) - 1) * 100);
  const more = percent > 0 ? `${percent} % more` : `${-percent} % less`;
  const text = `At the same speed and pressure "${b.name}" shows ${more} air than "${a.name}" (${compared.cells} regions compared): another engine, another state of it, or a sensor that changed.`;
  return [{ code: "recordings-contradict", text }];
}
