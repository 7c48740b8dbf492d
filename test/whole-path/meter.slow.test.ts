import { existsSync, readFileSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { airtally, type Ended, engineFile, folderWith } from "./command-line.ts";
import { examplesOf, wordsOf } from "./document-examples.ts";

const CURVE = "# air: 101325 Pa, 293.15 K\nsignal [V],flow [g/s]\n1,2\n2,20\n3,70\n4,180\n";
const BAD = "signal [V],flow [g/s]\n1,2\n2,20\n3,twelve\n";
const SHEET = JSON.stringify({
  format: "airtally-bench-sheet/1",
  reference: { kind: "master-meter", uncertainty: "0.5 %" },
  uncertainties: { leak: "0.1 %", signal: "2 mV" },
  rows: [20, 40, 80, 120].map((flow, i) => ({
    pressure: "100 kPa",
    temperature: "22 degC",
    humidity: "40 %",
    masterFlow: `${flow} g/s`,
    signal: `${1.5 + 0.3 * i} V`,
  })),
});
const FILES = { "curve.csv": CURVE, "bad.csv": BAD, "sheet.json": SHEET, "e.json": engineFile() };

const meter = (folder: string, ...args: readonly string[]) => airtally(folder, "meter", ...args);
const fresh = () => folderWith(FILES);

function expectRefusal(ended: Ended, status: number, ...words: readonly (string | RegExp)[]) {
  expect({ status: ended.status, err: ended.err }).toMatchObject({ status });
  for (const word of words) expect(ended.err).toMatch(word);
  expect(ended.err).toMatch(/^airtally: |^error: /);
  expect(ended.err).not.toMatch(/\n\s+at /);
  expect(ended.out).toBe("");
}

describe("docs/meter.md", () => {
  const { files, calls } = examplesOf("meter.md");
  const folder = folderWith(files);

  it("shows every sub-command", () => {
    const shown = new Set(calls.map(({ call }) => wordsOf(call)[1]));
    expect([...shown].sort()).toEqual(["ambient", "bench", "convert", "curve", "fit"]);
  });

  // In their order: what one call writes, a later one reads.
  it.each(calls)("$call prints what it says", ({ call, out }) => {
    const ended = airtally(folder, ...wordsOf(call));
    expect(ended).toMatchObject({ status: 0, err: "" });
    expect(ended.out).toBe(out);
  });
});

describe("answers", () => {
  const calls: { readonly [kind: string]: readonly string[] } = {
    convert: ["convert", "curve.csv", "2.5", "--kind", "vane"],
    curve: ["curve", "curve.csv"],
    ambient: ["ambient", "curve.csv", "--kind", "vortex"],
    fit: ["fit", "sheet.json"],
    bench: ["bench", "sheet.json"],
  };

  it.each(Object.entries(calls))("%s writes its answer as JSON and as a page, and prints it", (kind, args) => {
    const folder = fresh();
    const ended = meter(folder, ...args, "--json", "a.json", "--report", "a.html");
    expect({ status: ended.status, err: ended.err }).toEqual({ status: 0, err: "" });
    const answer = JSON.parse(readFileSync(join(folder, "a.json"), "utf8"));
    expect(answer).toMatchObject({ format: "airtally-meter/1", kind });
    expect(ended.out.replaceAll("\n", " ")).toContain(answer.headline);
    const html = readFileSync(join(folder, "a.html"), "utf8");
    expect(html).toMatch(/^<!doctype html>/);
    expect(html).toContain('class="card meter-page"');
    expect(html).toMatch(/\.chart-line\s*\{/);
    const again = meter(folder, ...args, "--json", "-");
    expect(JSON.parse(again.out)).toEqual(answer);
  });

  it("bench hands its points to fit, and fit its curve to convert", () => {
    const folder = fresh();
    expect(meter(folder, "bench", "sheet.json", "--points-out", "p.csv").status).toBe(0);
    const fit = meter(folder, "fit", "p.csv", "--law", "polynomial-2", "--curve-out", "c.json", "--csv-out", "c.csv");
    expect(fit.status).toBe(0);
    for (const curve of ["c.json", "c.csv"]) {
      const ended = meter(folder, "convert", curve, "1.8 V", "--kind", "hot-film", "--json", "-");
      expect(ended.status).toBe(0);
      expect(Math.abs(JSON.parse(ended.out).signals[0].massFlow_g_per_s - 40)).toBeLessThan(1.5);
    }
  });

  it("help is there for each, with status 0", () => {
    const folder = fresh();
    for (const command of [[], ...Object.keys(calls).map((kind) => [kind])]) {
      const help = meter(folder, ...command, "--help");
      expect(help.status).toBe(0);
      expect(help.out).toContain("Usage: airtally meter");
      if (command.length > 0)
        for (const option of ["--json", "--report", "--force"]) expect(help.out).toContain(option);
    }
  });
});

describe("a call that is off ends with status 2", () => {
  it("a file that is not there", () => {
    for (const kind of ["convert", "curve", "ambient", "fit", "bench"])
      expectRefusal(meter(fresh(), kind, "gone.csv"), 2, "gone.csv", /no such file/);
  });

  it("an option that cannot be, an unknown one, and no sub-command", () => {
    const folder = fresh();
    expectRefusal(meter(folder, "convert", "curve.csv", "2"), 2, /kind/);
    expectRefusal(meter(folder, "convert", "curve.csv", "2 Hz", "--kind", "vane"), 2, /not a signal of this meter/);
    expectRefusal(meter(folder, "convert", "curve.csv", "2", "--kind", "vane", "--pressure", "95"), 2, /no unit/);
    expectRefusal(meter(folder, "curve", "curve.csv", "--rows", "many"), 2, /rows/);
    expectRefusal(meter(folder, "curve", "curve.csv", "--kind", "carburettor"), 2, /Allowed choices/);
    expectRefusal(meter(folder, "fit", "curve.csv", "--law", "spline"), 2, /Allowed choices/);
    expectRefusal(meter(folder, "ambient", "--kind", "vane", "--altitude", "2000 m"), 2, /unknown option/);
    expect(meter(folder).status).toBe(2);
    expect(meter(folder, "convrt").status).toBe(2);
  });

  it("an output on the input, also through a link, and an existing file without --force", () => {
    const folder = fresh();
    symlinkSync(join(folder, "curve.csv"), join(folder, "link.csv"));
    for (const target of ["curve.csv", "link.csv"])
      for (const option of ["--json", "--report"])
        expectRefusal(meter(folder, "curve", "curve.csv", option, target, "--force"), 2, /would be overwritten/);
    expectRefusal(
      meter(folder, "fit", "sheet.json", "--curve-out", "sheet.json", "--force"),
      2,
      /would be overwritten/,
    );
    expectRefusal(meter(folder, "fit", "sheet.json", "--curve-out", "o", "--csv-out", "o"), 2, /another output/);
    expect(readFileSync(join(folder, "curve.csv"), "utf8")).toBe(CURVE);
    expectRefusal(meter(folder, "curve", "curve.csv", "--json", "bad.csv"), 2, /exists/);
    expect(readFileSync(join(folder, "bad.csv"), "utf8")).toBe(BAD);
    expect(meter(folder, "curve", "curve.csv", "--json", "bad.csv", "--force").status).toBe(0);
  });
});

describe("a file that cannot be used ends with status 3, its place and what to do", () => {
  it("a bad curve, with its line", () => {
    for (const kind of ["curve", "fit"])
      expectRefusal(meter(fresh(), kind, "bad.csv"), 3, /bad\.csv, line 4: .*no number/);
  });

  it("an engine file without a curve, a sheet where a curve is wanted, a curve where a sheet is wanted", () => {
    const folder = fresh();
    expectRefusal(meter(folder, "curve", "e.json"), 3, "e.json", /no curve/);
    expectRefusal(meter(folder, "curve", "sheet.json"), 3, "sheet.json", /not a meter's curve/);
    expectRefusal(meter(folder, "bench", "curve.csv"), 3, "curve.csv", /not JSON/);
  });

  it("a misspelt key of a sheet, with the nearest known one", () => {
    const folder = folderWith({ "sheet.json": SHEET.replace('"leak"', '"laek"') });
    expectRefusal(meter(folder, "bench", "sheet.json"), 3, "sheet.json", /laek/, /"leak"/);
  });

  it("writes nothing when it refuses", () => {
    const folder = fresh();
    meter(folder, "fit", "bad.csv", "--curve-out", "c.json", "--json", "a.json", "--report", "a.html");
    for (const name of ["c.json", "a.json", "a.html"]) expect(existsSync(join(folder, name))).toBe(false);
  });
});
