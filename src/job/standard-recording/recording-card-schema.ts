/** The card as a schema; docs/schema/card.schema.json is made from it. */
import { z } from "zod";

const texts = z.array(z.string());

export const RECORDING_CARD_SCHEMA = z
  .strictObject({
    format: z.literal("airtally-card/1"),
    toolVersion: z.string(),
    title: z.string(),
    lead: z.string(),
    seconds: z.number().meta({ description: "of all parts" }),
    before: texts.meta({ description: "to do before it" }),
    channels: texts.meta({ description: "what to record" }),
    parts: z
      .array(
        z.strictObject({
          id: z.string(),
          title: z.string(),
          seconds: z.number(),
          do: z.string(),
          leavesOpen: z
            .array(z.strictObject({ cause: z.string(), title: z.string() }))
            .meta({ description: "causes that stay open if this part is skipped" }),
          cautions: texts,
        }),
      )
      .meta({ description: "in their order" }),
    cautions: texts,
  })
  .meta({ title: "Airtally recording card", description: "The standard recording, to print and to follow." });
