import { expect, it } from "vitest";
import { type Fault, type Protocol, rpm, simulateFamily } from "../../model-engine/index.ts";
import { check, type RecordingInput, wholeRecording } from "../index.ts";

const SHORT: Protocol = [
  { do: "key-on", seconds: 5 },
  { do: "idle", seconds: 30 },
  { do: "idle", seconds: 15, accessoryTorque: 15 },
  { do: "hold", seconds: 20, speed: rpm(2500) },
  { do: "drive", seconds: 12, speed: rpm(1700), load: 0.5 },
  { do: "pull", seconds: 8, from: rpm(1700), to: rpm(5600) },
];

function recorded(seed: number, faults: readonly Fault[], more: Partial<RecordingInput>): RecordingInput {
  const { recording } = simulateFamily({ family: "petrol-with-meter", seed, faults, protocol: SHORT });
  return { ...wholeRecording(recording.name, new TextEncoder().encode(recording.text), `${seed}`), ...more };
}

function checked(recordings: readonly RecordingInput[]) {
  const { engine } = simulateFamily({
    family: "petrol-with-meter",
    seed: 1,
    protocol: [{ do: "idle", seconds: 2 }],
  });
  const outcome = check({
    recordings,
    engine: JSON.stringify(engine),
    channels: null,
    assumptions: null,
    toolVersion: "0.0.0",
    seed: 0,
  });
  if (!outcome.ok) throw new Error(outcome.message);
  return outcome.value;
}

it("weighs visits apart, answers about the last, and says what changed", () => {
  const before = recorded(7, [{ cause: "manifold-leak", size: 4 }], { name: "b.csv", visit: "before" });
  const after = recorded(7, [], { name: "a.csv", visit: "after" });
  const { result, view } = checked([before, after]);
  expect(result.answer).toBe("healthy");
  expect(result.recordings.map((r) => r.name)).toEqual(["b.csv", "a.csv"]);
  expect(new Set(result.operatingPoints.map((p) => p.recording))).toEqual(new Set([1]));
  const [first, last] = view.comparison!.visits;
  expect([first!.answer, last!.answer]).toEqual(["likely", "healthy"]);
  expect(first!.leading!.cause).toBe("manifold-leak");
  const atIdle = (visit: typeof first) => visit!.departures.find((d) => d.witness === "meter" && d.region === "idle")!;
  expect(atIdle(first).departure).toBeLessThan(-0.08);
  expect(Math.abs(atIdle(last).departure)).toBeLessThan(0.03);
  expect(view.comparison!.sentence).toMatch(/at idle the air meter went from \d+ % low to agreement/);
});
