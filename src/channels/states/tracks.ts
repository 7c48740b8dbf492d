/** The channels the states are told from, all sampled at the times of the engine speed. */
import { bestChannel } from "../best-channel.ts";
import type { ChannelSet, RecognisedChannel } from "../channel-set.ts";
import { heldAt } from "../held-track.ts";
import type { QuantityId } from "../quantity-id.ts";

/** 1/s: no engine idles below 400 rev/min. Common practice, no source. */
const RUNNING = 400 / 60;

export type Tracks = {
  readonly speed: Float64Array;
  readonly running: (i: number) => boolean;
  readonly of: (quantity: QuantityId) => Float64Array | null;
  readonly name: (quantity: QuantityId) => string;
};

export function tracksOf(set: ChannelSet, speed: RecognisedChannel): Tracks {
  const held = new Map<QuantityId, Float64Array | null>();
  const own = heldAt(speed, speed.times);
  const of = (quantity: QuantityId): Float64Array | null => {
    let track = held.get(quantity);
    if (track === undefined) {
      const channel = bestChannel(set, quantity);
      track = channel === undefined ? null : heldAt(channel, speed.times);
      held.set(quantity, track);
    }
    return track;
  };
  return {
    speed: own,
    running: (i) => own[i]! >= RUNNING,
    of,
    name: (quantity) => `"${bestChannel(set, quantity)?.source.header ?? quantity}"`,
  };
}
