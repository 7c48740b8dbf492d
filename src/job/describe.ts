/** What is in a recording: channels, units, rates, gaps, and how each was recognised. */
import { channelListOf, formatChannelList, parseChannelList } from "../channels/index.ts";
import { type Result, success } from "../quantities/index.ts";
import { parseEngineFile } from "./engine-file/parse-engine-file.ts";
import { round } from "./outcome/points.ts";
import { channelViews } from "./outcome/timeline.ts";
import type { ChannelView, ResultWarning } from "./result.ts";
import { type RecordingInput, understand } from "./understand.ts";

export type DescribeInput = {
  readonly recording: RecordingInput;
  readonly engine: string | null;
  readonly channels: string | null;
};

/** Format "airtally-description/1". */
export type Description = {
  readonly format: "airtally-description/1";
  readonly toolVersion: string;
  readonly name: string;
  readonly sha256: string;
  readonly rows: number;
  readonly duration_s: number;
  readonly timeBasis: string;
  readonly stretches: readonly { readonly start_s: number; readonly end_s: number; readonly why: string | null }[];
  readonly channels: readonly ChannelView[];
  readonly states: readonly {
    readonly state: string;
    readonly start_s: number;
    readonly end_s: number;
    readonly reason: string;
  }[];
  readonly warnings: readonly ResultWarning[];
};

export type Described = {
  readonly description: Description /** text of a channel list to pin or correct */;
  readonly channelList: string;
};

export function describe(input: DescribeInput, toolVersion: string): Result<Described> {
  const engine = input.engine === null ? null : parseEngineFile(input.engine);
  if (engine !== null && !engine.ok) return engine;
  const pins = input.channels === null ? null : parseChannelList(input.channels);
  if (pins !== null && !pins.ok) return pins;
  const understood = understand(input.recording, engine?.value ?? null, pins?.value ?? null);
  if (!understood.ok) return understood;
  const { set, states, warnings } = understood.value;
  return success({
    channelList: formatChannelList(channelListOf(set)),
    description: {
      format: "airtally-description/1",
      toolVersion,
      name: input.recording.name,
      sha256: input.recording.sha256(),
      rows: set.rows,
      duration_s: round(set.duration),
      timeBasis: set.timeBasis,
      stretches: set.stretches.map((s) => ({ start_s: round(s.start), end_s: round(s.end), why: s.why })),
      channels: channelViews(set),
      states: states.map((s) => ({ state: s.state, start_s: round(s.start), end_s: round(s.end), reason: s.reason })),
      warnings,
    },
  });
}
