import { createServer, type Server } from "node:http";
import { afterEach, describe, expect, it } from "vitest";
import { FIXTURE_SERVICE } from "../../test/journeys/fixture-service.ts";
import { createApp } from "./app.ts";
import { listen } from "./listen.ts";
import { browserCommand } from "./open-browser.ts";

const app = createApp({ service: FIXTURE_SERVICE, version: "1.2.3", staticFolder: null });
const closers: (() => Promise<unknown>)[] = [];
afterEach(async () => {
  for (const close of closers.splice(0)) await close();
});

/** A server of somebody else on a free port. */
async function occupy(): Promise<number> {
  const server: Server = createServer((_, response) => response.end("somebody else"));
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  closers.push(() => new Promise((resolve) => server.close(resolve)));
  const address = server.address();
  return typeof address === "object" && address !== null ? address.port : 0;
}

describe("listen", () => {
  it("takes the next free port where its own is in use, and answers there", async () => {
    const taken = await occupy();
    const listening = await listen(app, taken);
    closers.push(listening.close);
    expect(listening.port).toBeGreaterThan(taken);
    const about = await fetch(`${listening.url}api/about`);
    expect((await about.json()).version).toBe("1.2.3");
  });

  it("answers nobody after it was closed", async () => {
    const listening = await listen(app, 47_310);
    await listening.close();
    await expect(fetch(listening.url)).rejects.toThrow();
  });
});

describe("browserCommand", () => {
  const url = "http://127.0.0.1:4100/";

  it("opens the browser of each system", () => {
    expect(browserCommand(url, { platform: "darwin", environment: {} })?.[0]).toBe("open");
    expect(browserCommand(url, { platform: "win32", environment: {} })?.slice(0, 3)).toEqual(["cmd", "/c", "start"]);
    expect(browserCommand(url, { platform: "linux", environment: { DISPLAY: ":0" } })).toEqual(["xdg-open", url]);
  });

  it("opens nothing on a build machine or without a display", () => {
    expect(browserCommand(url, { platform: "darwin", environment: { CI: "true" } })).toBeNull();
    expect(browserCommand(url, { platform: "linux", environment: {} })).toBeNull();
  });
});
