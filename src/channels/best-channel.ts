/** The channel to take for a quantity: usable, first instance, first bank. */
import type { ChannelSet, RecognisedChannel } from "./channel-set.ts";
import type { QuantityId } from "./quantity-id.ts";

export function bestChannel(set: Pick<ChannelSet, "channels">, quantity: QuantityId): RecognisedChannel | undefined {
  const usable = set.channels.filter((channel) => channel.quantity === quantity && channel.standing !== "dead");
  return usable.sort((a, b) => a.instance - b.instance || (a.bank ?? 0) - (b.bank ?? 0))[0];
}
