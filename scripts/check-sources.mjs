/**
 * Sources and checks must agree: every key cited in brackets in a comment of the core has an entry in docs/sources.bib.json and
 * every entry is cited; every file named after "Check" in a comment exists; every file in published/ is named or says what it checks.
 * Prints what is wrong and exits with 1.
 */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { extname, join } from "node:path";

const KEY = /\[([a-z][a-z-]*\d{3,}[a-z0-9-]*)\]/g;
const CHECK = /published\/([\w.-]+\.(?:test\.ts|json))/g;
const REQUIRED = ["authors", "title", "year", "licence", "read"];

const problems = [];
const bibliography = JSON.parse(readFileSync("docs/sources.bib.json", "utf8"));
const cited = new Map();

for (const folder of ["src", "published", "test"]) {
  for (const file of filesOf(folder)) {
    for (const { text, line } of citationsIn(file)) {
      for (const [, key] of text.matchAll(KEY)) cite(key, `${file}:${line}`);
      for (const [, name] of text.matchAll(CHECK)) {
        if (!existsSync(join("published", name)))
          problems.push(`${file}:${line} names published/${name}, which is not there.`);
      }
    }
  }
}

for (const [key, where] of cited) {
  if (!(key in bibliography)) problems.push(`${where[0]} cites [${key}], which docs/sources.bib.json does not have.`);
}
for (const [key, entry] of Object.entries(bibliography)) {
  if (!cited.has(key)) problems.push(`docs/sources.bib.json has ${key}, which nothing cites.`);
  for (const field of REQUIRED) {
    if (!(field in entry)) problems.push(`docs/sources.bib.json: ${key} lacks "${field}".`);
  }
}

if (problems.length > 0) {
  console.error(problems.join("\n"));
  process.exit(1);
}
console.log(`${Object.keys(bibliography).length} sources, each cited; every check named is there.`);

function cite(key, where) {
  const places = cited.get(key) ?? [];
  places.push(where);
  cited.set(key, places);
}

/** Comments of code, and the strings of data files: brackets in code itself are indices, not citations. */
function* citationsIn(file) {
  const lines = readFileSync(file, "utf8").split("\n");
  const json = extname(file) === ".json";
  for (let i = 0; i < lines.length; i++) {
    const comment = json ? lines[i] : /^\s*(?:\/?\*|\/\/)|\/\/|\/\*\*/.test(lines[i]) ? lines[i] : "";
    if (comment !== "") yield { text: comment, line: i + 1 };
  }
}

function* filesOf(folder) {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) {
      if (path !== join("published", "data")) yield* filesOf(path);
    } else if ([".ts", ".tsx", ".json"].includes(extname(entry.name))) yield path;
  }
}
