// npm start: installs, builds and opens the local app with the demo job answered.
import { ensureBuilt, ensurePackages, requireNode, run } from "./setup.mjs";

requireNode();
ensurePackages({ dev: false });
ensureBuilt();
process.exitCode = run(process.execPath, ["dist/cli/airtally.js", "open", ...process.argv.slice(2)]);
