import { describe, expect, it } from "vitest";
import { seededRandom } from "../numerics/index.ts";
import { blemish } from "./blemishes.ts";

const rows = Array.from({ length: 6000 }, (_, i) => Float64Array.from([i / 10, i, i % 3 === 0 ? i : Number.NaN]));

describe("blemish", () => {
  it("loses about the stated share of the rows, in stretches, and leaves the others as they were", () => {
    const left = blemish(rows, { dropouts: { perMinute: 2, seconds: 3 } }, seededRandom(4));
    const lost = rows.length - left.length;
    expect(lost / rows.length).toBeGreaterThan(0.04); // 6 s of every 66 are expected to go
    expect(lost / rows.length).toBeLessThan(0.16);
    const jumps = left.filter((row, i) => i > 0 && row[0]! - left[i - 1]![0]! > 0.15).length;
    expect(jumps).toBeGreaterThan(5);
    expect(jumps).toBeLessThan(lost / 5);
    expect(left.every((row) => row[1] === Math.round(row[0]! * 10))).toBe(true);
  });

  it("keeps a stuck channel at the value it had, for as long as stated, and no other channel", () => {
    const stuck = blemish(rows, { stuck: [{ column: 0, from: 100, seconds: 50 }] }, seededRandom(4));
    expect(stuck[1000]![1]).toBe(1000);
    expect(stuck[1499]![1]).toBe(1000);
    expect(stuck[1502]![1]).toBe(1502);
    expect(stuck[1200]![2]).toBe(1200);
  });

  it("leaves empty cells empty", () => {
    const stuck = blemish(rows, { stuck: [{ column: 1, from: 100, seconds: 50 }] }, seededRandom(4));
    expect(stuck[1001]![2]).toBeNaN();
    expect(stuck[1200]![2]).toBe(1002);
  });

  it("does not change what it is given", () => {
    const before = rows[1200]![1];
    blemish(rows, { stuck: [{ column: 0, from: 100, seconds: 50 }] }, seededRandom(4));
    expect(rows[1200]![1]).toBe(before);
  });
});
