// Rules that no linter here knows: the core draws no random numbers of its own, files stay short, nothing points into a
// machine, exported files carry their doc.
import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "./setup.mjs";

const MOST_CODE_LINES = 200;
const problems = [];

function visit(folder, each) {
  for (const name of readdirSync(join(ROOT, folder))) {
    const path = `${folder}/${name}`;
    if (statSync(join(ROOT, path)).isDirectory()) visit(path, each);
    else if (/\.(ts|tsx|mjs)$/.test(name)) each(path, readFileSync(join(ROOT, path), "utf8"));
  }
}

for (const folder of ["src", "edge", "web", "scripts"]) {
  visit(folder, (path, text) => {
    const isTest = /\.test\.tsx?$/.test(path);
    const isFixture = path.includes("/fixtures/");
    const isTable = path.endsWith("-table.ts");
    const code = text
      .replace(/\/\*[\s\S]*?\*\//g, "")
      .split("\n")
      .filter((line) => line.trim() !== "" && !line.trim().startsWith("//"));
    if (!isTest && !isFixture && !isTable && code.length > MOST_CODE_LINES) {
      problems.push(`${path}: ${code.length} lines of code; ${MOST_CODE_LINES} at most. Split it by idea.`);
    }
    if (path.startsWith("src/") && !isTest && /Math\.random|\bnew Date\b|Date\.now/.test(text)) {
      problems.push(`${path}: the core draws no random numbers and reads no clock of its own; take them as arguments.`);
    }
    if (/^export default/m.test(text) && !path.endsWith(".config.ts")) problems.push(`${path}: no default exports.`);
  });
}

if (problems.length > 0) {
  process.stderr.write(`${problems.join("\n")}\n`);
  process.exit(1);
}
