/** What is wrong with a JSON document against its schema, in words: the place, the problem, the nearest known key. */
import type { z } from "zod";
import { type Failure, failure } from "../quantities/index.ts";

export type Document = {
  /** "engine file" */
  readonly name: string;
  readonly schema: z.ZodType;
  /** where its keys are described */
  readonly describedIn: string;
};

export function schemaProblem(error: z.ZodError, { name: what, schema, describedIn }: Document): Failure<"not-valid"> {
  // A misspelt key is also a missing one: the misspelling is the better message.
  const issue = error.issues.find((i) => i.code === "unrecognized_keys") ?? error.issues[0]!;
  const place = issue.path.length === 0 ? "" : ` at ${issue.path.map(String).join(".")}`;
  const more = error.issues.length > 1 ? ` (and ${error.issues.length - 1} more)` : "";
  if (issue.code === "unrecognized_keys") {
    const known = keysAt(schema, issue.path);
    const key = issue.keys[0]!;
    const nearest = nearestWord(key, known);
    const remedy =
      nearest === null
        ? `Known keys there: ${known.join(", ")}.`
        : `Did you mean "${nearest}"? Known keys there: ${known.join(", ")}.`;
    return failure("not-valid", `The ${what} has an unknown key "${key}"${place}${more}.`, remedy);
  }
  if (issue.code === "invalid_type" && issue.input === undefined) {
    return failure(
      "not-valid",
      `The ${what} lacks "${issue.path.map(String).join(".")}"${more}.`,
      `Add it; ${describedIn} lists every key with an example.`,
    );
  }
  return failure(
    "not-valid",
    `The ${what} is not right${place}: ${issue.message}${more}.`,
    `Correct it; ${describedIn} lists every key with an example.`,
  );
}

/** The keys allowed at a path, by walking the schema. */
function keysAt(schema: z.ZodType, path: readonly PropertyKey[]): string[] {
  let node: unknown = schema;
  for (const step of path) node = child(node, step);
  const shape = shapeOf(node);
  return shape === null ? [] : Object.keys(shape);
}

function child(node: unknown, step: PropertyKey): unknown {
  const inner = unwrap(node) as { shape?: Record<string, unknown>; element?: unknown; options?: unknown[] } | null;
  if (inner === null) return null;
  if (typeof step === "number") return inner.element ?? null;
  return shapeOf(inner)?.[String(step)] ?? null;
}

function shapeOf(node: unknown): Record<string, unknown> | null {
  const inner = unwrap(node) as { shape?: Record<string, unknown>; options?: unknown[] } | null;
  if (inner === null) return null;
  if (inner.shape !== undefined) return inner.shape;
  const object = inner.options?.find((option) => (option as { shape?: unknown }).shape !== undefined) as
    | { shape: Record<string, unknown> }
    | undefined;
  return object?.shape ?? null;
}

function unwrap(node: unknown): unknown {
  let inner = node as { unwrap?: () => unknown; element?: unknown } | null;
  while (inner !== null && inner !== undefined && typeof inner.unwrap === "function" && inner.element === undefined) {
    inner = inner.unwrap() as typeof inner;
  }
  return inner ?? null;
}

/** The known word with the fewest edits, if they are few for its length. */
export function nearestWord(word: string, known: readonly string[]): string | null {
  let best: string | null = null;
  let fewest = Infinity;
  for (const candidate of known) {
    const edits = editDistance(word.toLowerCase(), candidate.toLowerCase());
    if (edits < fewest) {
      fewest = edits;
      best = candidate;
    }
  }
  return best !== null && fewest <= Math.max(2, Math.ceil(best.length * 0.4)) ? best : null;
}

/** Levenshtein distance, one row at a time. */
function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)));
    }
    row = next;
  }
  return row[b.length]!;
}
