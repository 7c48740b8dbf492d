// npm test: installs what the tests need (a browser too), checks, builds, and runs every test.
import { ensureBrowser } from "./browser.mjs";
import { ensureBuilt, ensurePackages, requireNode, run, runTool } from "./setup.mjs";

requireNode();
ensurePackages({ dev: true });
const browser = ensureBrowser();
const verified = run(process.execPath, ["scripts/verify.mjs"]);
if (verified !== 0) process.exit(verified);
ensureBuilt();
process.exitCode = runTool("vitest/vitest.mjs", ["run"], {
  env: { ...process.env, AIRTALLY_SLOW: "1", CHROMIUM_PATH: browser },
});
