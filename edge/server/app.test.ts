import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { FIXTURE_SERVICE } from "../../test/journeys/fixture-service.ts";
import { createApp } from "./app.ts";
import { APP_HEADER, FIELD } from "./contract.ts";

const BASE = "http://127.0.0.1:4100";
const OWN = { [APP_HEADER]: "1" };

let folder = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "airtally-static-"));
  writeFileSync(join(folder, "index.html"), "<title>built page</title>");
});
afterAll(() => rmSync(folder, { recursive: true }));

const app = (over: Partial<Parameters<typeof createApp>[0]> = {}) =>
  createApp({ service: FIXTURE_SERVICE, version: "1.2.3", staticFolder: null, ...over });

function upload(parts: { readonly [field: string]: string | File }): FormData {
  const form = new FormData();
  for (const [field, value] of Object.entries(parts)) form.append(field, value);
  return form;
}

const recording = (text: string, name = "a.csv") => new File([text], name);

const post = (path: string, body: FormData, headers: Record<string, string> = OWN, over = {}) =>
  app(over).request(BASE + path, { method: "POST", body, headers });

describe("what the server answers", () => {
  it("gives the demo with its outcome, saying that it is invented", async () => {
    const answer = await (await app().request(`${BASE}/api/demo`)).json();
    expect(answer.note).toContain("invented");
    expect(answer.outcome.result.format).toBe("airtally-result/1");
  });

  it("calculates the demo once", async () => {
    let times = 0;
    const counting = {
      ...FIXTURE_SERVICE,
      demo: () => {
        times += 1;
        return FIXTURE_SERVICE.demo();
      },
    };
    const server = app({ service: counting });
    await server.request(`${BASE}/api/demo`);
    await server.request(`${BASE}/api/demo`);
    expect(times).toBe(1);
  });

  it("calculates the demo once for two who ask at the same time, and again where it failed", async () => {
    let times = 0;
    const late = {
      ...FIXTURE_SERVICE,
      demo: async () => {
        times += 1;
        await new Promise((resolve) => setTimeout(resolve, 5));
        if (times === 1) throw new Error("the first time");
        return FIXTURE_SERVICE.demo();
      },
    };
    const server = app({ service: late });
    expect((await server.request(`${BASE}/api/demo`)).status).toBe(500);
    const both = await Promise.all([server.request(`${BASE}/api/demo`), server.request(`${BASE}/api/demo`)]);
    expect(both.map((response) => response.status)).toEqual([200, 200]);
    expect(times).toBe(2);
  });

  it("tells the check when nobody waits for it any more", async () => {
    const abort = new AbortController();
    const seen: (AbortSignal | undefined)[] = [];
    const service = {
      ...FIXTURE_SERVICE,
      check: (...[request, signal]: Parameters<typeof FIXTURE_SERVICE.check>) => {
        seen.push(signal);
        abort.abort();
        return FIXTURE_SERVICE.check(request);
      },
    };
    const body = upload({ [FIELD.engine]: "{}", [FIELD.recording]: recording("x") });
    const request = new Request(`${BASE}/api/check`, { method: "POST", body, headers: OWN, signal: abort.signal });
    await app({ service }).request(request);
    expect(seen.map((signal) => signal?.aborted)).toEqual([true]);
  });

  it("hands the bytes of every recording, the engine and the channel list to the check", async () => {
    const seen: unknown[] = [];
    const service = {
      ...FIXTURE_SERVICE,
      check: (request: Parameters<typeof FIXTURE_SERVICE.check>[0]) => {
        seen.push(
          request.recordings.map((r) => [r.name, [...r.bytes]]),
          request.engineText,
          request.channelsText,
        );
        return FIXTURE_SERVICE.check(request);
      },
    };
    const form = upload({ [FIELD.engine]: "{}", [FIELD.channels]: "list" });
    form.append(FIELD.recording, new File([new Uint8Array([0, 255, 10])], "x.bin"));
    form.append(FIELD.recording, recording("b", "b.csv"));
    const response = await post("/api/check", form, OWN, { service });
    expect(response.status).toBe(200);
    expect(seen).toEqual([
      [
        ["x.bin", [0, 255, 10]],
        ["b.csv", [98]],
      ],
      "{}",
      "list",
    ]);
  });

  it("answers 422 with message, place and remedy where a recording cannot be used", async () => {
    const response = await post("/api/check", upload({ [FIELD.engine]: "{}", [FIELD.recording]: recording("") }));
    expect(response.status).toBe(422);
    expect(await response.json()).toEqual({
      error: {
        reason: "empty-file",
        message: "The file holds nothing.",
        remedy: "Save the recording again.",
        where: { file: "a.csv" },
      },
    });
  });

  it("answers 400 where a part is missing or the body is no form", async () => {
    const statuses = [
      await post("/api/check", upload({ [FIELD.engine]: "{}" })),
      await post("/api/check", upload({ [FIELD.recording]: recording("x") })),
      await app().request(`${BASE}/api/check`, { method: "POST", body: "{}", headers: OWN }),
      await app().request(`${BASE}/api/check`, {
        method: "POST",
        body: "broken",
        headers: { ...OWN, "content-type": "multipart/form-data; boundary=x" },
      }),
    ].map((response) => response.status);
    expect(statuses).toEqual([400, 400, 400, 400]);
  });

  it("describes each recording by itself, so that one bad file does not hide a good one", async () => {
    const form = upload({ [FIELD.recording]: recording("x", "good.csv") });
    form.append(FIELD.recording, recording("", "bad.csv"));
    const answer = await (await post("/api/describe", form)).json();
    expect(answer.recordings.map((r: { ok: boolean }) => r.ok)).toEqual([true, false]);
  });

  it("refuses more than its limit with 413, whether or not the length is announced", async () => {
    const form = () => upload({ [FIELD.engine]: "{}", [FIELD.recording]: recording("x".repeat(5000)) });
    const response = await post("/api/check", form(), OWN, { uploadLimit_bytes: 2000 });
    expect(response.status).toBe(413);
    expect((await response.json()).error.remedy).toContain("airtally check");
    const announced = await post("/api/check", form(), { ...OWN, "content-length": "999999999" }, {});
    expect(announced.status).toBe(413);
  });

  it("gives the report of an answered check as one file, and 404 for one no longer kept", async () => {
    const server = app();
    const form = upload({ [FIELD.engine]: "{}", [FIELD.recording]: recording("x") });
    const { id } = await (
      await server.request(`${BASE}/api/check`, { method: "POST", body: form, headers: OWN })
    ).json();
    const report = await server.request(`${BASE}/api/reports/${id}?title=My%20%3Cjob%3E`);
    expect(report.headers.get("content-disposition")).toContain("attachment");
    const html = await report.text();
    expect(html).toContain("<h1>My &lt;job&gt;</h1>");
    expect((await server.request(`${BASE}/api/reports/99`)).status).toBe(404);
  });

  it("tells a fault of its own without a stack, and reports it to the side", async () => {
    const faults: Error[] = [];
    const service = {
      ...FIXTURE_SERVICE,
      check: () => {
        throw new Error("secret path /home/someone");
      },
    };
    const form = upload({ [FIELD.engine]: "{}", [FIELD.recording]: recording("x") });
    const response = await post("/api/check", form, OWN, { service, onFault: (e: Error) => faults.push(e) });
    expect(response.status).toBe(500);
    expect(await response.text()).not.toContain("secret");
    expect(faults.map((e) => e.message)).toEqual(["secret path /home/someone"]);
  });
});

describe("who the server answers", () => {
  it.each([
    ["another name", { host: "evil.example" }],
    ["another name with a port", { host: "evil.example:4100" }],
    ["a name that begins like ours", { host: "127.0.0.1.evil.example" }],
    ["a page from elsewhere", { host: "127.0.0.1:4100", "sec-fetch-site": "cross-site" }],
    ["a page of a neighbour", { host: "127.0.0.1:4100", "sec-fetch-site": "same-site" }],
    ["another origin", { host: "127.0.0.1:4100", origin: "http://127.0.0.1:9999" }],
    ["an origin that is none", { host: "127.0.0.1:4100", origin: "null" }],
  ])("refuses %s", async (_, headers) => {
    for (const path of ["/api/demo", "/api/reports/1", "/"]) {
      expect((await app({ staticFolder: folder }).request(BASE + path, { headers })).status).toBe(403);
    }
  });

  it.each([
    ["its own page", { "sec-fetch-site": "same-origin", origin: BASE }],
    ["a person who types the address", { "sec-fetch-site": "none" }],
    ["the other names of this machine", { host: "localhost:4100" }],
  ])("answers %s", async (_, headers) => {
    expect((await app().request(`${BASE}/api/demo`, { headers })).status).toBe(200);
  });

  it("lets a link lead to the start page, and to nothing else", async () => {
    const headers = { "sec-fetch-site": "cross-site", "sec-fetch-mode": "navigate" };
    const server = app({ staticFolder: folder });
    expect((await server.request(`${BASE}/`, { headers })).status).toBe(200);
    expect((await server.request(`${BASE}/api/demo`, { headers })).status).toBe(403);
  });

  it("refuses a POST without the header of the app", async () => {
    const form = upload({ [FIELD.engine]: "{}", [FIELD.recording]: recording("x") });
    expect((await post("/api/check", form, {})).status).toBe(403);
  });
});

describe("the page and its headers", () => {
  it("serves the built page, and nothing outside its folder", async () => {
    const server = app({ staticFolder: folder });
    expect(await (await server.request(`${BASE}/`)).text()).toContain("built page");
    for (const path of [
      "/../package.json",
      "/%2e%2e/package.json",
      "/..%2fpackage.json",
      "/%5c..%5cpackage.json",
      "/none.js",
    ]) {
      expect((await server.request(BASE + path)).status).toBe(404);
    }
  });

  it("forbids everything from elsewhere, on answers and refusals alike", async () => {
    const server = app({ staticFolder: folder });
    for (const [path, host] of [
      ["/", "127.0.0.1"],
      ["/api/demo", "127.0.0.1"],
      ["/", "evil.example"],
    ] as const) {
      const response = await server.request(BASE + path, { headers: { host } });
      expect(response.headers.get("content-security-policy")).toContain("default-src 'none'");
      expect(response.headers.get("x-content-type-options")).toBe("nosniff");
      expect(response.headers.get("access-control-allow-origin")).toBeNull();
    }
  });
});
