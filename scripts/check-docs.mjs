// Links in the documents must lead somewhere in the project.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { ROOT } from "./setup.mjs";

const documents = [
  "README.md",
  "CHANGELOG.md",
  ...readdirSync(join(ROOT, "docs"))
    .filter((name) => name.endsWith(".md"))
    .map((name) => `docs/${name}`),
];
const problems = [];
for (const document of documents) {
  const text = readFileSync(join(ROOT, document), "utf8");
  for (const [, target] of text.matchAll(/\]\(([^)#]+)(?:#[^)]*)?\)/g)) {
    if (/^[a-z]+:/.test(target)) continue;
    if (!existsSync(join(ROOT, dirname(document), target)))
      problems.push(`${document} points to ${target}, which is not there.`);
  }
}
if (problems.length > 0) {
  process.stderr.write(`${problems.join("\n")}\n`);
  process.exit(1);
}
