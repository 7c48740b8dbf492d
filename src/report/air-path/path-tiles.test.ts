import { describe, expect, it } from "vitest";
import { CATALOGUE } from "../../findings/index.ts";
import { DIESEL } from "../fixtures/diesel.ts";
import { HEALTHY } from "../fixtures/healthy.ts";
import { LEAK } from "../fixtures/leak.ts";
import { TWO_BANKS } from "../fixtures/two-banks.ts";
import { faultMarks } from "./fault-marks.ts";
import { pathTiles } from "./path-tiles.ts";
import { anchorFor } from "./tile.ts";

describe("pathTiles", () => {
  it("draws the parts that this engine has, in the order of the air", () => {
    expect(
      pathTiles(LEAK.view.engine, [])
        .map((t) => t.station)
        .join(" "),
    ).toBe("filter meter duct throttle manifold fuel cylinders exhaust");
    expect(
      pathTiles(DIESEL.view.engine, [])
        .map((t) => t.station)
        .join(" "),
    ).toBe("filter meter duct compressor manifold fuel cylinders exhaust");
    const noMeter = { ...LEAK.view.engine, meterKinds: [] };
    expect(pathTiles(noMeter, []).map((t) => t.station)).not.toContain("meter");
    // recorded, though its kind was not stated
    expect(pathTiles(noMeter, LEAK.view.stations).map((t) => t.station)).toContain("meter");
  });

  it.each([
    ["one bank", LEAK],
    ["EGR and a direct injection", DIESEL],
    ["two banks", TWO_BANKS],
    ["three cylinders", HEALTHY],
  ])("joins every tile to the next (%s)", (_, outcome) => {
    const tiles = pathTiles(outcome.view.engine, outcome.view.stations);
    for (const [k, tile] of tiles.slice(0, -1).entries()) {
      expect(tiles[k + 1]?.left.full).toEqual(tile.right.full);
      // the lines of a fuel rail may begin at a tile, so the next may have fewer thin lines, never others
      for (const y of tiles[k + 1]?.left.thin ?? []) expect(tile.right.thin).toContain(y);
    }
  });
});

describe("faultMarks", () => {
  it("marks the one cause of a likely answer, plainly", () => {
    expect(faultMarks(LEAK)).toEqual([{ cause: "manifold-leak", bank: null, certain: true }]);
  });

  it("marks candidates of an open answer as such, and nothing on a healthy engine", () => {
    expect(faultMarks(DIESEL).map((m) => [m.cause, m.certain])).toEqual([
      ["egr-stuck-open", false],
      ["meter-scaled", false],
      ["meter-fouled", false],
    ]);
    expect(faultMarks(HEALTHY)).toEqual([]);
  });

  it("marks nothing that the recording did not raise above what was believed before", () => {
    const findings = DIESEL.result.findings.map((f) => ({ ...f, priorProbability: f.probability }));
    expect(faultMarks({ ...DIESEL, result: { ...DIESEL.result, findings } })).toEqual([]);
  });

  it("never names one part of a group as certain, even when the answer is likely", () => {
    const likely = { ...DIESEL, result: { ...DIESEL.result, answer: "likely" as const } };
    expect(faultMarks(likely).every((m) => !m.certain)).toBe(true);
  });

  it("has a place for every cause of the catalogue on an engine that has all parts", () => {
    const all = pathTiles({ ...TWO_BANKS.view.engine, throttle: true, boosted: true }, []);
    const drawn = new Set<string>(all.map((tile) => tile.station));
    expect(CATALOGUE.filter((cause) => !drawn.has(cause.station)).map((cause) => cause.id)).toEqual([]);
    expect(CATALOGUE.find((cause) => cause.id === "boost-leak")?.station).toBe("compressor");
  });

  it("places a mark at its bank", () => {
    const fuel = pathTiles(TWO_BANKS.view.engine, []).find((t) => t.station === "fuel");
    if (fuel === undefined) throw new Error("no fuel tile");
    expect(anchorFor(fuel, "fuel-supply-limited", 1).y).toBeLessThan(anchorFor(fuel, "fuel-supply-limited", 2).y);
  });
});
