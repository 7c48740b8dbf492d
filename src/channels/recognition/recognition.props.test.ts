import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type InventedColumns, tableOf, understand } from "../test-support/understand.ts";

const wave = (low: number, high: number) => (row: number) => low + ((high - low) * (1 - Math.cos(row / 9))) / 2;
const columns: InventedColumns = {
  "Engine Speed [1/min]": (row) => Math.round(wave(800, 4000)(row)),
  "Saugrohrdruck [mbar]": (row) => wave(280, 980)(row).toFixed(1),
  "Débit d'air (g/s)": (row) => wave(3, 60)(row).toFixed(2),
  "Temperatura del refrigerante (°C)": (row) => Math.round(wave(70, 90)(row)),
  "STFT B1 [%]": (row) => wave(-4, 6)(row).toFixed(2),
  "Signal 9": (row) => row % 7,
  "Lambda Ist": (row) => wave(0.95, 1.05)(row).toFixed(3),
};
const names = Object.keys(columns);
const summary = (picked: InventedColumns) =>
  understand(tableOf(picked, 60, 0.2)).channels.map((c) => [
    c.source.header,
    c.quantity,
    c.bank,
    c.confidence,
    c.values[30],
  ]);

describe("recognition depends on what a column says, not on where it stands or in which unit it is written", () => {
  test("the order of the columns leaves every channel as it is", () => {
    const before = summary(columns).toSorted();
    fc.assert(
      fc.property(fc.shuffledSubarray(names, { minLength: names.length, maxLength: names.length }), (order) => {
        const shuffled = Object.fromEntries(order.map((name) => [name, columns[name]!]));
        expect(summary(shuffled).toSorted()).toEqual(before);
      }),
      { numRuns: 25 },
    );
  });

  test("a stated unit of the same kind gives the same SI values and the same certainty", () => {
    const inUnit = (symbol: string, perKiloPascal: number) => {
      const set = understand(
        tableOf({ [`Manifold Pressure [${symbol}]`]: (row) => wave(25, 98)(row) * perKiloPascal }, 60, 0.2),
      );
      return set.channels[0]!;
    };
    const reference = inUnit("kPa", 1);
    fc.assert(
      fc.property(
        fc.constantFrom(
          ["mbar", 10],
          ["bar", 0.01],
          ["psi", 1 / 6.894757293168361],
          ["inHg", 1 / 3.386388640341],
          ["Pa", 1000],
          ["hPa", 10],
        ),
        ([symbol, factor]) => {
          const channel = inUnit(symbol as string, factor as number);
          expect([channel.quantity, channel.confidence]).toEqual([reference.quantity, reference.confidence]);
          channel.values.forEach((value, i) => {
            expect(value).toBeCloseTo(reference.values[i]!, 5);
          });
        },
      ),
    );
  });

  test("a column left out never changes what the others are", () => {
    const before = new Map(summary(columns).map((row) => [row[0], row]));
    fc.assert(
      fc.property(fc.subarray(names, { minLength: 2 }), (kept) => {
        for (const row of summary(Object.fromEntries(kept.map((name) => [name, columns[name]!])))) {
          expect(row).toEqual(before.get(row[0]));
        }
      }),
      { numRuns: 40 },
    );
  });
});
