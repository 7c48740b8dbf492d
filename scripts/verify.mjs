// npm run verify: format, lint, types, import rules, project checks, quick tests; meant to stay under a minute.
import { ensurePackages, requireNode, run, runTool } from "./setup.mjs";

requireNode();
ensurePackages({ dev: true });

const steps = [
  ["format and lint", () => runTool("@biomejs/biome/bin/biome", ["ci", "--colors=off", "--error-on-warnings", "."])],
  ["types", () => runTool("typescript/bin/tsc", ["-b"])],
  ["import rules", () => runTool("dependency-cruiser/bin/dependency-cruise.mjs", ["src", "edge", "web"])],
  ["core rules", () => run(process.execPath, ["scripts/check-core.mjs"])],
  ["sources", () => run(process.execPath, ["scripts/check-sources.mjs"])],
  ["documents", () => run(process.execPath, ["scripts/check-docs.mjs"])],
  ["quick tests", () => runTool("vitest/vitest.mjs", ["run", "--reporter=dot"])],
];
for (const [name, step] of steps) {
  const from = Date.now();
  const status = step();
  process.stderr.write(
    `${status === 0 ? "ok    " : "FAILED"} ${name} (${((Date.now() - from) / 1000).toFixed(1)} s)\n`,
  );
  if (status !== 0) process.exit(status);
}
