import { expect, it } from "vitest";
import { findOperatingPoints } from "../../channels/index.ts";
import { type Family, type Protocol, rpm, simulateFamily } from "../../model-engine/index.ts";
import { buildTallyModel, defaultAssumptions } from "../../tally/index.ts";
import { parseEngineFile } from "../engine-file/parse-engine-file.ts";
import { understand, wholeRecording } from "../understand.ts";
import { assumptionsList, SPREAD_OF } from "./assumptions-list.ts";

const SHORT: Protocol = [
  { do: "idle", seconds: 15 },
  { do: "hold", seconds: 10, speed: rpm(2500) },
  { do: "pull", seconds: 6, from: rpm(1700), to: rpm(4500) },
  { do: "overrun", seconds: 6, from: rpm(4000), to: rpm(1400) },
];

/** Parts of another unknown's row, or without a row because their number follows from the engine file. */
const WITHOUT_ROW = /^meter-2 |bank\d delivery|slope$|regulator's reference/;

it.each<Family>(["petrol-with-meter", "petrol-with-pressure", "boosted-both", "diesel-with-egr"])(
  "lists an assumption, with its sensitivity, for every unknown of %s",
  (family) => {
    const { recording, engine } = simulateFamily({ family, seed: 1, protocol: SHORT });
    const parsed = parseEngineFile(JSON.stringify(engine));
    if (!parsed.ok) throw new Error(parsed.message);
    const one = understand(wholeRecording("a", new TextEncoder().encode(recording.text), ""), parsed.value, null);
    if (!one.ok) throw new Error(one.message);
    const data = findOperatingPoints(one.value.set, one.value.states, 0, 1);
    const model = buildTallyModel(data, parsed.value, defaultAssumptions());
    const varied = model.unknowns.map(({ name }) => ({ unknown: name, halved: 0.4, doubled: 0.6 }));
    const rows = assumptionsList(model, defaultAssumptions(), varied, "First");
    const told = new Set(rows.filter((r) => r.sensitivity.startsWith("First: 40 in 100 if halved")).map((r) => r.name));
    const wanted = model.unknowns.filter((u) => !WITHOUT_ROW.test(u.name));
    expect(wanted.filter((u) => !Object.values(SPREAD_OF).includes(u.name)).map((u) => u.name)).toEqual([]);
    expect(told.size).toBeGreaterThanOrEqual(wanted.length - 1);
  },
);
