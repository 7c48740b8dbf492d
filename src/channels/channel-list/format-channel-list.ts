/** A channel list as a file: what was recognised, ready to be corrected and handed back. */
import type { ChannelSet } from "../channel-set.ts";
import { CHANNEL_LIST_FORMAT, type ChannelList, type ChannelPin } from "./channel-list.ts";

/** Every column of a set: recognised ones pinned as they were, the others left out until someone says what they are. */
export function channelListOf(set: ChannelSet): ChannelList {
  const recognised = set.channels.map(
    (channel): ChannelPin => ({
      column: channel.source.column,
      header: channel.source.header,
      quantity: channel.quantity,
      unit: channel.source.unitUsed,
      bank: channel.bank,
    }),
  );
  const others = set.unrecognised.map(
    (column): ChannelPin => ({ column: column.column, header: column.header, quantity: null, unit: null, bank: null }),
  );
  const channels = [...recognised, ...others].sort((a, b) => (a.column ?? 0) - (b.column ?? 0));
  return { note: null, channels };
}

export function formatChannelList(list: ChannelList): string {
  const channels = list.channels.map((pin) => ({
    ...(pin.column === null ? {} : { column: pin.column }),
    ...(pin.header === null ? {} : { header: pin.header }),
    ...(pin.quantity === null ? { ignore: true } : { quantity: pin.quantity }),
    ...(pin.unit === null ? {} : { unit: pin.unit }),
    ...(pin.bank === null ? {} : { bank: pin.bank }),
  }));
  const lines = channels.map((channel) => `    ${JSON.stringify(channel)}`);
  const note = list.note === null ? "" : `  "note": ${JSON.stringify(list.note)},\n`;
  return `{\n  "format": "${CHANNEL_LIST_FORMAT}",\n${note}  "channels": [\n${lines.join(",\n")}\n  ]\n}\n`;
}
