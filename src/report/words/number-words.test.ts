import { describe, expect, it } from "vitest";
import { formatDuration, formatInterval, formatNumber, formatPercent, formatUnit, withSign } from "./number-words.ts";

const plain = (text: string) => text.replaceAll("\u202f", " ");

describe("formatNumber", () => {
  it.each([
    [0, "0"],
    [3.456, "3.46"],
    [0.05, "0.05"],
    [-0.5, "\u22120.5"],
    [1234.5, "1,230"],
    [999.6, "1,000"],
    [0.00001234, "1.23e\u22125"],
    [2.5e8, "2.5e8"],
    [Number.NaN, "not a number"],
    [Number.NEGATIVE_INFINITY, "\u2212\u221e"],
  ])("writes %d as %s", (value, text) => {
    expect(formatNumber(value)).toBe(text);
  });
});

describe("formatInterval", () => {
  it("gives value and both ends the same decimals, two digits of the half width", () => {
    expect(formatInterval(3.512, 2.2, 5.0)).toEqual({ value: "3.5", low: "2.2", high: "5.0" });
    expect(formatInterval(140.3, 70, 230)).toEqual({ value: "140", low: "70", high: "230" });
    expect(formatInterval(-0.5, -0.7, -0.3)).toEqual({ value: "\u22120.5", low: "\u22120.7", high: "\u22120.3" });
  });

  it("falls back to three digits where the interval has no width", () => {
    expect(formatInterval(3.456, 3.456, 3.456)).toEqual({ value: "3.46", low: "3.46", high: "3.46" });
  });
});

describe("percent, sign, unit and duration", () => {
  it("keeps a tenth below ten per cent and none above, with a true minus sign and a narrow space", () => {
    expect(formatPercent(-0.131)).toBe("\u221213\u202f%");
    expect(plain(formatPercent(0.004))).toBe("+0.4 %");
    expect(plain(formatPercent(0.0996))).toBe("+10 %");
    expect(plain(formatPercent(0.02, false))).toBe("2 %");
  });

  it("puts a sign before everything but nought", () => {
    expect(["3", "\u22123", "0"].map(withSign)).toEqual(["+3", "\u22123", "0"]);
  });

  it("raises the power of a unit and drops the unit 1", () => {
    expect(["mm2", "cm3", "degC", "m3/h", "g/s", "1"].map(formatUnit)).toEqual(["mm²", "cm³", "°C", "m³/h", "g/s", ""]);
  });

  it("tells a time as people do", () => {
    expect([2.5, 48, 725, 120, 3870].map((s) => plain(formatDuration(s)))).toEqual([
      "2.5 s",
      "48 s",
      "12 min 5 s",
      "2 min",
      "1 h 4 min",
    ]);
  });
});
