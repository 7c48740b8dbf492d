/** The assumptions file: numbers by key, each laid over the table's. The schema is made from the table. */
import { z } from "zod";
import { ASSUMPTION_TABLE } from "../../tally/index.ts";

export const ASSUMPTIONS_SCHEMA = z
  .strictObject({
    note: z.string().optional().meta({ description: "free text; not read" }),
    ...Object.fromEntries(
      ASSUMPTION_TABLE.map(({ key, value, unit, reason }) => [
        key,
        z
          .number()
          .positive()
          .optional()
          .meta({ description: `${unit === "1" ? "" : `in ${unit}: `}${reason}`, default: value }),
      ]),
    ),
  })
  .meta({
    title: "Airtally assumptions file",
    description:
      "What is believed before looking, where it is to differ from the table. Keys left out keep the table's value.",
  });
