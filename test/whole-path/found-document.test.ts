// docs/found-file.md lists every check of the table as it is; its example is read as the document says.
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { CHECKS } from "../../src/findings/index.ts";
import { parseFoundFile } from "../../src/job/found-file/parse-found-file.ts";
import { examplesOf } from "./document-examples.ts";

const text = readFileSync(fileURLToPath(new URL("../../docs/found-file.md", import.meta.url)), "utf8");

it("lists every check with its title, minutes, and what may be entered", () => {
  const rows = text.split("\n").filter((line) => line.startsWith("| `"));
  expect(rows).toHaveLength(CHECKS.length);
  for (const [i, check] of CHECKS.entries()) {
    const entries =
      check.kind === "words"
        ? `result: ${check.outcomes.map((o) => `\`${o.id}\` ${o.words}`).join("; ")}`
        : check.asks
            .map(({ key, words, dimension, example }) => {
              const written = dimension === "number" ? example : `"${example}"`;
              return `\`${key}\` ${words} (${written})`;
            })
            .join("; ");
    expect(rows[i]).toBe(`| \`${check.id}\` | ${check.title} | ${check.minutes} | ${entries} |`);
  }
});

it("shows an example that is read", () => {
  const parsed = parseFoundFile(examplesOf("found-file.md").files["found.json"]!, 1);
  expect(parsed.ok && parsed.value.map((r) => r.check)).toEqual(["zero-flow-signal", "smoke-test", "key-on-pressure"]);
});
