import { describe, expect, it } from "vitest";
import { lookUp, lookUp2, tabulate, tabulate2 } from "./uniform-table.ts";

describe("uniform tables", () => {
  it("give the nodes, straight lines between them, and the edge value outside", () => {
    const table = tabulate({ low: 2, high: 6, cells: 4 }, (x) => x * x);
    expect([2, 3, 6].map((x) => lookUp(table, x))).toEqual([4, 9, 36]);
    expect(lookUp(table, 3.5)).toBeCloseTo(12.5, 12);
    expect([lookUp(table, -10), lookUp(table, 100)]).toEqual([4, 36]);
  });

  it("are exact for what is linear in each of two variables", () => {
    const f = (x: number, y: number) => 3 - 2 * x + 5 * y + 0.7 * x * y;
    const table = tabulate2({ low: 0, high: 4, cells: 3 }, { low: -1, high: 1, cells: 5 }, f);
    for (const x of [0, 0.3, 2.9, 4]) {
      for (const y of [-1, -0.35, 0.2, 1]) expect(lookUp2(table, x, y)).toBeCloseTo(f(x, y), 12);
    }
    expect(lookUp2(table, 9, 9)).toBeCloseTo(f(4, 1), 12);
  });
});
