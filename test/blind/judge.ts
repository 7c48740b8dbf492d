/** Holds what was recognised against what the author of the set expects: right, asked (left to the user) or wrong. */
import { type ChannelSet, type RecognisedChannel, recogniseChannels } from "../../src/channels/index.ts";
import { describeFailure, QUALITY } from "../../src/quantities/index.ts";
import { type Recording, readRecording } from "../../src/recording/index.ts";

export type Understood = { readonly recording: Recording; readonly set: ChannelSet };

/** A refusal is a string: the reason, in words. */
export function understand(bytes: Uint8Array, name: string): Understood | string {
  const recording = readRecording(bytes, { name });
  if (!recording.ok) return describeFailure(recording);
  const set = recogniseChannels(recording.value, { engine: null, pins: null });
  return set.ok ? { recording: recording.value, set: set.value } : describeFailure(set);
}

/** A lone bank 1 may be told as the only bank; a bank 2 never, nor one bank as the other. */
export function sameBank(channel: RecognisedChannel, expected: 1 | 2 | null, set: ChannelSet): boolean {
  if (channel.bank === expected) return true;
  return expected === 1 && channel.bank === null && !set.channels.some((other) => other.bank === 2);
}

export function firstAndLast(channel: RecognisedChannel): { readonly first: number; readonly last: number } {
  const good = [...channel.values].filter((_, i) => channel.quality[i] === QUALITY.good);
  return { first: good[0] ?? Number.NaN, last: good.at(-1) ?? Number.NaN };
}

/** `expected` zero needs an absolute scale: it is judged against 1 in the quantity's unit. */
export function near(value: number, expected: number, tolerance: number): boolean {
  return Math.abs(value - expected) <= tolerance * (expected === 0 ? 1 : Math.abs(expected));
}

export function tell(channel: RecognisedChannel): string {
  const bank = channel.bank === null ? "" : ` bank ${channel.bank}`;
  return `${channel.quantity}${bank} (${channel.source.unitUsed}, confidence ${channel.confidence.toFixed(2)})`;
}
