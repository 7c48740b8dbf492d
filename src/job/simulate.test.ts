import { describe, expect, it } from "vitest";
import { parseEngineFile } from "./engine-file/parse-engine-file.ts";
import { SIMULATE_DEFAULTS, SIMULATE_FAMILIES, type SimulateOptions, simulate } from "./simulate.ts";

const short: SimulateOptions = { ...SIMULATE_DEFAULTS, driving: 20 };
const made = (options: Partial<SimulateOptions>) => {
  const result = simulate({ ...short, ...options });
  if (!result.ok) throw new Error(result.message);
  return result.value;
};
const reason = (options: Partial<SimulateOptions>) => {
  const result = simulate({ ...short, ...options });
  return result.ok ? "ok" : result.reason;
};

describe("simulate", () => {
  it("writes for every family a recording, an engine file that the tool accepts, and the truth", () => {
    for (const [i, family] of SIMULATE_FAMILIES.entries()) {
      const recorder = i % 2 === 0 ? "tester" : "logger";
      const { recording, engine, truth } = made({ family, recorder });
      expect(recording.startsWith("# Invented recording"), family).toBe(true);
      const parsed = parseEngineFile(engine);
      expect(parsed.ok ? "read" : parsed.message, family).toBe("read");
      const rows = truth.trimEnd().split("\n");
      expect(rows[0]).toContain("airIntoCylinders [g/s]");
      expect(rows.length).toBeGreaterThan(2500);
      expect(truth).not.toContain("NaN");
    }
  });

  it("is the same to the byte for the same options, and plants what it is asked for", () => {
    expect(made({})).toEqual(made({}));
    const leaky = made({ faults: ["manifold-leak=4 mm2"] });
    const column = (text: string) => text.split("\n")[0]!.split(",").indexOf("leakFlow [g/s]");
    const atIdle = (text: string) => Number(text.split("\n")[600]!.split(",")[column(text)]);
    expect(atIdle(leaky.truth)).toBeGreaterThan(0.5); // choked: 0.156 g/s a square millimetre
    expect(atIdle(leaky.truth)).toBeLessThan(0.63);
    expect(atIdle(made({}).truth)).toBe(0);
  });

  it("refuses what it cannot do, with a reason", () => {
    expect(reason({ family: "steam" })).toBe("family-unknown");
    expect(reason({ seed: 1.5 })).toBe("option-out-of-range");
    expect(reason({ altitude: 4000 })).toBe("option-out-of-range");
    expect(reason({ driving: Number.NaN })).toBe("option-out-of-range");
    expect(reason({ temperature: "warm" })).toBe("temperature-unreadable");
    expect(reason({ temperature: "90 degC" })).toBe("option-out-of-range");
    expect(reason({ faults: ["manifold-leak"] })).toBe("fault-refused");
    expect(reason({ faults: ["vane-tilted=0.1"] })).toBe("fault-refused");
    expect(reason({ family: "petrol-with-vortex", faults: ["meter-fouled=-0.1"] })).toBe("fault-refused");
    expect(reason({ family: "petrol-with-pressure", faults: ["meter-scaled=0.9"] })).toBe("fault-refused");
    expect(reason({ faults: ["egr-low-flow=0.5"] })).toBe("fault-refused");
  });
});
