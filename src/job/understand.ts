/** One recording from bytes to channels, states and the warnings met on the way. */
import { type ChannelList, type ChannelSet, findStates, recogniseChannels, type StateSpan } from "../channels/index.ts";
import type { EngineDescription } from "../engine/index.ts";
import { type Result, success, type Warning } from "../quantities/index.ts";
import { readRecording } from "../recording/index.ts";

/** A recording as an edge hands it in: bytes and their digest. Nothing here changes or keeps them. */
export type RecordingInput = {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly sha256: string;
  readonly rate?: number;
};

export type Understood = {
  readonly set: ChannelSet;
  readonly states: readonly StateSpan[];
  readonly warnings: readonly Warning[];
};

export function understand(
  input: RecordingInput,
  engine: EngineDescription | null,
  pins: ChannelList | null,
): Result<Understood> {
  const recording = readRecording(
    input.bytes,
    input.rate === undefined ? { name: input.name } : { name: input.name, rate: input.rate },
  );
  if (!recording.ok) return recording;
  const set = recogniseChannels(recording.value, { engine, pins });
  if (!set.ok) return set.where?.file === undefined ? { ...set, where: { ...set.where, file: input.name } } : set;
  return success({
    set: set.value,
    states: findStates(set.value),
    warnings: [...recording.value.warnings, ...set.value.warnings],
  });
}
