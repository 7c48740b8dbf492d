// npm run speed [-- NAME]: the benchmarks, each built and run in a process of its own. Prints ratios of one run on one machine;
// never an assertion of time.
import { readdirSync } from "node:fs";
import { cpus } from "node:os";
import { join } from "node:path";
import { ensureBuilt, ensurePackages, fail, ROOT, requireNode, run, runTool } from "./setup.mjs";

requireNode();
ensurePackages({ dev: true });
ensureBuilt();
const wanted = process.argv.slice(2);
const all = readdirSync(join(ROOT, "speed")).filter((name) => name.endsWith(".ts") && !name.startsWith("make-"));
const names = all
  .map((name) => name.replace(/\.ts$/, ""))
  .filter((name) => wanted.length === 0 || wanted.includes(name));
if (names.length === 0) fail(`No such benchmark. There are: ${all.join(", ")}.`);
process.stdout.write(
  `Node ${process.versions.node}, ${cpus()[0]?.model ?? "unknown processor"}, ${cpus().length} cores\n`,
);
for (const name of names) {
  const folder = `.cache/speed/${name}`;
  const args = [
    "build",
    "--logLevel",
    "warn",
    "--ssr",
    `speed/${name}.ts`,
    "--outDir",
    folder,
    "--emptyOutDir",
    "--target",
    "node20",
  ];
  if (runTool("vite/bin/vite.js", args, { stdio: ["ignore", 2, 2] }) !== 0)
    fail(`speed/${name}.ts could not be built.`);
  if (run(process.execPath, ["--expose-gc", `${folder}/${name}.js`]) !== 0) fail(`speed/${name}.ts failed.`);
}
