/** Why no channel set can be made of a recording. */
export type ChannelReason = "no-time-base" | "no-channel" | "pin-without-column" | "pin-contradiction";
