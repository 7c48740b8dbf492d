import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { openRecordingReader, type Recording, readRecording } from "./index.ts";

const bytesOf = (text: string) => new TextEncoder().encode(text);

/** A number as loggers write it, under one of two decimal marks. */
const numberText = (mark: "." | ",") =>
  fc
    .tuple(
      fc.constantFrom("", "-", "+"),
      fc.oneof(fc.integer({ min: 0, max: 99_999 }), fc.integer({ min: 0, max: Number.MAX_SAFE_INTEGER })),
      fc.option(fc.stringMatching(/^\d{0,17}$/)),
      fc.option(fc.tuple(fc.constantFrom("e", "E"), fc.constantFrom("", "+", "-"), fc.integer({ min: 0, max: 30 })), {
        freq: 6,
      }),
    )
    .map(([sign, whole, fraction, exponent]) => {
      const decimals = fraction === null ? "" : `${mark}${fraction}`;
      return `${sign}${whole}${decimals}${exponent === null ? "" : exponent.join("")}`;
    });

const cell = (mark: "." | ",") =>
  fc.oneof(
    { weight: 12, arbitrary: numberText(mark) },
    { weight: 2, arbitrary: fc.constant("") },
    { weight: 1, arbitrary: fc.constantFrom("n/a", "---", "NaN", "ON", "12:30", "\u22125", "1 2", '"7"', " 8 ") },
  );

const table = fc
  .record({
    mark: fc.constantFrom("." as const, "," as const),
    delimiter: fc.constantFrom(";", "\t", "|", "  "),
    ending: fc.constantFrom("\n", "\r\n", "\r"),
    trailing: fc.boolean(),
    columns: fc.integer({ min: 2, max: 6 }),
    states: fc.boolean(),
    glued: fc.constantFrom("", "", " rpm", "°C"),
    quoted: fc.boolean(),
  })
  .chain((layout) =>
    fc.record({
      layout: fc.constant(layout),
      words: fc.array(fc.constantFrom("open", "closed", "closed", "n/a", "", "7", "Öl an", ' "x" ', "a\0b"), {
        minLength: 30,
        maxLength: 30,
      }),
      rows: fc.array(fc.array(cell(layout.mark), { minLength: layout.columns, maxLength: layout.columns }), {
        minLength: 3,
        maxLength: 30,
      }),
    }),
  )
  .map(({ layout, rows, words }) => {
    const header = ["Time [s]", ...Array.from({ length: layout.columns }, (_, i) => `Signal ${i}`)];
    const table = [header, ...rows.map((cells, i) => [`${i}`, ...cells])];
    // Between spaces an empty cell can't be seen.
    if (layout.delimiter === "  ")
      for (const cells of table) for (const [c, text] of cells.entries()) if (text === "") cells[c] = "0";
    for (const cells of table.slice(1)) if (cells[1] !== "" && layout.delimiter !== "  ") cells[1] += layout.glued;
    const wide = table.map((cells, i) => (layout.states ? [...cells, i === 0 ? "State" : words[i - 1]!] : cells));
    const quote = (text: string) => (layout.quoted && !text.includes('"') ? `"${text}"` : text);
    const lines = wide.map((cells) => cells.map(quote).join(layout.delimiter));
    return lines.map((line) => line + (layout.trailing ? layout.delimiter : "")).join(layout.ending) + layout.ending;
  });

/** Everything of a recording but the share of rows each reader took. */
function comparable(result: ReturnType<typeof readRecording>) {
  if (!result.ok) return result;
  const { fastShare: _, ...rest } = result.value;
  return {
    ...rest,
    lines: [...rest.lines],
    time: rest.time === null ? null : { ...rest.time, seconds: [...rest.time.seconds] },
    columns: rest.columns.map((column) => ({ ...column, values: [...column.values], quality: [...column.quality] })),
  };
}

describe("two readers and any cut into chunks give the same recording", () => {
  test("the scanner and the careful reader agree on every cell, warning and reason", () => {
    let scanned = 0;
    let rows = 0;
    fc.assert(
      fc.property(table, (text) => {
        const fast = readRecording(bytesOf(text), { name: "x" });
        const careful = readRecording(bytesOf(text), { name: "x", scanner: false });
        expect(comparable(fast)).toEqual(comparable(careful));
        if (fast.ok) {
          scanned += fast.value.fastShare * fast.value.rows;
          rows += fast.value.rows;
        }
      }),
      { numRuns: 300 },
    );
    expect(scanned).toBeGreaterThan(0.1 * rows);
    expect(scanned).toBeLessThan(rows);
  });

  test("a recording does not depend on where its bytes are cut into chunks", () => {
    fc.assert(
      fc.property(table, fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 10 }), (text, sizes) => {
        const bytes = bytesOf(text);
        const reader = openRecordingReader({ name: "x" });
        for (let at = 0, i = 0; at < bytes.length; i++) {
          const size = sizes[i % sizes.length]!;
          reader.push(bytes.subarray(at, at + size));
          at += size;
        }
        expect(comparable(reader.finish())).toEqual(comparable(readRecording(bytes, { name: "x" })));
      }),
      { numRuns: 150 },
    );
  });

  test("chunks smaller and larger than the head of the file give the same rows", () => {
    const rows = Array.from({ length: 30_000 }, (_, i) => `${i / 10},${i % 977},${(i * 7) % 1013}.5`);
    const bytes = bytesOf(`t,a,b\n${rows.join("\n")}\n`);
    const whole = readRecording(bytes, { name: "x" });
    for (const size of [1_000, 65_536, 300_001]) {
      const reader = openRecordingReader({ name: "x" });
      for (let at = 0; at < bytes.length; at += size) reader.push(bytes.subarray(at, at + size));
      const chunked = reader.finish();
      expect(chunked.ok && whole.ok && sameColumns(chunked.value, whole.value)).toBe(true);
    }
  });
});

function sameColumns(a: Recording, b: Recording): boolean {
  return (
    a.rows === b.rows &&
    a.columns.every((column, c) => column.values.every((value, i) => Object.is(value, b.columns[c]!.values[i]!)))
  );
}

describe("numbers", () => {
  test("every double written in full is read back bit for bit", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ noNaN: true, noDefaultInfinity: true }), { minLength: 3, maxLength: 30 }),
        (numbers) => {
          const text = `t;x\n${numbers.map((x, i) => `${i};${x}`).join("\n")}\n`;
          const result = readRecording(bytesOf(text), { name: "x" });
          if (!result.ok) throw new Error(result.message);
          const values = result.value.columns[1]!.values;
          expect([...values]).toEqual(numbers.map((x) => x + 0)); // -0 is written as 0
        },
      ),
      { numRuns: 200 },
    );
  });
});
