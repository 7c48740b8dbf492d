/** The page over the real job room: the demo answered, a real recording dropped, a packed one, one that can't be used. */
import { readFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { appService } from "../../edge/service.ts";
import { type BrowserApp, startBrowserApp } from "./browser-app.ts";

let app: BrowserApp;
beforeAll(async () => {
  app = await startBrowserApp(appService("0.0.0"));
}, 120_000);
afterAll(() => app?.close());

const DRIVE = readFileSync(new URL("../recordings/kit-obd/idle-town-and-road.csv", import.meta.url));

async function ask(page: Page, name: string, buffer: Buffer): Promise<void> {
  await page.getByRole("button", { name: "New job" }).click();
  await page.locator('input[type="file"]').first().setInputFiles({ name, mimeType: "text/csv", buffer });
  await page.getByLabel("Displacement, all cylinders").fill("1970 cm3");
  await page.getByLabel("Cylinders", { exact: false }).nth(1).fill("4");
  await page.getByLabel("Fuel needed").selectOption("diesel");
  await page.getByLabel("What the engine computer doses fuel by").selectOption("pedal");
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
