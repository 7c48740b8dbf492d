/** One recording from bytes to channels, states and the warnings met on the way. */
import {
  type ChannelList,
  type ChannelSet,
  findStates,
  recogniseChannels,
  type StatedEngine,
  type StateSpan,
  statedEngine,
} from "../channels/index.ts";
import type { EngineDescription } from "../engine/index.ts";
import { type Result, success, type Warning } from "../quantities/index.ts";
import { openRecordingReader } from "../recording/index.ts";

/**
 * A recording as an edge hands it in: its bytes in chunks of any size, read once, and their digest, asked for when they have
 * all been read. Nothing here changes or keeps them.
 */
export type RecordingInput = {
  readonly name: string;
  readonly chunks: Iterable<Uint8Array>;
  /** bytes in all, where known */
  readonly size?: number;
  readonly sha256: () => string;
  /** rows a second, for a recording without time */
  readonly rate?: number;
  /** what is stated of its own surroundings; a null leaves what the engine file states */
  readonly site?: EngineDescription["site"];
  /** which visit of the engine it is of, where a job has several */
  readonly visit?: string | null;
};

export type Understood = {
  readonly set: ChannelSet;
  readonly states: readonly StateSpan[];
  /** what the recording's own first lines say of the engine */
  readonly stated: StatedEngine;
  readonly warnings: readonly Warning[];
};

/** A whole recording that is in memory already. */
export function wholeRecording(name: string, bytes: Uint8Array, sha256: string): RecordingInput {
  return { name, chunks: [bytes], size: bytes.length, sha256: () => sha256 };
}

export function understand(
  input: RecordingInput,
  engine: EngineDescription | null,
  pins: ChannelList | null,
): Result<Understood> {
  const { name, rate, size } = input;
  const reader = openRecordingReader({
    name,
    ...(rate === undefined ? {} : { rate }),
    ...(size === undefined ? {} : { size }),
  });
  for (const chunk of input.chunks) {
    const failed = reader.push(chunk);
    if (failed !== null) return failed;
  }
  const recording = reader.finish();
  if (!recording.ok) return recording;
  const set = recogniseChannels(recording.value, { engine, pins });
  if (!set.ok) return set.where?.file === undefined ? { ...set, where: { ...set.where, file: name } } : set;
  return success({
    set: set.value,
    states: findStates(set.value),
    stated: statedEngine(recording.value.preamble),
    warnings: [...recording.value.warnings, ...set.value.warnings],
  });
}
