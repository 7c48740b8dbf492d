import { describe, expect, it } from "vitest";
import { CATALOGUE } from "../../findings/index.ts";
import { causeSize } from "./cause-sizes.ts";
import { tellExclusion, tellSize } from "./size-words.ts";

const plain = (text: string | null) => text?.replaceAll("\u202f", " ").replaceAll("\u2212", "-");
const excluded = (cause: string, beyond: [number, number], unit: string) =>
  plain(tellExclusion({ cause, beyond, unit }, "Title"));

describe("tellSize", () => {
  it("tells an amount in its unit", () => {
    const told = tellSize("manifold-leak", { name: "area", value: 3.5, unit: "mm2", low90: 2.2, high90: 5 });
    expect([plain(told.value), plain(told.interval)]).toEqual(["3.5 mm²", "2.2 to 5.0"]);
  });

  it("tells a ratio as its distance from one, in per cent", () => {
    const told = tellSize("meter-scaled", { name: "ratio", value: 0.81, unit: "1", low90: 0.72, high90: 0.93 });
    expect([plain(told.value), plain(told.interval)]).toEqual(["-19 %", "-28 to -7"]);
  });

  it("tells a second size by its own unit", () => {
    const flow = tellSize("fuel-supply-limited", { name: "fuel", value: 2.6, unit: "g/s", low90: 2, high90: 3.1 });
    expect(plain(flow.value)).toBe("2.6 g/s");
    const at30 = tellSize("meter-curve-wrong", { name: "at 30 %", value: 0.15, unit: "1", low90: 0.1, high90: 0.2 });
    expect(plain(at30.value)).toBe("+15 %");
  });

  it("signs what has a direction", () => {
    const told = tellSize("map-biased", { name: "bias", value: 4, unit: "kPa", low90: -1, high90: 9 });
    expect([plain(told.value), plain(told.interval)]).toEqual(
      ["+4.0 kPa", "-1.0 to +9.0"].map((t) => t.replaceAll(".0", "")),
    );
  });
});

describe("tellExclusion", () => {
  it("tells both sides of what can be high or low", () => {
    expect(excluded("map-biased", [-2.5, 3], "kPa")).toBe(
      "manifold pressure reading more than 2.5 kPa low or 3 kPa high",
    );
    expect(excluded("meter-scaled", [0.97, 1.05], "1")).toBe("meter reading more than 3 % low or 5 % high");
    expect(excluded("lambda-biased", [-0.03, 0.04], "1")).toBe("probe reading more than 0.03 low or 0.04 high");
  });

  it("says less than, where nothing of one sign remains", () => {
    expect(excluded("map-biased", [0.5, 3], "kPa")).toBe(
      "manifold pressure reading less than 0.5 kPa high or more than 3 kPa high",
    );
  });

  it("says at all, where an end is as good as nought", () => {
    expect(excluded("meter-scaled", [0.84, 0.9996], "1")).toBe("meter reading more than 16 % low or high at all");
    expect(excluded("lambda-biased", [0.0019, 0.17], "1")).toBe("probe reading low at all or more than 0.17 high");
  });

  it("tells only the far end of what has one direction", () => {
    expect(excluded("manifold-leak", [0.02, 0.9], "mm2")).toBe("hole after the throttle larger than 0.9 mm²");
    expect(excluded("breathing-reduced", [-0.06, -0.001], "1")).toBe(
      "breathing reduced by more than 6 % at the largest flow",
    );
    expect(excluded("meter-fouled", [-0.08, -0.001], "1")).toBe(
      "meter reading low by more than 8 % at 70 % of the largest flow",
    );
  });

  it("tells of what is left of a flow only how little is ruled out", () => {
    expect(excluded("egr-low-flow", [0.6, 1], "1")).toBe("EGR flow less than 60 % of what is expected");
    expect(excluded("fuel-supply-limited", [0, 0.12], "1")).toBe(
      "fuel supply falling more than 12 % at the largest flow",
    );
    expect(excluded("intake-restricted", [0, 4], "kPa")).toBe(
      "filter and duct losing more than 4 kPa beyond a sound one's at the largest flow",
    );
  });

  it("has words for every cause of the catalogue", () => {
    for (const { id } of CATALOGUE) expect(causeSize(id, "Title").noun, id).not.toBe("Title");
  });

  it("falls back to the title for a cause that has no words yet", () => {
    expect(excluded("some-new-cause", [-1, 2], "V")).toBe("Title more than 1 V low or 2 V high");
  });

  it("says nothing where neither end is a number", () => {
    expect(tellExclusion({ cause: "map-biased", beyond: [-1e300, 1e300], unit: "kPa" }, "T")).toBeNull();
  });
});
