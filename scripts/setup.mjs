// What every script needs on a fresh machine: the right Node, the packages of the lock file, a current build.
// Only Node's own modules here: nothing may be installed yet.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
const LEAST_NODE = [20, 19];

export function fail(message) {
  process.stderr.write(`${message}\n`);
  process.exit(1);
}

export function requireNode() {
  const [major, minor] = process.versions.node.split(".").map(Number);
  if (major < LEAST_NODE[0] || (major === LEAST_NODE[0] && minor < LEAST_NODE[1])) {
    fail(
      `Airtally needs Node ${LEAST_NODE.join(".")} or newer; this is ${process.versions.node}. Install a newer Node and call again.`,
    );
  }
}

/** Runs a command in the project, its output shown; answers its status. */
export function run(command, args, options = {}) {
  const shell = process.platform === "win32";
  const done = spawnSync(command, args, { cwd: ROOT, stdio: "inherit", shell, ...options });
  if (done.error !== undefined) fail(`${command} could not be started (${done.error.message}).`);
  return done.status ?? 1;
}

/** A program of an installed package, run by this very Node. */
export function runTool(path, args, options = {}) {
  return run(process.execPath, [join("node_modules", path), ...args], options);
}

/** Installs the packages of the lock file unless just these are there. `dev`: those for tests and checks too. */
export function ensurePackages({ dev, quiet = false }) {
  const lock = createHash("sha256")
    .update(readFileSync(join(ROOT, "package-lock.json")))
    .digest("hex");
  const stamp = join(ROOT, "node_modules", ".airtally-packages.json");
  const have = existsSync(stamp) ? JSON.parse(readFileSync(stamp, "utf8")) : {};
  if (have.lock === lock && (have.dev === true || !dev)) return;
  process.stderr.write("Installing packages (once, from the npm registry)...\n");
  const args = ["ci", "--no-audit", "--no-fund", ...(dev ? [] : ["--omit=dev"])];
  const status = run("npm", args, quiet ? { stdio: ["ignore", 2, 2] } : {});
  if (status !== 0) fail("The packages could not be installed. Is the npm registry reachable? Then call again.");
  writeFileSync(stamp, JSON.stringify({ lock, dev }));
}

/** Newest change among the sources, cheap enough to look at before every call. */
function newestSource() {
  let newest = 0;
  const visit = (path) => {
    const stat = statSync(path);
    if (stat.isDirectory()) for (const name of readdirSync(path)) visit(join(path, name));
    else newest = Math.max(newest, stat.mtimeMs);
  };
  for (const name of ["src", "edge", "web", "vite.cli.config.ts", "package.json"]) {
    const path = join(ROOT, name);
    if (existsSync(path)) visit(path);
  }
  return newest;
}

const STAMP = join(ROOT, "dist", "built.json");

export function ensureBuilt({ quiet = false } = {}) {
  const newest = newestSource();
  if (existsSync(STAMP) && JSON.parse(readFileSync(STAMP, "utf8")).newest === newest) return;
  if (!quiet) process.stderr.write("Building...\n");
  build(quiet);
  mkdirSync(dirname(STAMP), { recursive: true });
  writeFileSync(STAMP, JSON.stringify({ newest }));
}

function build(quiet) {
  const output = quiet ? { stdio: ["ignore", "ignore", 2] } : { stdio: ["ignore", 2, 2] };
  for (const config of ["vite.cli.config.ts", "web/vite.config.ts"]) {
    if (!existsSync(join(ROOT, config))) continue;
    const status = runTool(
      "vite/bin/vite.js",
      ["build", "--logLevel", "warn", "--config", config, ...(config.startsWith("web/") ? ["web"] : [])],
      output,
    );
    if (status !== 0) fail(`The build failed (${config}).`);
  }
}
