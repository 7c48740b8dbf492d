/**
 * channels: what the columns of a recording are.
 * In: a `Recording`, what is known of the engine, what the user pinned. Out: a `ChannelSet` of channels in SI, each on its
 * own time stamps, with the confidence and the reasons of its recognition, its standing (measured, computed, dead,
 * set-point), and the states the engine was in.
 * Refuses: to guess below its threshold (it asks), to bridge a gap, to invent a sample, to change a recording.
 */
export { CHANNEL_LIST_FORMAT, type ChannelList, type ChannelPin } from "./channel-list/channel-list.ts";
export { channelListOf, formatChannelList } from "./channel-list/format-channel-list.ts";
export { type ChannelListReason, parseChannelList } from "./channel-list/parse-channel-list.ts";
export type { ChannelReason } from "./channel-reason.ts";
export type { ChannelSet, RecognisedChannel, Standing, Stretch, UnrecognisedColumn } from "./channel-set.ts";
export { compareRecordings, type OneRecording } from "./cross-checks/compare-recordings.ts";
export { type StatedEngine, statedEngine } from "./cross-checks/stated-engine.ts";
export { findOperatingPoints, type OperatingData } from "./operating-points/find-operating-points.ts";
export type { KeyOnReading, OperatingPoint, Reading, ReadingKey } from "./operating-points/operating-point.ts";
export { QUANTITIES, type QuantityId, type QuantityInfo, quantityInfo } from "./quantity-id.ts";
export { type RecogniseOptions, recogniseChannels } from "./recognise-channels.ts";
export { findStates } from "./states/find-states.ts";
export { NARROW_PROBE } from "./states/mixture-conditions.ts";
export type { EngineState, StateSpan } from "./states/state-span.ts";
