/** The built page in a real browser, served by the real server over the invented fixtures, for the journeys beside it. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { build } from "vite";
import { type AppService, createApp, type Listening, listen } from "../../edge/server/index.ts";

export type BrowserApp = {
  readonly url: string;
  /** a page of its own context, with what the browser complained about */
  readonly open: (look: Look) => Promise<{ page: Page; complaints: string[]; requests: string[] }>;
  readonly close: () => Promise<void>;
};

export type Look = { readonly width: number; readonly scheme: "light" | "dark" };

const ARGUMENTS = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

export async function startBrowserApp(service: AppService): Promise<BrowserApp> {
  const staticFolder = mkdtempSync(join(tmpdir(), "airtally-web-"));
  const web = fileURLToPath(new URL("../../web", import.meta.url));
  // Under a test runner this builds React's development version, whose complaints the journeys listen for.
  await build({ root: web, logLevel: "error", build: { outDir: staticFolder, emptyOutDir: true } });
  const faults: Error[] = [];
  const app = createApp({ service, version: "0.0.0", staticFolder, onFault: (error) => faults.push(error) });
  const server: Listening = await listen(app, 47_400);
  const browser: Browser = await chromium.launch({
    executablePath: process.env.CHROMIUM_PATH ?? "/usr/bin/chromium",
    args: ARGUMENTS,
  });
  const contexts: BrowserContext[] = [];
  return {
    url: server.url,
    async open({ width, scheme }) {
      const context = await browser.newContext({ viewport: { width, height: 900 }, colorScheme: scheme });
      contexts.push(context);
      const page = await context.newPage();
      const complaints: string[] = [];
      const requests: string[] = [];
      page.on("pageerror", (error) => complaints.push(error.message));
      page.on("console", (message) => {
        if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
      });
      page.on("request", (request) => requests.push(request.url()));
      await page.goto(server.url);
      await page.waitForSelector(".stamp");
      return { page, complaints, requests };
    },
    async close() {
      for (const context of contexts) await context.close();
      await browser.close();
      await server.close();
      rmSync(staticFolder, { recursive: true });
      if (faults[0] !== undefined) throw faults[0];
    },
  };
}
