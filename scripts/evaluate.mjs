// npm run evaluate [-- --set final --cases 1000 --spreads 2 --keep --document]: how good the answers are, on invented engines.
// Cases once observed are kept in .cache/evaluate under a name made of everything that makes them, so that it goes on where it
// stopped; --keep takes the newest kept ones whatever changed since. Prints everything judged so far (each set and factor on the
// spreads is judged by a run of its own); --document writes it to docs/accuracy.md.

import { spawn, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { ensurePackages, fail, ROOT, requireNode, runTool } from "./setup.mjs";

requireNode();
ensurePackages({ dev: true });
const { values } = parseArgs({
  options: {
    set: { type: "string", default: "tuning" },
    cases: { type: "string", default: "5000" },
    spreads: { type: "string", default: "1" },
    keep: { type: "boolean", default: false },
    document: { type: "boolean", default: false },
    workers: { type: "string", default: String(availableParallelism()) },
  },
});
if (!["tuning", "final"].includes(values.set)) fail(`--set ${values.set}: there are the sets tuning and final.`);
if (!(Number(values.cases) > 0)) fail(`--cases ${values.cases}: give a number of cases.`);

const STORE = join(ROOT, ".cache/evaluate");
const observed = join(STORE, values.keep ? newest() : `observed-${madeOf()}`);
const judged = join(STORE, `judged-${values.set}-${values.spreads}`);
rmSync(judged, { recursive: true, force: true });
mkdirSync(observed, { recursive: true });
const build = [
  "build",
  "--logLevel",
  "warn",
  "--ssr",
  "test/evaluate/evaluate.ts",
  "--outDir",
  ".cache/evaluate/program",
];
if (runTool("vite/bin/vite.js", [...build, "--target", "node20"], { stdio: ["ignore", 2, 2] }) !== 0)
  fail("test/evaluate/evaluate.ts could not be built.");

const program = join(STORE, "program/evaluate.js");
const common = ["--observed", observed, "--judged", judged, "--set", values.set, "--cases", values.cases];
const workers = Number(values.workers);
const ends = await Promise.all(
  Array.from({ length: workers }, (_, i) => part(["--spreads", values.spreads, "--part", `${i}/${workers}`])),
);
if (ends.some((code) => code !== 0)) fail("A part of the evaluation failed: its message stands above.");
const told = spawnSync(process.execPath, [program, "--judged", STORE, "--document"], {
  encoding: "utf8",
  maxBuffer: 2 ** 26,
});
if (told.status !== 0) fail(told.stderr);
if (values.document) writeFileSync(join(ROOT, "docs/accuracy.md"), told.stdout);
process.stdout.write(told.stdout);

function part(own) {
  return new Promise((resolve) =>
    spawn(process.execPath, [program, ...common, ...own], { stdio: "inherit" }).on("exit", resolve),
  );
}

/** A name for all that decides what is observed: the engine, its recorder, the reader, the cases. */
function madeOf() {
  const hash = createHash("sha256");
  const rooms = ["quantities", "numerics", "gas", "engine", "meters", "model-engine", "recording", "channels"];
  for (const folder of [...rooms.map((room) => `src/${room}`), "test/cases"]) digest(hash, join(ROOT, folder));
  for (const name of ["observed-case.ts", "true-faults.ts"])
    hash.update(readFileSync(join(ROOT, "test/evaluate", name)));
  return hash.digest("hex").slice(0, 12);
}

function digest(hash, folder) {
  for (const entry of readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1))) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) digest(hash, path);
    else if (!/\.test\.tsx?$/.test(entry.name)) hash.update(entry.name).update(readFileSync(path));
  }
}

function newest() {
  const kept = existsSync(STORE) ? readdirSync(STORE).filter((name) => name.startsWith("observed-")) : [];
  if (kept.length === 0) fail("Nothing is kept yet: run once without --keep.");
  const age = (name) => statSync(join(STORE, name)).mtimeMs;
  return kept.sort((a, b) => age(b) - age(a))[0];
}
