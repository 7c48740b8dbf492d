/** Two channels of the same quantity must say the same, or one of them is something else. */
import type { Warning } from "../../quantities/index.ts";
import type { ChannelSet, RecognisedChannel } from "../channel-set.ts";
import { heldAt, quantile } from "../held-track.ts";
import { type QuantityId, quantityInfo } from "../quantity-id.ts";
import { inUsualUnit } from "../recognition/expectations.ts";

/** Quantities of which an engine has one value at a time, with the difference that is still agreement (SI). */
const ONE_VALUE: readonly (readonly [QuantityId, number])[] = [
  ["engineSpeed", 1.5],
  ["vehicleSpeed", 2.5],
  ["manifoldPressure", 4e3],
  ["barometer", 1.5e3],
  ["coolantTemperature", 8],
  ["ambientTemperature", 8],
];

export function checkTwins(set: ChannelSet): Warning[] {
  return ONE_VALUE.flatMap(([quantity, tolerance]) => {
    const [first, ...others] = set.channels
      .filter((channel) => channel.quantity === quantity && channel.standing !== "dead")
      .sort((a, b) => a.instance - b.instance);
    return first === undefined ? [] : others.flatMap((other) => compare(first, other, tolerance));
  });
}

function compare(first: RecognisedChannel, other: RecognisedChannel, tolerance: number): Warning[] {
  const held = heldAt(other, first.times);
  const differences = held.map((value, i) => Math.abs(value - first.values[i]!));
  const median = quantile(differences, 0.5);
  if (!(median > tolerance)) return [];
  const { quantity } = first;
  const zero = quantityInfo(quantity).unit === "K" ? 273.15 : 0;
  const names = `"${first.source.header}" (column ${first.source.column}) and "${other.source.header}" (column ${other.source.column})`;
  return [
    {
      code: "twins-differ",
      text: `${names} are both taken as ${quantityInfo(quantity).name} and differ by ${inUsualUnit(quantity, median + zero)}: say which is which in a channel list.`,
    },
  ];
}
