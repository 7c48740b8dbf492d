import { describe, expect, test } from "vitest";
import { MAX_LINE_BYTES, openRecordingReader, readRecording } from "../../src/recording/index.ts";
import { READ_WITH_WARNING, REFUSED } from "./zoo.ts";

describe("what is no recording is refused with a reason, a place and a remedy, and soon", () => {
  for (const { title, bytes, reason, line } of REFUSED) {
    test(title, () => {
      const input = bytes();
      const before = performance.now();
      const result = readRecording(input, { name: "zoo.csv" });
      expect(performance.now() - before).toBeLessThan(1_000);
      expect(result).toMatchObject({
        ok: false,
        reason,
        where: line === undefined ? { file: "zoo.csv" } : { file: "zoo.csv", line },
      });
      if (result.ok) return;
      expect(result.message).toMatch(/\.$/);
      expect(result.remedy).toMatch(/\.$/);
    });
  }

  test("a line that is too long is refused while it arrives, before the rest is there", () => {
    const reader = openRecordingReader({ name: "zoo.csv" });
    const chunk = new Uint8Array(1_000_000).fill(0x31);
    let pushed = 0;
    while (reader.push(chunk) === null && pushed < 40) pushed++;
    expect(pushed * chunk.length).toBeLessThan(MAX_LINE_BYTES + 2 * chunk.length);
    expect(reader.finish()).toMatchObject({ ok: false, reason: "line-too-long" });
  });

  test("no pattern of marks makes the reader slow: 2 s per MB at most, whatever stands in the lines", () => {
    const pieces = [
      "(",
      "[",
      '"',
      "'",
      ",",
      ";",
      "1.",
      "1,",
      " ",
      "\t",
      "-",
      "#",
      "a(",
      '";"',
      "1 ",
      "e1",
      ":",
      "\u00c2",
    ];
    for (const piece of pieces) {
      const line = piece.repeat(Math.floor(250_000 / piece.length));
      const bytes = new TextEncoder().encode(`t;n\n0;1\n${line}\n1;2\n2;3\n${line}\n${line}\n3;4\n`);
      const before = performance.now();
      readRecording(bytes, { name: "zoo.csv" });
      readRecording(new TextEncoder().encode(`${line}\n${line}\n`), { name: "zoo.csv" });
      expect(performance.now() - before, JSON.stringify(piece)).toBeLessThan(2_000);
    }
  });

  test("a file beyond the limit is refused before a byte of it is read", () => {
    const reader = openRecordingReader({ name: "zoo.csv", size: 2_000_000_001 });
    expect(reader.push(new TextEncoder().encode("a,b\n1,2\n"))).toMatchObject({ reason: "too-large" });
  });
});

describe("what is damaged is read with a warning that names the line, and nothing else is lost", () => {
  for (const { title, text, warning, rows } of READ_WITH_WARNING) {
    test(title, () => {
      const result = readRecording(new TextEncoder().encode(text), {
        name: "zoo.csv",
        ...(warning === "no-header" ? { rate: 10 } : {}),
      });
      if (!result.ok) throw new Error(result.message);
      expect(result.value.rows).toBe(rows);
      expect(result.value.warnings.map((w) => w.code)).toContain(warning);
      if (warning !== "no-header" && warning !== "words-among-numbers") {
        expect(result.value.warnings.find((w) => w.code === warning)?.text).toMatch(/line \d/);
      }
    });
  }
});
