import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { FAMILIES, PLANTABLE } from "../../src/model-engine/index.ts";
import { airtally, folderWith } from "./command-line.ts";
import { examplesOf, wordsOf } from "./document-examples.ts";

const simulate = (folder: string, ...args: readonly string[]) => airtally(folder, "simulate", ...args);
const SHORT = ["--protocol", "idle", "--duration", "66s"];

/** Words and layout alone: a better model engine moves every figure. */
const shapeOf = (text: string) =>
  text
    .replace(/[−+-]?\d[\d.,]*(?:e[−-]?\d+)?/g, "#")
    .replace(/[ \u202f]+/g, " ")
    .replace(/ #$/gm, "");

describe("docs/simulate.md", () => {
  const { calls } = examplesOf("simulate.md");
  const folder = folderWith({});

  // In their order: what one call writes, a later one reads.
  it.each(calls)("$call prints what it says", ({ call, out }) => {
    const ended = airtally(folder, ...wordsOf(call));
    expect(ended).toMatchObject({ status: 0, err: "" });
    if (out !== "...\n") expect(shapeOf(ended.out)).toBe(shapeOf(out));
  });

  it("shows a leak that the check then finds, of its size", () => {
    const result = JSON.parse(readFileSync(join(folder, "leak-result.json"), "utf8"));
    expect(result.findings[0].cause).toBe("manifold-leak");
    expect(result.findings[0].probability).toBeGreaterThan(0.5);
    const [{ low90, high90 }] = result.findings[0].sizes;
    expect([low90 < 3.5, high90 > 3.5]).toEqual([true, true]);
  });
});

describe("a recording of an invented engine", () => {
  it("is said to be invented in every file, and tells its faults in truth and JSON alone", () => {
    const folder = folderWith({});
    const files = { out: "r.csv", "engine-out": "e.json", truth: "t.csv", json: "s.json" };
    const named = Object.entries(files).flatMap(([option, file]) => [`--${option}`, file]);
    const ended = simulate(folder, ...SHORT, "--fault", "misfire=0.05", ...named);
    expect(ended).toMatchObject({ status: 0, err: "" });
    expect(ended.out).toMatch(/^Invented/);
    for (const file of Object.values(files)) {
      const text = readFileSync(join(folder, file), "utf8");
      expect(text, file).toMatch(/[Ii]nvented/);
      expect(/misfire/.test(text), file).toBe(file === "t.csv" || file === "s.json");
    }
  });

  it("goes to standard output alone when it is asked to, also where the reader has had enough", () => {
    const folder = folderWith({});
    const first = simulate(folder, ...SHORT, "--out", "-");
    expect(first.out).toMatch(/^# Invented/);
    expect(simulate(folder, ...SHORT, "--out", "-").out).toBe(first.out);
    expect(simulate(folder, ...SHORT, "--out", "-", "--json", "-")).toMatchObject({ status: 2, out: "" });
  });

  it("names all there is: families, faults with unit and meaning, as text and as data", () => {
    const folder = folderWith({});
    const listed = simulate(folder, "--list");
    expect(listed).toMatchObject({ status: 0, err: "" });
    for (const name of [...FAMILIES, ...Object.keys(PLANTABLE)]) expect(listed.out).toContain(name);
    const data = JSON.parse(simulate(folder, "--list", "--json", "-").out);
    expect(data.families.map((row: { family: string }) => row.family)).toEqual([...FAMILIES]);
    const help = simulate(folder, "--help");
    expect(help.status).toBe(0);
    for (const option of ["--fault", "--list", "--truth", "--json", "--force"]) expect(help.out).toContain(option);
  });
});

describe("a call that is off ends with status 2 and writes nothing", () => {
  it.each<readonly [string, RegExp]>([
    ["--family petrol", /no family "petrol".*petrol-with-meter/],
    ["--fault manifold-leak", /manifold-leak=3\.5 mm2/],
    ["--fault vane-tilted=0.1", /needs a vane meter.*--list/],
    ["--duration 5s", /too short.*longer/],
    ["--altitude 9000m", /0 m to 2500 m/],
    ["--recorder notebook", /Allowed choices/],
    ["--altitud 100m", /unknown option/],
    ["--list", /no recording to write/],
    ["--engine-out t.csv", /another output of this call/],
    ["--json nowhere/x.json", /Make the folder first/],
    ["extra", /too many arguments/],
  ])("%s", (words, message) => {
    const folder = folderWith({});
    const ended = simulate(folder, ...SHORT, ...wordsOf(words), "--out", "r.csv", "--truth", "t.csv");
    expect({ status: ended.status, out: ended.out }).toEqual({ status: 2, out: "" });
    expect(ended.err).toMatch(message);
    expect(ended.err).not.toMatch(/\n\s+at /);
    for (const file of ["r.csv", "t.csv"]) expect(existsSync(join(folder, file))).toBe(false);
  });

  it("an existing file is left as it is without --force", () => {
    const folder = folderWith({ "r.csv": "mine" });
    expect(simulate(folder, ...SHORT, "--out", "r.csv").err).toMatch(/exists.*--force/);
    expect(readFileSync(join(folder, "r.csv"), "utf8")).toBe("mine");
    expect(simulate(folder, ...SHORT, "--out", "r.csv", "--force").status).toBe(0);
    expect(readFileSync(join(folder, "r.csv"), "utf8")).toMatch(/^# Invented/);
  });
});
