/** Assumptions file text to the numbers the tally takes; the table's own where there is no file. */
import { type Result, success } from "../../quantities/index.ts";
import { type Assumptions, defaultAssumptions, withAssumptions } from "../../tally/index.ts";
import { parseJson } from "../json-text.ts";
import { type Document, schemaProblem } from "../schema-problem.ts";
import { ASSUMPTIONS_SCHEMA } from "./assumptions-schema.ts";

const ASSUMPTIONS_FILE: Document = {
  name: "assumptions file",
  schema: ASSUMPTIONS_SCHEMA,
  describedIn: "docs/assumptions.md",
};

export function readAssumptions(text: string | null): Result<Assumptions> {
  if (text === null) return success(defaultAssumptions());
  const json = parseJson(text, "assumptions file");
  if (!json.ok) return { ...json, reason: "assumptions-not-json" };
  const parsed = ASSUMPTIONS_SCHEMA.safeParse(json.value, { reportInput: true });
  if (parsed.success) return withAssumptions(parsed.data);
  const problem = schemaProblem(parsed.error, ASSUMPTIONS_FILE);
  return { ...problem, reason: "assumptions-not-valid" };
}
