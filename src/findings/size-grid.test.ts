import { describe, expect, it } from "vitest";
import { inventedTally } from "../../test/tally/invented-tally.ts";
import { logEvidence, prepare } from "../tally/index.ts";
import { evidenceOf } from "./evidence-of.ts";
import { LAGRANGE_POINTS } from "./lagrange.ts";
import { possibleCauses } from "./possible-causes.ts";
import { laySizes, logRatioAt, placeIn } from "./size-grid.ts";
import { sizeAt } from "./size-scale.ts";

const CASES = [
  { title: "a healthy engine", faults: [] },
  { title: "a leak", faults: [{ cause: "manifold-leak", size: 4e-6 }] },
  { title: "an offset of the meter", faults: [{ cause: "meter-offset", size: 0.8e-3 }] },
] as const;

describe.each(CASES)("the grid of sizes on $title", ({ faults }) => {
  it("gives the exact evidence of every cause and size that is within reach", () => {
    const healthy = prepare(inventedTally({ faults }), null);
    const base = logEvidence(healthy, null);
    const causes = possibleCauses(healthy.model);
    const grid = laySizes(causes, healthy);
    const weights = new Float64Array(LAGRANGE_POINTS);
    const rows = causes.flatMap((cause) =>
      grid.parts.get(cause)!.flatMap((part) =>
        Array.from({ length: 23 }, (_, i) => {
          const t = part.low + ((part.high - part.low) * (i + 0.5)) / 23;
          const size = sizeAt(cause, part.sign, t);
          const exact = evidenceOf(cause.law.predict(healthy.model, size, part.shape), healthy) - base;
          return { id: cause.id, size, exact, grid: logRatioAt(part, placeIn(part, t, weights), weights) };
        }),
      ),
    );
    const best = Math.max(0, ...rows.map((r) => r.exact));
    const near = rows.filter((r) => r.exact > best - 8 || r.grid > best - 8);
    expect(near.length).toBeGreaterThan(20);
    for (const row of near) expect(Math.abs(row.grid - row.exact), JSON.stringify(row)).toBeLessThan(0.1);
  });
});
