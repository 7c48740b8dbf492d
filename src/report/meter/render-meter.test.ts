import { describe, expect, it } from "vitest";
import { meterAmbient } from "../../job/meter/ambient.ts";
import { meterBench } from "../../job/meter/bench.ts";
import { meterConvert } from "../../job/meter/convert.ts";
import { meterCurve } from "../../job/meter/curve.ts";
import { meterFit } from "../../job/meter/fit.ts";
import { benchSheet, CURVE_CSV, kingPointsCsv } from "../../job/meter/test-support/examples.ts";
import type { AmbientSheet, MeterConversion, MeterResult } from "../../job/meter-result.ts";
import type { Result } from "../../quantities/index.ts";
import { typeset } from "../words/typeset.ts";
import { renderMeterHtml } from "./render-meter-html.tsx";
import { renderMeterText } from "./render-meter-text.ts";

const toolVersion = "0.0.0";
const file = { name: "invented.csv", text: CURVE_CSV };

function done<Value>(result: Result<Value>): Value {
  if (!result.ok) throw new Error(result.message);
  return result.value;
}

const CONVERT: MeterConversion = done(
  meterConvert({
    file,
    kind: "vane",
    signals: ["2", "4.4"],
    flows: ["30 g/s"],
    air: { pressure: "90 kPa" },
    uncertainty: { curveError: "1 %", pressureError: "1 kPa" },
    toolVersion,
  }),
);
const AMBIENT: AmbientSheet = done(meterAmbient({ file: null, kind: "vane", options: {}, toolVersion }));
const ALL: readonly (readonly [string, MeterResult])[] = [
  ["convert", CONVERT],
  ["curve", done(meterCurve({ file, kind: "hot-wire", air: {}, rows: 9, toolVersion }))],
  ["ambient, vane", AMBIENT],
  ["ambient, film", done(meterAmbient({ file: null, kind: "hot-film", options: {}, toolVersion }))],
  ["fit", done(meterFit({ file: { name: "points.csv", text: kingPointsCsv() }, toolVersion })).sheet],
  ["bench", done(meterBench({ file: { name: "s.json", text: JSON.stringify(benchSheet()) }, toolVersion })).sheet],
];
const text = (result: MeterResult, width = 96) => renderMeterText(result, { width });

describe("renderMeterText", () => {
  it.each(ALL)("begins with the sentence and stays within the width (%s)", (_, result) => {
    for (const width of [60, 80, 110]) {
      const lines = text(result, width).trimEnd().split("\n");
      expect(lines.join(" ").startsWith(result.headline.slice(0, 40))).toBe(true);
      // a table is not broken; everything else is
      const prose = lines.filter((line) => !/\s{3}/.test(line) && !line.startsWith("  "));
      expect(Math.max(...prose.map((line) => line.length))).toBeLessThanOrEqual(width);
      expect(lines.length).toBeLessThanOrEqual(75);
    }
  });

  it.each(ALL)("writes no number that is none, and nothing that is not printed plainly (%s)", (_, result) => {
    expect(text(result)).not.toMatch(/NaN|Infinity|undefined|\[object|\u202f/);
    expect(text(result)).not.toContain(String.fromCharCode(27));
  });

  it("prints signal, mass, interval and where it lies", () => {
    const told = text(CONVERT);
    expect(told).toMatch(/2 V +18\.\d+ +18\.\d+ to 19\.\d+ +67\.9/);
    expect(told).toMatch(/4\.4 V .*above the curve/);
    expect(told).toMatch(/is uncertain by: curve, relative \d+ %/);
    expect(told).toContain("90 kPa (stated)");
  });

  it("draws the curve in plain characters with its points", () => {
    const told = text(ALL[1]![1]);
    const drawing = told.split("\n").filter((line) => /^ *\d* \|/.test(line));
    expect(drawing).toHaveLength(12);
    expect(drawing.join("").match(/o/g)).toHaveLength(4);
    expect(drawing.every((line) => /^[ -~]*$/.test(line))).toBe(true);
    // it rises: each line's first dot stands further right than that of the line below
    const firsts = drawing.map((line) => line.search(/[.o]/)).filter((at) => at >= 0);
    expect([...firsts].sort((a, b) => b - a)).toEqual(firsts);
  });

  it("tells altitude by what is corrected, and tilt by the flap", () => {
    const told = text(AMBIENT);
    expect(told).toMatch(/altitude +nothing corrected +temperature corrected +both corrected/);
    expect(told).toMatch(/2,000 m +\+10 % +\+13 % +0 %/);
    expect(told).toMatch(/torque added +flap 10 % open/);
    const film = text(ALL[3]![1]);
    expect(film).toMatch(/altitude +reading/);
    expect(film).not.toMatch(/torque/);
  });

  it("says that the flap hangs open rather than a number", () => {
    const options = { flapTorque: "100 %", tilts: "-40 deg", preload: "10 %" };
    expect(text(done(meterAmbient({ file: null, kind: "vane", options, toolVersion })))).toContain("flap hangs open");
  });
});

describe("renderMeterHtml", () => {
  it.each(ALL)("is one page that fetches and runs nothing (%s)", (_, result) => {
    const html = renderMeterHtml({ result, date: "24 November 2026" });
    expect(html.startsWith('<!doctype html>\n<html lang="en">')).toBe(true);
    expect(html).toContain("default-src &#x27;none&#x27;");
    expect(html).not.toMatch(/<script|<link|<img|<iframe|<object|<embed|\bsrc=|\bhref=|@import|url\(|https?:/i);
    expect(html).not.toMatch(/NaN|Infinity|undefined|\[object/);
    expect(html).toContain("24 November 2026");
    expect(html).toContain("0.0.0");
  });

  it.each(ALL)("says the sentence, every warning, and names what cannot be seen in a picture (%s)", (_, result) => {
    const html = renderMeterHtml({ result });
    const plain = (words: string) => typeset(words).replaceAll("'", "&#x27;");
    expect(html).toContain(plain(result.headline));
    for (const warning of result.warnings) expect(html).toContain(plain(warning.text));
    const pictures = html.match(/class="tally-picture"/g) ?? [];
    expect(html.match(/role="img" aria-label="[^"]{30,}"/g) ?? []).toHaveLength(pictures.length);
    expect(pictures.length).toBeGreaterThan(0);
  });

  it("draws line, band and a mark for each point, hollow beyond the curve", () => {
    const html = renderMeterHtml({ result: CONVERT });
    expect(html).toMatch(/class="chart-line dash-0" d="M[^"]{500,}"/);
    expect(html).toMatch(/class="band-area chart-band" d="M[^"]{500,}Z"/);
    expect(html.match(/class="mark mark-filled" d="M-3\.5/g)).toHaveLength(2);
    expect(html.match(/class="mark mark-open" d="M-3\.5/g)).toHaveLength(1);
  });

  it("draws altitude, heat and, of a vane, tilt, each with its lines", () => {
    const panels = (result: MeterResult) => renderMeterHtml({ result }).match(/class="panel"/g)?.length;
    expect(panels(AMBIENT)).toBe(3);
    expect(panels(ALL[3]![1])).toBe(2);
    expect(renderMeterHtml({ result: AMBIENT }).match(/class="chart-line dash-\d" d="M\d[^"]*L/g)).toHaveLength(9);
  });

  it("shows hostile file names as text", () => {
    const hostile = '"><script>alert(1)</script><img src=x>';
    for (const [, result] of ALL) {
      const named =
        "meter" in result ? { ...result, meter: { ...result.meter, file: hostile } } : { ...result, file: hostile };
      const html = renderMeterHtml({ result: named as MeterResult, title: hostile, date: hostile });
      expect(html).not.toContain("<script");
      expect(html).not.toContain("<img");
      expect(html).toContain("&lt;script&gt;");
    }
  });
});
