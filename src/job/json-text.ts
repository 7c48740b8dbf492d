/** JSON as people edit it by hand: a slip is reported with its line and column. */
import { failure, type Result, success } from "../quantities/index.ts";

export function parseJson(text: string, what: string): Result<unknown, "not-json"> {
  try {
    return success(JSON.parse(text.replace(/^\uFEFF/, "")));
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    const position = /position (\d+)/.exec(message)?.[1];
    const where = position === undefined ? undefined : lineAndColumn(text, Number(position));
    const remedy = "Check for a missing comma, quote or bracket near there.";
    return failure(
      "not-json",
      `The ${what} is not JSON (${message.replace(/ in JSON at position.*$/, "")}).`,
      remedy,
      where,
    );
  }
}

function lineAndColumn(text: string, position: number): { line: number; column: number } {
  const before = text.slice(0, position);
  const line = before.split("\n").length;
  return { line, column: position - before.lastIndexOf("\n") };
}
