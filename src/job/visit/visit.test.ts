import { expect, it } from "vitest";
import type { OperatingPoint } from "../../channels/index.ts";
import { parseVisitFile, wholeRecording } from "../index.ts";
import { splitVisits } from "./split-visits.ts";

it("keeps recordings of one visit together, and parts those of several in the order they are named", () => {
  const point = (recording: number) => ({ recording, id: recording }) as OperatingPoint;
  const data = { points: [0, 1, 2].map(point), keyOn: [], sites: [] };
  const split = (...names: (string | null)[]) =>
    splitVisits(
      names.map((visit) => ({ ...wholeRecording("r.csv", new Uint8Array(), "0"), visit })),
      data,
    ).map(({ name, data: own }) => [name, own.points.map((p) => p.id)]);
  expect(split(null, null, null)).toEqual([[null, [0, 1, 2]]]);
  expect(split("once", "once", "once")).toEqual([[null, [0, 1, 2]]]);
  expect(split("before", "after", "before")).toEqual([
    ["before", [0, 2]],
    ["after", [1]],
  ]);
});

it("reads the visit file in SI and refuses slips with what was probably meant", () => {
  const parsed = parseVisitFile(
    '{ "recordings": [{ "file": "a.csv", "barometer": "98.9 kPa", "outside": "12 degC" }] }',
  );
  if (!parsed.ok) throw new Error(parsed.message);
  expect(parsed.value).toEqual([{ file: "a.csv", site: { barometer: 98900, outside: 285.15 }, visit: null }]);
  expect(parseVisitFile('{ "recordings": [{ "file": "a.csv", "barometr": "98.9 kPa" }] }')).toMatchObject({
    ok: false,
    remedy: expect.stringContaining('"barometer"'),
  });
  expect(parseVisitFile('{ "recordings": [{ "file": "a.csv", "barometer": "1.2 kPa" }] }').ok).toBe(false);
  const halfNamed = '{ "recordings": [{ "file": "a", "visit": "1" }, { "file": "b", "visit": "2" }, { "file": "c" }] }';
  expect(parseVisitFile(halfNamed)).toMatchObject({ ok: false, message: expect.stringContaining('"c"') });
});
