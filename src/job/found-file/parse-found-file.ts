/** Found file text to results of checks in SI. */
import { CHECKS, type CheckEntry, checkById, type FoundResult } from "../../findings/index.ts";
import { type Failure, failure, parseQuantity, type Result, success } from "../../quantities/index.ts";
import { parseJson } from "../json-text.ts";
import { nearestWord, schemaProblem } from "../schema-problem.ts";
import { entrySchema, FOUND_FRAME_SCHEMA } from "./found-file-schema.ts";

export type FoundFileReason =
  | "found-not-json"
  | "found-not-valid"
  | "found-unknown-check"
  | "found-unknown-result"
  | "found-twice"
  | "found-no-bank";

const DESCRIBED_IN = "docs/found-file.md";
type Entry = { readonly [key: string]: unknown };

export function parseFoundFile(text: string, banks: 1 | 2): Result<readonly FoundResult[], FoundFileReason> {
  const json = parseJson(text, "found file");
  if (!json.ok) return { ...json, reason: "found-not-json" };
  const frame = FOUND_FRAME_SCHEMA.safeParse(json.value, { reportInput: true });
  if (!frame.success) {
    const document = { name: "found file", schema: FOUND_FRAME_SCHEMA, describedIn: DESCRIBED_IN };
    return { ...schemaProblem(frame.error, document), reason: "found-not-valid" };
  }
  const found: FoundResult[] = [];
  for (const [i, entry] of frame.data.found.entries()) {
    const read = readEntry(entry, `entry ${i + 1} of "found"`);
    if (!read.ok) return read;
    const fault = misplaced(read.value, found, banks, `entry ${i + 1} of "found"`);
    if (fault !== null) return fault;
    found.push(read.value);
  }
  return success(found);
}

function readEntry(entry: Entry, place: string): Result<FoundResult, FoundFileReason> {
  const id = String(entry.check);
  const check = checkById(id);
  if (check === undefined) return unknownCheck(id, place);
  if (check.kind === "words" && typeof entry.result === "string") {
    const ids = check.outcomes.map((o) => o.id);
    if (!ids.includes(entry.result)) return unknownResult(entry.result, ids, `${place} ("${id}")`);
  }
  const schema = entrySchema(check);
  const parsed = schema.safeParse(entry, { reportInput: true });
  if (!parsed.success) {
    const document = { name: `${place} ("${id}")`, schema, describedIn: DESCRIBED_IN };
    return { ...schemaProblem(parsed.error, document), reason: "found-not-valid" };
  }
  return success(resultOf(check, parsed.data));
}

function resultOf(check: CheckEntry, entry: Entry): FoundResult {
  const bank = (entry.bank ?? null) as 1 | 2 | null;
  if (check.kind === "words") return { check: check.id, bank, outcome: entry.result as string, numbers: {} };
  const numbers = check.asks.map(({ key, dimension }) => {
    const given = entry[key];
    if (dimension === "number") return [key, given as number] as const;
    const parsed = parseQuantity(given as string, dimension);
    if (!parsed.ok) throw new Error(`Assertion failed: the schema let through what cannot be read: ${parsed.message}`);
    return [key, parsed.value] as const;
  });
  return { check: check.id, bank, outcome: null, numbers: Object.fromEntries(numbers) };
}

function misplaced(
  result: FoundResult,
  before: readonly FoundResult[],
  banks: 1 | 2,
  place: string,
): Failure<FoundFileReason> | null {
  const { check, bank } = result;
  if (bank !== null && banks === 1) {
    return failure(
      "found-no-bank",
      `The ${place} ("${check}") names bank ${bank}, and this engine has one bank.`,
      'Leave "bank" out, or state "banks": 2 in the engine file.',
    );
  }
  const same = before.findIndex((b) => b.check === check && (b.bank === null || bank === null || b.bank === bank));
  if (same === -1) return null;
  return failure(
    "found-twice",
    `The ${place} ("${check}") was already entered as entry ${same + 1}.`,
    "Enter each check once (or once a bank), with the result that holds now: made twice it is no second witness.",
  );
}

function unknownCheck(id: string, place: string): Failure<FoundFileReason> {
  const known = CHECKS.map((check) => check.id);
  const near = nearestWord(id, known);
  return failure(
    "found-unknown-check",
    `The ${place} names the check "${id}", which there is not.`,
    `${near === null ? "" : `Did you mean "${near}"? `}${DESCRIBED_IN} lists all ${known.length} of them.`,
  );
}

function unknownResult(result: string, known: readonly string[], place: string): Failure<FoundFileReason> {
  const near = nearestWord(result, known);
  return failure(
    "found-unknown-result",
    `The ${place} has the result "${result}", which it cannot have.`,
    `${near === null ? "" : `Did you mean "${near}"? `}Possible there: ${known.join(", ")}.`,
  );
}
