import { describe, expect, it } from "vitest";
import { chanceWords } from "./chance-words.ts";

describe("chanceWords", () => {
  it.each([
    [0, "fewer than 1 in 1000"],
    [0.00049, "fewer than 1 in 1000"],
    [0.0006, "1 in 1000"],
    [0.004, "4 in 1000"],
    [0.0094, "9 in 1000"],
    [0.012, "1 in 100"],
    [0.06, "6 in 100"],
    [0.094, "9 in 100"],
    [0.1, "1 in 10"],
    [0.46, "5 in 10"],
    [0.906, "9 in 10"],
    [0.95, "95 in 100"],
    [0.985, "99 in 100"],
    [0.997, "997 in 1000"],
    [0.9996, "more than 999 in 1000"],
    [1, "more than 999 in 1000"],
  ])("says %d as %s", (probability, words) => {
    expect(chanceWords(probability)).toBe(words);
  });

  it("never says less for a greater probability", () => {
    const told = (p: number) => {
      const words = chanceWords(p);
      const [, count, of] = /(\d+) in (\d+)/.exec(words) ?? [];
      return Number(count) / Number(of) + (words.startsWith("more") ? 1e-9 : words.startsWith("fewer") ? -1e-9 : 0);
    };
    for (let k = 1; k <= 20_000; k++) expect(told(k / 20_000)).toBeGreaterThanOrEqual(told((k - 1) / 20_000));
  });

  it("refuses what is no probability", () => {
    expect(() => chanceWords(1.2)).toThrow(/between 0 and 1/);
    expect(() => chanceWords(Number.NaN)).toThrow(/between 0 and 1/);
  });
});
