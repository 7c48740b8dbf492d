// What stands under the drawing: the words of the stations of an invented engine whose meter was shifted.
import { expect, it } from "vitest";
import { inventedTally } from "../../../test/tally/invented-tally.ts";
import { inseparableCauses, weighAll } from "../../findings/index.ts";
import { prepare } from "../../tally/index.ts";
import { commonAnswer } from "./air.ts";
import { stationViews } from "./stations.ts";

const prepared = prepare(inventedTally({ faults: [{ cause: "manifold-leak", size: 6e-6 }] }), null);
const weighed = weighAll(prepared);
const { invisible } = inseparableCauses(weighed);
const stations = stationViews(prepared, weighed, commonAnswer(weighed, prepared), invisible);
const at = (station: string) => stations.filter((s) => s.station === station);

it("every station has a row in the order of the air, a witness with its interval, and the causes that live there", () => {
  expect(stations.map((s) => s.station).join(" ")).toBe("filter meter duct throttle manifold cylinders fuel exhaust");
  expect(at("meter")[0]?.value).toMatch(/^−\d.* % ± \d.* %$/);
  expect(at("meter")[0]?.detail).toMatch(/^at idle; .* at (full load|high flow)$/);
  expect(at("throttle")[0]).toMatchObject({ value: null, detail: "no witness here" });
  expect(at("manifold")[0]?.causes.map((c) => c.cause)).toContain("manifold-leak");
  expect(at("exhaust")[0]?.detail).toBe("control probe: wide");
});

it("what a bank or a second meter says stands under its own name, and the causes of the station once", () => {
  const named = { fuel: "fuel-bank2", pressure: "meter-2" } as const;
  const witnesses = prepared.model.witnesses.map((w) => named[w as "fuel"] ?? w);
  const banked = { ...prepared, model: { ...prepared.model, witnesses } };
  const rows = stationViews(banked, weighed, commonAnswer(weighed, prepared), invisible);
  const labels = (station: string) => rows.filter((s) => s.station === station).map((s) => s.label);
  expect(labels("fuel")).toEqual(["fuel, bank 2"]);
  expect(labels("meter")).toEqual(["air meter", "second air meter"]);
  expect(rows.flatMap((s) => s.causes.map((c) => c.cause)).filter((c) => c === "manifold-leak")).toHaveLength(1);
});
