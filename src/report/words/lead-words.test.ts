import { describe, expect, it } from "vitest";
import { DIESEL } from "../fixtures/diesel.ts";
import { HEALTHY } from "../fixtures/healthy.ts";
import { LEAK } from "../fixtures/leak.ts";
import { finding } from "../fixtures/shared.ts";
import { leadWords } from "./lead-words.ts";

const plain = (text: string | null) => text?.replaceAll("\u202f", " ");

describe("the numbers of the answer", () => {
  it("are size, interval and chance of the one cause that leads", () => {
    expect(plain(leadWords(LEAK))).toBe("Area 3.5 mm², between 2.2 and 5.0, chance 9 in 10.");
  });

  it("are told for each of a group, with the chance of the group first", () => {
    const likely = { ...DIESEL, result: { ...DIESEL.result, answer: "likely" as const } };
    expect(plain(leadWords(likely))).toMatch(
      /^Together 8 in 10: EGR valve stuck open \(area 140 mm², between 70 and 230; 5 in 10\); or meter reads low/,
    );
  });

  it("tell a ratio by its distance from one, and where it holds", () => {
    const size = { name: "error at 70 % of the largest flow", value: -0.12, unit: "1", low90: -0.18, high90: -0.06 };
    const findings = [finding("meter-fouled", 0.9, { sizes: [size] })];
    const fouled = { ...LEAK, result: { ...LEAK.result, findings, explanations: [] } };
    expect(plain(leadWords(fouled))).toBe(
      "Size −12 % at 70 % of the largest flow, between −18 and −6, chance 9 in 10.",
    );
  });

  it("are the chance alone of a healthy engine, and none of an open answer, whose summary tells them", () => {
    expect(leadWords(HEALTHY)).toBe("Chance: 96 in 100.");
    expect(leadWords(DIESEL)).toBeNull();
  });
});
