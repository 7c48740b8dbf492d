/** A recording into channels in SI: which column is what, when it was really read, and whether it is a witness at all. */
import { type EngineDescription, stoichiometricAirFuelRatio } from "../engine/index.ts";
import { failure, type Result, success, type Warning } from "../quantities/index.ts";
import type { RawColumn, Recording, RowStretch, TimeBase } from "../recording/index.ts";
import { type Assignment, assignColumns } from "./assign-columns.ts";
import { buildChannels } from "./build-channels.ts";
import type { ChannelList } from "./channel-list/channel-list.ts";
import type { ChannelReason } from "./channel-reason.ts";
import type { ChannelSet, Stretch } from "./channel-set.ts";
import { settleFlowUnits } from "./cross-checks/check-flow-units.ts";
import { crossChecks } from "./cross-checks/cross-checks.ts";
import type { Surroundings } from "./recognition/conversion-types.ts";
import { withStatesAsNumbers } from "./recognition/state-words.ts";
import { judgeStanding } from "./standing/judge-standing.ts";
import { timeFromRunTime } from "./time-from-run-time.ts";

export type RecogniseOptions = {
  /** null: nothing is known of the engine */
  readonly engine: EngineDescription | null;
  /** null: nothing is pinned */
  readonly pins: ChannelList | null;
};

/** Petrol, where no engine file says otherwise. */
const PETROL_STOICHIOMETRIC = 14.6;

export function recogniseChannels(recording: Recording, options: RecogniseOptions): Result<ChannelSet, ChannelReason> {
  const timeColumns = new Set(recording.time?.columns ?? []);
  const columns = recording.columns.filter((column) => !timeColumns.has(column.position)).map(withStatesAsNumbers);
  const assigned = assignColumns(columns, options.pins, surroundings(options.engine), recording.name);
  if (!assigned.ok) return assigned;
  const { assignments, unrecognised, warnings } = assigned.value;
  const timed = timeOf(recording, assignments, columns);
  if (timed === null) {
    return failure(
      "no-time-base",
      "The recording has no time column, and no engine run time to build one from.",
      "State how many rows a second it has (--rate HZ).",
      { file: recording.name },
    );
  }
  const { base, stretches } = timed;
  const assignedChannels = buildChannels(withoutNeedlessBanks(assignments, options.engine), columns, base);
  const built = settleFlowUnits(assignedChannels, options.engine);
  const channels = judgeStanding(built, columns, recording.rows);
  if (channels.length === 0) {
    return failure(
      "no-channel",
      `None of the ${columns.length} columns was recognised.`,
      "Write a channel list (--channels-out FILE), say in it what the columns are, and hand it back (--channels FILE).",
      { file: recording.name },
    );
  }
  const set: ChannelSet = {
    channels,
    unrecognised,
    stretches: stretches.map((stretch) => inSeconds(stretch, base)),
    duration: base.seconds.at(-1) ?? 0,
    rows: recording.rows,
    timeBasis: base.how,
    warnings: [...warnings, ...standingWarnings(channels)],
  };
  return success({ ...set, warnings: [...set.warnings, ...crossChecks(set, options.engine)] });
}

/** "Bank 1" of an engine with one bank is the engine: only a second bank makes the word tell something. */
function withoutNeedlessBanks(assignments: readonly Assignment[], engine: EngineDescription | null): Assignment[] {
  const second = engine?.banks === 2 || assignments.some((assignment) => assignment.bank === 2);
  return assignments.map((assignment) => (second ? assignment : { ...assignment, bank: null }));
}

function surroundings(engine: EngineDescription | null): Omit<Surroundings, "habits"> {
  const fuel = engine?.fuel ?? "petrol";
  return {
    barometer: engine?.site.barometer ?? null,
    stoichiometric:
      engine === null
        ? PETROL_STOICHIOMETRIC
        : typeof fuel === "string"
          ? stoichiometricAirFuelRatio(fuel)
          : fuel.stoichiometricAirFuelRatio,
  };
}

function timeOf(
  recording: Recording,
  assignments: readonly Assignment[],
  columns: readonly RawColumn[],
): { base: TimeBase; stretches: readonly RowStretch[] } | null {
  if (recording.time !== null) return { base: recording.time, stretches: recording.stretches };
  const runTime = assignments.find((assignment) => assignment.quantity === "runTime");
  const column = columns.find((candidate) => candidate.position === runTime?.column.position);
  if (runTime === undefined || column === undefined) return null;
  return timeFromRunTime(column, runTime.conversion.scale.factor);
}

function inSeconds(stretch: RowStretch, base: TimeBase): Stretch {
  const start = base.seconds[stretch.startRow] ?? 0;
  return { start, end: base.seconds[stretch.endRow - 1] ?? start, why: stretch.why };
}

function standingWarnings(channels: ChannelSet["channels"]): Warning[] {
  return channels
    .filter((channel) => channel.standing === "computed" || channel.standing === "dead")
    .map((channel) => ({
      code: channel.standing === "dead" ? "dead-sensor" : "computed-channel",
      text: `"${channel.source.header}" (column ${channel.source.column}) ${channel.standingReason}.`,
    }));
}
