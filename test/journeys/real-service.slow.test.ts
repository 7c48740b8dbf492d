/** The page over the real job room: the demo answered, a real recording dropped, a packed one, one that can't be used. */
import { readFileSync } from "node:fs";
import { Worker } from "node:worker_threads";
import { gzipSync } from "node:zlib";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { appService } from "../../edge/service.ts";
import { threadedService } from "../../edge/threaded-service.ts";
import { simulate } from "../../src/job/index.ts";
import { type BrowserApp, startBrowserApp } from "./browser-app.ts";

/** The thread as it is built; how many have ended, and how many checks were handed to one. */
const THREAD = new URL("../../dist/cli/work-thread.js", import.meta.url);
let ended = 0;
let begun = 0;
const service = threadedService(appService("0.0.0"), () => {
  const worker = new Worker(THREAD, { workerData: "0.0.0" });
  worker.once("exit", () => {
    ended += 1;
  });
  return worker;
});

let app: BrowserApp;
beforeAll(async () => {
  app = await startBrowserApp({
    ...service,
    check: (request, signal) => {
      begun += 1;
      return service.check(request, signal);
    },
  });
}, 120_000);
afterAll(async () => {
  await app?.close();
  await service.close();
});

const DRIVE = readFileSync(new URL("../recordings/kit-obd/idle-town-and-road.csv", import.meta.url));

async function fill(page: Page, name: string, buffer: Buffer): Promise<void> {
  await page.getByRole("button", { name: "New job" }).click();
  await page.locator('input[type="file"]').first().setInputFiles({ name, mimeType: "text/csv", buffer });
  await page.getByLabel("Displacement, all cylinders").fill("1970 cm3");
  await page.getByLabel("Cylinders", { exact: false }).nth(1).fill("4");
  await page.getByLabel("Fuel needed").selectOption("diesel");
  await page.getByLabel("What the engine computer doses fuel by").selectOption("pedal");
}

async function ask(page: Page, name: string, buffer: Buffer): Promise<void> {
  await fill(page, name, buffer);
  await page.getByRole("button", { name: "Check this engine" }).click();
}

it("answers the demo with its invented leak", async () => {
  const { page, complaints } = await app.open({ width: 1440, scheme: "light" });
  expect(await page.locator(".stamp").textContent()).toMatch(/likely/i);
  expect(await page.locator("body").textContent()).toContain("Air enters after the throttle");
  expect(complaints).toEqual([]);
});

it("takes a real recording, plain or packed, to a card that accuses no meter and tells of recirculation", async () => {
  for (const [name, bytes] of [
    ["drive.csv", DRIVE],
    ["drive.csv.gz", gzipSync(DRIVE)],
  ] as const) {
    const { page } = await app.open({ width: 1440, scheme: "light" });
    await ask(page, name, bytes);
    await page.waitForFunction(() => document.body.textContent?.includes("manifold pressure suggests by"), null, {
      timeout: 30_000,
    });
    expect(await page.locator(".stamp").textContent()).toMatch(/open/i);
    expect(await page.locator("body").textContent()).toContain(name);
  }
});

it("says what is wrong with a file that can't be used, and what to do", async () => {
  const { page } = await app.open({ width: 390, scheme: "dark" });
  await ask(page, "prose.csv", Buffer.from("Dear reader,\nthis is no recording.\n"));
  const notice = page.getByRole("alert").first();
  await notice.waitFor({ timeout: 30_000 });
  expect(await notice.textContent()).toContain("prose.csv");
});

it("ends a long check when it is cancelled, and answers the next one", async () => {
  const long = simulate({ protocol: "road", duration: "40 min", rate: "50" }, "0.0.0");
  if (!long.ok) throw new Error(long.message);
  const { page } = await app.open({ width: 1440, scheme: "light" });
  const described = page.waitForResponse("**/api/describe", { timeout: 60_000 });
  await fill(page, "long.csv", Buffer.from(long.value.recording));
  await described;
  const [before, checks] = [ended, begun];
  await page.getByRole("button", { name: "Check this engine" }).click();
  await expect.poll(() => begun, { timeout: 30_000 }).toBe(checks + 1);
  await page.getByRole("button", { name: "Cancel" }).click();
  expect(await page.getByRole("status").first().textContent()).toContain("Cancelled");
  await expect.poll(() => ended, { timeout: 5000 }).toBe(before + 1);
  const next = await app.open({ width: 1440, scheme: "light" });
  await ask(next.page, "drive.csv", DRIVE);
  await next.page.waitForFunction(() => document.body.textContent?.includes("manifold pressure suggests by"), null, {
    timeout: 60_000,
  });
}, 180_000);
