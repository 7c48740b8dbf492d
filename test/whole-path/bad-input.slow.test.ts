import { existsSync, linkSync, readFileSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { airtally, engineFile, folderWith, plainRecording } from "./command-line.ts";

/** Status 3, a message that names the file and says what to do, no stack, nothing on standard output. */
function expectRefusal(
  ended: { status: number | null; out: string; err: string },
  status: number,
  ...words: readonly (string | RegExp)[]
) {
  expect({ status: ended.status, err: ended.err }).toMatchObject({ status });
  for (const word of words) expect(ended.err).toMatch(word);
  expect(ended.err).not.toMatch(/\n\s+at /);
  expect(ended.out).toBe("");
}

function checkOf(recording: string | Uint8Array, engine = engineFile(), name = "r.csv") {
  return airtally(folderWith({ [name]: recording, "e.json": engine }), "check", name, "--engine", "e.json");
}

describe("input that cannot be used ends with status 3, its place and what to do", () => {
  it("an empty file", () => expectRefusal(checkOf(""), 3, "r.csv", /empty/i));
  it("a binary file", () =>
    expectRefusal(checkOf(Uint8Array.from({ length: 5000 }, (_, i) => (i * 37) % 256)), 3, "r.csv"));
  it("a header without rows", () =>
    expectRefusal(checkOf("time [s],engine speed [rpm],manifold pressure [kPa]\n"), 3, "r.csv"));
  it("no witness of the air", () =>
    expectRefusal(checkOf(plainRecording(["coolant temperature [degC]"])), 3, "r.csv", /witness/i));
  it("an engine that never runs", () => {
    const rows = Array.from({ length: 200 }, (_, i) => `${i},0,101,20`).join("\n");
    expectRefusal(
      checkOf(`time [s],engine speed [rpm],manifold pressure [kPa],intake air temperature [degC]\n${rows}\n`),
      3,
      "r.csv",
      /never runs/,
    );
  });
  it("too many columns, refused early", () => {
    const wide = Array.from({ length: 10_001 }, (_, i) => `c${i}`).join(",");
    expectRefusal(checkOf(`${wide}\n${wide.replaceAll("c", "")}\n`), 3, "r.csv", /10,?000/);
  });
  it("one line of 50 MB, refused in time", () => {
    const from = Date.now();
    expectRefusal(checkOf(new Uint8Array(50e6).fill(0x31)), 3, "r.csv", /line/i);
    expect(Date.now() - from).toBeLessThan(10_000);
  });
  it("a file that is no recording but prose", () =>
    expectRefusal(checkOf("Dear reader,\nthis is a letter.\nYours\n"), 3, "r.csv"));
  it("an unknown key of the engine file, with the nearest known one", () => {
    const typo = engineFile().replace('"displacement"', '"displacment"');
    expectRefusal(checkOf(plainRecording(), typo), 3, "e.json", /displacment/, /"displacement"/);
  });
  it("an unknown key deep in the engine file", () => {
    expectRefusal(
      checkOf(plainRecording(), engineFile({ site: { barometr: "99 kPa" } })),
      3,
      "e.json",
      /site/,
      /"barometer"/,
    );
  });
  it("an engine file that is not JSON, with line and column", () => {
    expectRefusal(
      checkOf(plainRecording(), '{ "format": "airtally-engine/1",\n  "cylinders": 4,,\n}'),
      3,
      "e.json",
      /line 2/,
    );
  });
  it("a quantity without unit, with another unit, or with no number", () => {
    for (const displacement of ["1600", "1600 kPa", "big"])
      expectRefusal(checkOf(plainRecording(), engineFile({ displacement })), 3, "e.json", displacement);
  });
  it("a two-stroke engine, with the reason", () =>
    expectRefusal(checkOf(plainRecording(), engineFile({ strokes: 2 })), 3, "e.json", /two-stroke/));
});

describe("a call that is off ends with status 2", () => {
  const folder = folderWith({ "r.csv": plainRecording(), "e.json": engineFile(), "other.csv": "keep me" });
  const run = (...args: readonly string[]) => airtally(folder, ...args);

  it("a recording or engine file that is not there", () => {
    expectRefusal(run("check", "gone.csv", "--engine", "e.json"), 2, "gone.csv");
    expectRefusal(run("check", "r.csv", "--engine", "gone.json"), 2, "gone.json");
  });
  it("an unknown option or command, or no engine file", () => {
    expect(run("check", "r.csv", "--engin", "e.json").status).toBe(2);
    expect(run("chek").status).toBe(2);
    expect(run("check", "r.csv").status).toBe(2);
  });
  it("an output on an input, also through links, even with --force", () => {
    symlinkSync(join(folder, "r.csv"), join(folder, "link.json"));
    linkSync(join(folder, "r.csv"), join(folder, "hard.json"));
    const before = readFileSync(join(folder, "r.csv"), "utf8");
    for (const target of ["r.csv", "./r.csv", "link.json", "hard.json"]) {
      expectRefusal(run("check", "r.csv", "--engine", "e.json", "--json", target, "--force"), 2, target, /overwritten/);
    }
    expectRefusal(run("check", "r.csv", "--engine", "e.json", "--report", "e.json", "--force"), 2, "e.json");
    expect(readFileSync(join(folder, "r.csv"), "utf8")).toBe(before);
  });
  it("an existing output without --force, which is left alone; with it, it is replaced", () => {
    expectRefusal(run("check", "r.csv", "--engine", "e.json", "--json", "other.csv"), 2, "other.csv", /--force/);
    expect(readFileSync(join(folder, "other.csv"), "utf8")).toBe("keep me");
    expect(run("check", "r.csv", "--engine", "e.json", "--json", "other.csv", "--force").status).toBe(0);
    expect(JSON.parse(readFileSync(join(folder, "other.csv"), "utf8")).format).toBe("airtally-result/1");
  });
  it("an output in a folder that is not there", () => {
    expectRefusal(run("check", "r.csv", "--engine", "e.json", "--json", "nowhere/x.json"), 2, "nowhere");
    expect(existsSync(join(folder, "nowhere"))).toBe(false);
  });
});

describe("what is odd but usable is used, and said", () => {
  it("a file cut in a row is read up to the cut", () => {
    const whole = plainRecording();
    const ended = checkOf(whole.slice(0, Math.floor(whole.length * 0.8) - 3));
    expect(ended.status).toBe(0);
  });
  it("a column of text does no harm", () => {
    const withText = plainRecording()
      .split("\n")
      .map((line, i) => (line === "" ? line : `${line},${i === 0 ? "remark" : "fine"}`))
      .join("\n");
    expect(checkOf(withText).status).toBe(0);
  });
  it("one witness is no error: status 0, no cause above its prior, and which channel to add", () => {
    const folder = folderWith({ "r.csv": plainRecording(), "e.json": engineFile() });
    const ended = airtally(folder, "check", "r.csv", "--engine", "e.json", "--json", "-");
    expect(ended.status).toBe(0);
    const result = JSON.parse(ended.out);
    expect(result.answer).toBe("open");
    for (const finding of result.findings)
      expect(finding.probability).toBeLessThanOrEqual(finding.priorProbability * (1 + 1e-6));
    expect(result.warnings.map((w: { code: string }) => w.code)).toContain("one-witness");
    expect(result.warnings.find((w: { code: string }) => w.code === "one-witness").text).toMatch(/Record the .* too/);
  });
});

describe("help and version", () => {
  it("are there everywhere, with status 0", () => {
    const folder = folderWith({});
    expect(airtally(folder, "--version")).toMatchObject({ status: 0, out: expect.stringMatching(/^\d+\.\d+\.\d+\n$/) });
    for (const command of ["check", "describe", "engine-template", "open"]) {
      const help = airtally(folder, command, "--help");
      expect(help.status).toBe(0);
      expect(help.out).toContain("--json");
    }
  });
});
