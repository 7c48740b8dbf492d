/** The standard recording as a card to print: what to do, for how long, and what each part that is skipped leaves open. */
import { CATALOGUE } from "../../findings/index.ts";
import { cautionsAlways, cautionTexts } from "../cautions.ts";
import type { RecordingCard } from "../recording-card.ts";
import { STANDARD_BEFORE, STANDARD_CHANNELS, STANDARD_PARTS } from "./standard-parts.ts";

export function recordingCard(toolVersion: string): RecordingCard {
  return {
    format: "airtally-card/1",
    toolVersion,
    title: "The standard recording",
    lead: "One recording in which every fault of the air signal has its place to show. Do what is safe; whatever is left out leaves open what stands beside it.",
    seconds: STANDARD_PARTS.reduce((sum, part) => sum + part.seconds, 0),
    before: STANDARD_BEFORE,
    channels: STANDARD_CHANNELS,
    parts: STANDARD_PARTS.map(({ id, title, seconds, do: steps, regions, cautions }) => ({
      id,
      title,
      seconds,
      do: steps,
      leavesOpen: [...new Set(regions.flatMap((region) => region.leavesOpen))].flatMap((cause) => {
        const entry = CATALOGUE.find((c) => c.id === cause);
        return entry === undefined ? [] : [{ cause, title: entry.title }];
      }),
      cautions: cautionTexts(cautions),
    })),
    cautions: cautionsAlways(),
  };
}
