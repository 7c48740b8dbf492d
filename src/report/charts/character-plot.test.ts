import { describe, expect, it } from "vitest";
import { characterPlot } from "./character-plot.ts";

const plot = (more: Partial<Parameters<typeof characterPlot>[0]> = {}) =>
  characterPlot({
    line: [
      { x: 0, y: 0 },
      { x: 10, y: 10 },
    ],
    points: [{ x: 5, y: 5 }],
    width: 30,
    height: 11,
    xName: "x",
    yName: "y",
    format: String,
    ...more,
  });

describe("characterPlot", () => {
  it("draws a diagonal as one, its point on it, the ends named", () => {
    const lines = plot();
    expect(lines[0]).toBe("y");
    const rows = lines.slice(1, 12);
    expect(rows[0]).toMatch(/^10 \|.*\.$/);
    expect(rows[5]).toMatch(/o/);
    expect(rows[10]).toMatch(/^ 0 \|\./);
    expect(lines[13]).toMatch(/^ +0 +x +10$/);
    const columns = rows.map((row) => row.search(/[.o]/));
    expect([...columns].sort((a, b) => b - a)).toEqual(columns);
  });

  it("keeps its width, draws a lone point, and takes in nought", () => {
    expect(Math.max(...plot({ width: 44 }).map((line) => line.length))).toBeLessThanOrEqual(44);
    const lone = plot({ line: [], points: [{ x: 2, y: 3 }] });
    expect(lone.slice(1, 12).join("").match(/o/g)).toHaveLength(1);
    expect(lone[11]).toMatch(/^0 \|/);
    const below = plot({
      line: [],
      points: [
        { x: 1, y: -4 },
        { x: 2, y: 4 },
      ],
    });
    expect([below[1], below[11]].map((line) => line!.trim().split(" ")[0])).toEqual(["4", "-4"]);
  });
});
