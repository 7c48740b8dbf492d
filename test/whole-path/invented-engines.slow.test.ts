// Invented engines with planted faults, from bytes to answer. Few and fixed; the calibration on many comes with a later issue.
import { describe, expect, it } from "vitest";
import { check, wholeRecording } from "../../src/job/index.ts";
import type { AirtallyResult, Outcome } from "../../src/job/result.ts";
import {
  type Family,
  type Fault,
  PLAIN_STYLE,
  type Recorder,
  simulateFamily,
  standardTester,
} from "../../src/model-engine/index.ts";

function outcomeOf(text: string, engine: string): Outcome {
  const outcome = check({
    recordings: [wholeRecording("recording.csv", new TextEncoder().encode(text), "")],
    engine,
    channels: null,
    assumptions: null,
    toolVersion: "0.0.0",
    seed: 0,
  });
  if (!outcome.ok) throw new Error(outcome.message);
  return outcome.value;
}

const answerText = (text: string, engine: string): AirtallyResult => outcomeOf(text, engine).result;

function answer(family: Family, seed: number, faults: readonly Fault[] = []): AirtallyResult {
  const { recording, engine } = simulateFamily({ family, seed, faults });
  return answerText(recording.text, JSON.stringify(engine));
}

const SEEDS = [3, 8, 21];
/** chance of the cause or of what this recording cannot tell from it */
function groupChance(result: AirtallyResult, cause: string): number {
  const group = result.inseparable.find((g) => g.includes(cause)) ?? [cause];
  return result.findings.filter((f) => group.includes(f.cause)).reduce((sum, f) => sum + f.probability, 0);
}

describe("healthy engines", () => {
  it("are not accused, whatever doses their fuel", () => {
    for (const family of ["petrol-with-meter", "petrol-with-pressure", "boosted-both", "diesel-with-egr"] as const) {
      for (const seed of SEEDS) {
        const result = answer(family, seed);
        expect(result.findings[0]!.probability, `${family} ${seed} ${result.findings[0]!.cause}`).toBeLessThan(0.5);
        expect(result.answer).not.toBe("likely");
      }
    }
  });
});

describe("a manifold leak", () => {
  it("is found where a meter doses, its size inside the interval", () => {
    for (const family of ["petrol-with-meter", "boosted-both"] as const) {
      for (const seed of SEEDS) {
        const result = answer(family, seed, [{ cause: "manifold-leak", size: 5 }]);
        expect(groupChance(result, "manifold-leak"), `${family} ${seed}`).toBeGreaterThan(0.8);
        expect(result.findings[0]!.cause).toBe("manifold-leak");
        expect(result.findings[0]!.sizes[0]!.low90).toBeLessThan(6);
        expect(result.findings[0]!.sizes[0]!.high90).toBeGreaterThan(4);
      }
    }
  });

  it("moves no trim where pressure doses; the throttle alone neither proves nor clears it", () => {
    const result = answer("petrol-with-pressure", 3, [{ cause: "manifold-leak", size: 5 }]);
    const factor = result.findings.find((f) => f.cause === "manifold-leak")!.bayesFactor!;
    expect(factor).toBeGreaterThan(0.1);
    expect(factor).toBeLessThan(10);
    expect(result.answer).not.toBe("likely");
  });
});

describe("what this recording cannot see", () => {
  it("keeps its prior odds, rests on nothing and stands at no part of the drawing", () => {
    const { channels, ...tester } = standardTester("petrol-with-pressure") as Extract<Recorder, { kind: "polled" }>;
    const recorder = { ...tester, channels: channels.filter((id) => id !== "throttle") };
    for (const faults of [[], [{ cause: "fuel-delivery-scaled", size: 0.75 }]] as const) {
      const { recording, engine } = simulateFamily({ family: "petrol-with-pressure", seed: 3, faults, recorder });
      const { result, view } = outcomeOf(recording.text, JSON.stringify(engine));
      const leak = result.findings.find((f) => f.cause === "manifold-leak")!;
      expect(leak.bayesFactor).toBeCloseTo(1, 6);
      expect(leak.restsOn).toEqual([]);
      expect(view.causes["manifold-leak"]!.speaks).toBe("This recording cannot see it.");
      expect(view.stations.flatMap((s) => s.causes.map((c) => c.cause))).not.toContain("manifold-leak");
      expect(result.answer === "likely").toBe(faults.length > 0);
    }
  });
});

describe("a hole in the charge pipe", () => {
  it("is found and sized though nobody recorded the boost: the throttle tells what it holds back", () => {
    for (const seed of [3, 4, 6]) {
      const result = answer("boosted-both", seed, [{ cause: "boost-leak", size: 30 }]);
      const [first] = result.findings;
      expect(first!.cause, `${seed}`).toBe("boost-leak");
      expect(first!.probability, `${seed}`).toBeGreaterThan(0.9);
      expect(first!.sizes[0]!.value).toBeGreaterThan(24);
      expect(first!.sizes[0]!.value).toBeLessThan(36);
      expect(first!.sizes[0]!.high90).toBeGreaterThan(28);
    }
  });
});

describe("what no recording of this kind can separate", () => {
  it("is told as one group: delivery of fuel, lambda, and a meter that reads by one factor", () => {
    for (const seed of SEEDS) {
      const result = answer("petrol-with-meter", seed, [{ cause: "fuel-delivery-scaled", size: 0.8 }]);
      expect(groupChance(result, "fuel-delivery-scaled")).toBeGreaterThan(0.8);
      expect(result.inseparable.find((g) => g.includes("fuel-delivery-scaled"))!.length).toBeGreaterThan(1);
    }
  });
});

describe("a pressure sensor with a wrong zero", () => {
  it("is found, and sizes beyond its interval are not among those left open", () => {
    for (const seed of SEEDS) {
      const result = answer("boosted-both", seed, [{ cause: "map-biased", size: 6 }]);
      expect(result.findings[0]!.cause).toBe("map-biased");
      // A barometer of the computer's own that reads low looks much the same.
      expect(result.findings[0]!.probability).toBeGreaterThan(0.6);
      expect(result.findings[0]!.sizes[0]!.low90).toBeLessThan(6.5);
      expect(result.findings[0]!.sizes[0]!.high90).toBeGreaterThan(5.5);
    }
  });
});

describe("channels that restate the computer's air", () => {
  it.each([
    ["petrol-with-meter", ["meterFlow"], { cause: "manifold-leak", size: 4 }],
    ["petrol-with-pressure", ["pulseWidth", "lambdaIndependent"], { cause: "lambda-biased", size: 0.1 }],
  ] as const)("change no probability when they are added (%s)", (family, own, fault) => {
    const channels = [
      "speed",
      "manifoldPressure",
      ...own,
      "intakeTemperature",
      "coolant",
      "shortTrim",
      "longTrim",
      "loopState",
      "barometer",
    ] as const;
    const { recording, engine } = simulateFamily({
      family,
      seed: 8,
      faults: [fault],
      recorder: {
        kind: "logger",
        rate: 5,
        style: PLAIN_STYLE,
        channels: [...channels, "absoluteLoad", "calculatedLoad"],
      },
    });
    const without = recording.text
      .split("\n")
      .map((line) => line.split(",").slice(0, -2).join(","))
      .join("\n");
    const dropped = recording.text.split("\n")[0]!.split(",").slice(-2).join();
    expect(dropped).toMatch(/load.*load/i);
    const [all, fewer] = [recording.text, without].map((text) => answerText(text, JSON.stringify(engine)));
    expect(fewer!.findings[0]!.cause).toBe(fault.cause);
    expect(all!.healthyProbability).toBe(fewer!.healthyProbability);
    expect(all!.findings.map((f) => [f.cause, f.probability])).toEqual(
      fewer!.findings.map((f) => [f.cause, f.probability]),
    );
  });
});

describe("probabilities", () => {
  it("sum to one and come out the same to the bit", () => {
    const first = answer("petrol-with-meter", 21, [{ cause: "meter-fouled", size: -0.2 }]);
    const again = answer("petrol-with-meter", 21, [{ cause: "meter-fouled", size: -0.2 }]);
    const total =
      first.healthyProbability +
      first.unexplainedProbability +
      first.othersProbability +
      first.explanations.reduce((sum, e) => sum + e.probability, 0);
    expect(total).toBeCloseTo(1, 4);
    expect(again).toEqual(first);
  });
});
