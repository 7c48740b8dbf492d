// npm run --silent airtally -- ARGS: the command line from a checkout, built if stale. Files are named from where npm was called.
import { join } from "node:path";
import { ensureBuilt, ensurePackages, ROOT, requireNode, run } from "./setup.mjs";

requireNode();
ensurePackages({ dev: false, quiet: true });
ensureBuilt({ quiet: true });
process.exitCode = run(process.execPath, [join(ROOT, "dist/cli/airtally.js"), ...process.argv.slice(2)], {
  cwd: process.env.INIT_CWD ?? process.cwd(),
});
