// Finds the browser that the journeys drive: one that is there, else Debian's package where it may be installed.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { fail } from "./setup.mjs";

const PLACES = [
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/snap/bin/chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe",
];

export function ensureBrowser() {
  const named = process.env.CHROMIUM_PATH;
  if (named !== undefined && !existsSync(named))
    fail(`CHROMIUM_PATH names ${named}, which is not there. Correct or unset it.`);
  const found = named ?? PLACES.find((path) => existsSync(path));
  if (found !== undefined) return found;
  if (existsSync("/usr/bin/apt-get") && process.getuid?.() === 0) {
    process.stderr.write("Installing Debian's chromium for the browser tests (once)...\n");
    const quiet = {
      stdio: ["ignore", "ignore", "inherit"],
      env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    };
    spawnSync("apt-get", ["update"], quiet);
    spawnSync("apt-get", ["install", "-y", "--no-install-recommends", "chromium"], quiet);
    if (existsSync(PLACES[0])) return PLACES[0];
  }
  return fail(
    [
      "The browser tests need Chromium, and none was found. Do one of these and call again:",
      "  - Debian or Ubuntu: sudo apt-get install chromium",
      "  - have Chrome, Chromium or Edge elsewhere: set CHROMIUM_PATH to its program file",
    ].join("\n"),
  );
}
