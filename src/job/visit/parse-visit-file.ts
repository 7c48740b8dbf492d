/** Visit file text to recordings with their surroundings in SI. */
import type { EngineDescription } from "../../engine/index.ts";
import { type Dimension, failure, parseQuantity, type Result, success } from "../../quantities/index.ts";
import { parseJson } from "../json-text.ts";
import { type Document, schemaProblem } from "../schema-problem.ts";
import { VISIT_FILE_SCHEMA } from "./visit-file-schema.ts";

const VISIT_FILE: Document = {
  name: "visit file",
  schema: VISIT_FILE_SCHEMA,
  describedIn: "docs/visit-file.md",
};

export type VisitEntry = {
  /** as written, relative to the folder of the visit file */
  readonly file: string;
  readonly site: EngineDescription["site"];
  readonly visit: string | null;
};

export function parseVisitFile(text: string): Result<readonly VisitEntry[], "not-json" | "not-valid"> {
  const json = parseJson(text, "visit file");
  if (!json.ok) return json;
  const parsed = VISIT_FILE_SCHEMA.safeParse(json.value, { reportInput: true });
  if (!parsed.success) return schemaProblem(parsed.error, VISIT_FILE);
  const entries = parsed.data.recordings.map((r) => ({
    file: r.file,
    site: { barometer: si(r.barometer, "pressure"), outside: si(r.outside, "temperature") },
    visit: r.visit ?? null,
  }));
  const unnamed = entries.find((e) => e.visit === null);
  if (unnamed !== undefined && severalVisits(entries)) {
    return failure(
      "not-valid",
      `The visit file names several visits but says not of which "${unnamed.file}" is.`,
      'Add "visit" to each recording, or to none.',
    );
  }
  return success(entries);
}

export function severalVisits(entries: readonly { readonly visit?: string | null }[]): boolean {
  return new Set(entries.flatMap((e) => e.visit ?? [])).size > 1;
}

function si(text: string | undefined, dimension: Dimension): number | null {
  if (text === undefined) return null;
  const parsed = parseQuantity(text, dimension);
  if (!parsed.ok) throw new Error(`Assertion failed: the schema let through what cannot be read: ${parsed.message}`);
  return parsed.value;
}
