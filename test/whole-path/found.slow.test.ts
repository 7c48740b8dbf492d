// From a recording of an invented leak to "proven" by workshop checks, through the built command line.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import type { AirtallyResult } from "../../src/job/result.ts";
import { airtally, folderWith } from "./command-line.ts";
import { examplesOf } from "./document-examples.ts";

const FOUND = examplesOf("found-file.md").files["found.json"]!;
const smoke = (result: string) =>
  JSON.stringify({ format: "airtally-found/1", found: [{ check: "smoke-test", result }] });

let folder: string;
beforeAll(() => {
  folder = folderWith({ "found.json": FOUND, "tight.json": smoke("tight"), "typo.json": smoke("smoke-at-manifol") });
  const made = airtally(
    folder,
    "simulate",
    "--fault",
    "manifold-leak=3.5mm2",
    "--out",
    "r.csv",
    "--engine-out",
    "e.json",
  );
  expect(made.err).toBe("");
}, 60_000);

function check(...more: readonly string[]) {
  return airtally(folder, "check", "r.csv", "--engine", "e.json", ...more);
}

function resultOf(...more: readonly string[]): AirtallyResult {
  return JSON.parse(check("--json", "-", ...more).out) as AirtallyResult;
}

const chance = (result: AirtallyResult, cause: string) => result.findings.find((f) => f.cause === cause)!.probability;

describe("a leak", () => {
  it("is likely by the recording, and a check is proposed that may settle it", () => {
    const result = resultOf();
    expect(result.answer).not.toBe("proven");
    expect(result.nextChecks.length).toBeGreaterThan(3);
    expect(result.nextChecks.length).toBeLessThanOrEqual(8);
    expect(result.nextChecks.find((c) => c.check === "smoke-test")!.settles).toContain("manifold-leak");
    const rates = result.nextChecks.map((c) => c.informationBits / c.minutes);
    expect(rates).toEqual([...rates].sort((a, b) => b - a));
  });

  it("is proven by the checks of the document, which are not proposed again", () => {
    const result = resultOf("--found", "found.json");
    expect(result.answer).toBe("proven");
    expect(chance(result, "manifold-leak")).toBeGreaterThan(0.95);
    expect(result.nextChecks.map((c) => c.check)).not.toContain("smoke-test");
    const text = check("--found", "found.json").out;
    expect(text).toMatch(/^PROVEN\. Air enters after the throttle/);
    expect(text).toMatch(/A workshop check settled it: smoke test/);
  });

  it("loses its odds where smoke finds nothing, as it should by the table", () => {
    const [before, after] = [resultOf(), resultOf("--found", "tight.json")];
    const odds = (result: AirtallyResult) => chance(result, "manifold-leak") / result.healthyProbability;
    // 3.5 mm2: seen in some 90 of 100, so that the odds against healthy fall about sevenfold
    expect(odds(before) / odds(after)).toBeGreaterThan(3);
    expect(odds(before) / odds(after)).toBeLessThan(15);
  });

  it("is shown on the page with the checks made and those proposed", () => {
    expect(check("--found", "found.json", "--report", "card.html").status).toBe(0);
    const html = readFileSync(join(folder, "card.html"), "utf8");
    for (const words of ["Checks made", "Next checks", "smoke after the throttle", "its odds rose"])
      expect(html).toContain(words);
  });
});

describe("a found file", () => {
  it("with a slip ends with status 3, its place and the nearest word", () => {
    const ended = check("--found", "typo.json");
    expect(ended.status).toBe(3);
    expect(ended.err).toMatch(/typo\.json: .*entry 1.*Did you mean "smoke-at-manifold"/);
    expect(ended.out).toBe("");
  });

  it("that is not there ends with status 2, and is never written over", () => {
    expect(check("--found", "none.json").status).toBe(2);
    const ended = check("--found", "found.json", "--json", "found.json", "--force");
    expect({ status: ended.status, err: ended.err }).toMatchObject({ status: 2, err: expect.stringMatching(/input/) });
    expect(readFileSync(join(folder, "found.json"), "utf8")).toBe(FOUND);
  });
});

describe("airtally card", () => {
  it("prints the standard recording, as text, as a page and as data", () => {
    const text = airtally(folder, "card");
    expect(text.status).toBe(0);
    expect(text.out).toMatch(/^THE STANDARD RECORDING/);
    expect(airtally(folder, "card", "--html", "c.html", "--json", "c.json").status).toBe(0);
    expect(JSON.parse(readFileSync(join(folder, "c.json"), "utf8")).format).toBe("airtally-card/1");
    expect(readFileSync(join(folder, "c.html"), "utf8")).toContain("The standard recording");
    expect(airtally(folder, "card", "--html", "c.html").status).toBe(2);
  });
});
