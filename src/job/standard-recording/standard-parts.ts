/** The parts of the standard recording (standard-recording.json), typed: printed by the card, looked for in a recording. */
import type { VisitedPart } from "../../findings/index.ts";
import table from "./standard-recording.json" with { type: "json" };

/** `key-on`, `snap` and `key-off` are no steady running: only the first can be told from what was read there. */
export type RegionId = VisitedPart | "key-on" | "snap" | "key-off";

export type StandardPart = {
  readonly id: string;
  readonly title: string;
  readonly seconds: number;
  readonly do: string;
  readonly cautions: readonly string[];
  readonly regions: readonly { readonly id: RegionId; readonly name: string; readonly leavesOpen: readonly string[] }[];
};

export const STANDARD_PARTS = table.parts as unknown as readonly StandardPart[];
export const STANDARD_CHANNELS: readonly string[] = table.channels;
export const STANDARD_BEFORE: readonly string[] = table.before;
