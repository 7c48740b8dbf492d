/** Flow columns against the volume the engine can draw: a unit that is not stated is settled, one that can't be true is told. */
import type { EngineDescription } from "../../engine/index.ts";
import type { Warning } from "../../quantities/index.ts";
import type { BuiltChannel } from "../build-channels.ts";
import type { ChannelSet } from "../channel-set.ts";
import { judgeFlowUnit } from "./flow-unit.ts";

/** On an engine with two meters each hears half of the air: no volume of the engine follows from one. */
function flowsOf(set: Pick<ChannelSet, "channels">): ChannelSet["channels"] {
  const flows = set.channels.filter((channel) => channel.quantity === "meterFlow" && channel.standing !== "dead");
  return flows.some((channel) => channel.bank !== null) ? [] : flows;
}

export function checkFlowUnits(set: ChannelSet, engine: EngineDescription | null): Warning[] {
  return flowsOf(set).flatMap((flow) => {
    const verdict = judgeFlowUnit(set, flow, engine);
    return verdict.kind === "contradiction" ? [verdict.warning] : [];
  });
}

/** A settled unit is a little less sure than a stated one. */
const SETTLED = 0.9;

export function settleFlowUnits(built: readonly BuiltChannel[], engine: EngineDescription | null): BuiltChannel[] {
  const set = { channels: built.map(({ channel }) => channel) };
  const flows = flowsOf(set);
  return built.map((one) => {
    const { channel, assignment } = one;
    const verdict = flows.includes(channel) ? judgeFlowUnit(set, channel, engine) : null;
    if (verdict?.kind !== "other-unit") return one;
    const { factor, symbol, text } = verdict;
    const { scale } = assignment.conversion;
    const confidence = channel.confidence * SETTLED;
    const conversion = {
      ...assignment.conversion,
      unitUsed: symbol,
      scale: { ...scale, factor: scale.factor * factor, offset: scale.offset * factor },
    };
    return {
      assignment: { ...assignment, conversion, confidence },
      channel: {
        ...channel,
        values: channel.values.map((value) => value * factor),
        resolution: channel.resolution === null ? null : channel.resolution * factor,
        source: { ...channel.source, unitUsed: symbol },
        confidence,
        reasons: [...channel.reasons.filter((reason) => !reason.startsWith("no unit stated")), text],
      },
    };
  });
}
