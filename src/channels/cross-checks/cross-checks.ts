/** Channels of one recording held against each other: what two of them say of the same thing must agree. */
import type { EngineDescription } from "../../engine/index.ts";
import type { Warning } from "../../quantities/index.ts";
import type { ChannelSet } from "../channel-set.ts";
import { checkFlowUnits } from "./check-flow-units.ts";
import { checkColdSoak } from "./cold-soak.ts";
import { checkKeyOnPressure } from "./key-on-pressure.ts";
import { checkLoad } from "./load-and-flow.ts";
import { checkLag } from "./sensor-lag.ts";
import { checkTwins } from "./twins.ts";

export function crossChecks(set: ChannelSet, engine: EngineDescription | null): Warning[] {
  return [
    ...checkFlowUnits(set, engine),
    ...checkLoad(set, engine),
    ...checkTwins(set),
    ...checkColdSoak(set),
    ...checkKeyOnPressure(set),
    ...checkLag(set),
  ];
}
