/**
 * After standing long enough an engine, its coolant and the air in it are as warm as the air around. If a recording begins
 * so, two temperatures that agree convict a third that does not.
 */
import { QUALITY, type Warning } from "../../quantities/index.ts";
import { bestChannel } from "../best-channel.ts";
import type { ChannelSet } from "../channel-set.ts";
import type { QuantityId } from "../quantity-id.ts";
import { inUsualUnit } from "../recognition/expectations.ts";

const TEMPERATURES: readonly QuantityId[] = [
  "coolantTemperature",
  "intakeTemperature",
  "ambientTemperature",
  "oilTemperature",
  "chargeTemperature",
];
/** s from the start within which nothing has warmed up yet */
const AT_START = 15;
/** K within which temperatures agree, and beyond which one departs. Common practice, no source. */
const AGREE = 4;
const DEPARTS = 10;
/** K, a coolant at this or more was run before: no cold soak */
const WARM = 315;

export function checkColdSoak(set: ChannelSet): Warning[] {
  const first = TEMPERATURES.flatMap((quantity) => {
    const channel = bestChannel(set, quantity);
    const i = channel === undefined ? -1 : channel.quality.indexOf(QUALITY.good);
    return channel === undefined || i < 0 || channel.times[i]! > AT_START
      ? []
      : [{ quantity, header: channel.source.header, value: channel.values[i]! }];
  });
  const coolant = first.find(({ quantity }) => quantity === "coolantTemperature");
  if (first.length < 3 || coolant === undefined || coolant.value > WARM) return [];
  const values = first.map(({ value }) => value).sort((a, b) => a - b);
  const median = values[values.length >> 1]!;
  const agreeing = first.filter(({ value }) => Math.abs(value - median) <= AGREE);
  if (agreeing.length < 2 || !agreeing.includes(coolant)) return [];
  return first
    .filter(({ value }) => Math.abs(value - median) > DEPARTS)
    .map(({ quantity, header, value }) => ({
      code: "cold-soak",
      text: `The engine was cold at the start (${agreeing.map((t) => `"${t.header}"`).join(", ")} near ${inUsualUnit(quantity, median)}), but "${header}" read ${inUsualUnit(quantity, value)}.`,
    }));
}
