import { describe, expect, test } from "vitest";
import { channel, INVENTED_ENGINE, noise, tableOf, understand } from "../test-support/understand.ts";
import { compareRecordings } from "./compare-recordings.ts";
import { statedEngine } from "./stated-engine.ts";

const speed = (row: number) => Math.round(2000 + 900 * Math.sin(row / 19));
const pressure = (row: number) => Number((50 + 25 * Math.sin(row / 13)).toFixed(1));
/** g/s of an engine of `volume` m3 breathing 0.85 at 30 degC, with a per cent of noise */
const flowOf =
  (volume: number, seed = 1) =>
  (row: number) =>
    ((0.85 * pressure(row) * 1e3 * volume * (speed(row) / 60)) / (2 * 287.05 * 303.15)) *
    1e3 *
    (1 + 0.02 * noise(seed)(row));
const engineColumns = (volume: number, seed = 1) => ({
  "Engine Speed [1/min]": speed,
  "Manifold Pressure [kPa]": pressure,
  "Intake Air Temperature [degC]": () => 30,
  "MAF [g/s]": (row: number) => flowOf(volume, seed)(row).toFixed(3),
});
const codes = (set: ReturnType<typeof understand>) => set.warnings.map((w) => w.code);
const rows = 400;

describe("channels held against each other", () => {
  test("a flow that needs an engine of another size than stated is told, with the unit in which it would fit", () => {
    const good = understand(tableOf(engineColumns(2e-3), rows, 0.1), { engine: INVENTED_ENGINE });
    expect(codes(good)).not.toContain("displacement-contradiction");
    const wrong = understand(tableOf(engineColumns(7.2e-3), rows, 0.1), { engine: INVENTED_ENGINE });
    expect(wrong.warnings.find((w) => w.code === "displacement-contradiction")?.text).toMatch(
      /1998 cm3 are stated.*In kg\/h it would fit/,
    );
  });

  test("absolute load with flow tells the displacement the engine computer believes in", () => {
    const load = (volume: number) => (row: number) =>
      (flowOf(2e-3)(row) / 1e3 / (speed(row) / 120) / (1.184 * volume)) * 100;
    const set = (volume: number) =>
      understand(
        tableOf(
          { ...engineColumns(2e-3), "Absolute load [%]": (row: number) => load(volume)(row).toFixed(2) },
          rows,
          0.1,
        ),
        { engine: INVENTED_ENGINE },
      );
    expect(codes(set(2e-3))).not.toContain("displacement-contradiction");
    expect(set(1.4e-3).warnings.find((w) => w.code === "displacement-contradiction")?.text).toMatch(
      /1400 cm3; 1998 cm3/,
    );
  });

  test("two speeds that differ are told, two that agree are not", () => {
    const twins = (factor: number) =>
      understand(tableOf({ "Engine Speed [1/min]": speed, "Crank RPM": (row) => speed(row) * factor }, rows, 0.1));
    expect(codes(twins(1))).not.toContain("twins-differ");
    expect(codes(twins(2))).toContain("twins-differ");
  });

  test("after a cold soak two temperatures convict the third", () => {
    const cold = (intake: number) =>
      understand(
        tableOf(
          {
            "Engine Speed [1/min]": speed,
            "Coolant [degC]": () => 12,
            "Ambient temperature [degC]": () => 11,
            "IAT [degC]": (row) => intake + (row % 2),
          },
          rows,
          0.1,
        ),
      );
    expect(codes(cold(13))).not.toContain("cold-soak");
    expect(cold(38).warnings.find((w) => w.code === "cold-soak")?.text).toContain('"IAT [degC]"');
  });

  test("with the key on the manifold reads the barometer, or one of the two is wrong", () => {
    const keyOn = (rest: number) =>
      understand(
        tableOf(
          {
            "Engine Speed [1/min]": (row) => (row < 60 ? 0 : speed(row)),
            "Manifold Pressure [kPa]": (row) => (row < 60 ? rest : pressure(row)),
            "Barometric Pressure [kPa]": () => 98,
          },
          rows,
          0.1,
        ),
      );
    expect(codes(keyOn(99))).not.toContain("pressure-at-rest");
    expect(keyOn(92).warnings.find((w) => w.code === "pressure-at-rest")?.text).toMatch(/92 kPa.*98 kPa/);
  });

  test("a slow hose shows beside a meter of which only the voltage is recorded, though most of the time nothing moves", () => {
    const steps = [40, 75, 50, 95, 45, 80, 38, 60, 90, 42];
    const target = (row: number) => steps[Math.min(steps.length - 1, Math.floor(row / 40))]!;
    /** 0.3 s of manifold filling, then a hose of its own */
    const slow = (tau: number) => {
      let manifold = 40;
      let hose = 40;
      return Array.from({ length: rows }, (_, row) => {
        manifold += (target(row) - manifold) * (1 - Math.exp(-0.1 / 0.3));
        hose += tau === 0 ? manifold - hose : (manifold - hose) * (1 - Math.exp(-0.1 / tau));
        return { manifold, hose };
      });
    };
    const withHose = (tau: number) => {
      const run = slow(tau);
      return understand(
        tableOf(
          {
            "Engine Speed [1/min]": (row) => 2000 + (row % 3),
            "Manifold Pressure [kPa]": (row) => run[row]!.hose.toFixed(1),
            // King's law: V^2 = 1 + sqrt(m)
            "MAF [V]": (row) => Math.sqrt(1 + Math.sqrt(run[row]!.manifold / 3)).toFixed(3),
          },
          rows,
          0.1,
        ),
      );
    };
    expect(codes(withHose(0))).not.toContain("sensor-lag");
    expect(codes(withHose(0.8))).toContain("sensor-lag");
  });

  test("a pressure that follows the air by more than the polling explains is told with its lag", () => {
    const wave = (row: number) => 50 + 25 * Math.sin(row / 6) + 8 * Math.sin(row / 2.3);
    const lagged = (rowsLate: number) =>
      understand(
        tableOf(
          {
            "Engine Speed [1/min]": (row) => 2000 + (row % 3),
            "Manifold Pressure [kPa]": (row) => wave(row - rowsLate).toFixed(1),
            "MAF [g/s]": (row) => (wave(row) / 3 + 0.1 * noise(3)(row)).toFixed(2),
          },
          rows,
          0.1,
        ),
      );
    expect(codes(lagged(0))).not.toContain("sensor-lag");
    expect(lagged(6).warnings.find((w) => w.code === "sensor-lag")?.text).toMatch(
      /"Manifold Pressure \[kPa\]" follows "MAF \[g\/s\]" by about 0\.6 s/,
    );
  });
});

describe("recordings of one job", () => {
  const one = (name: string, volume: number, remark = "", seed = 1) => ({
    name,
    set: understand(tableOf(engineColumns(volume, seed), 900, 0.1)),
    stated: statedEngine([{ line: 1, text: remark }]),
  });

  test("of one engine raise nothing", () => {
    const remark = "# engine_cc,1998,fuel,gasoline";
    expect(compareRecordings([one("a", 2e-3, remark, 1), one("b", 2e-3, remark, 2)], INVENTED_ENGINE)).toEqual([]);
  });

  test("that state other displacements or fuels, also than the engine file, are told", () => {
    const found = compareRecordings(
      [one("a", 2e-3, "Hubraum: 1,6 l, Benzin"), one("b", 2e-3, "engine_cc,2299,fuel,diesel")],
      INVENTED_ENGINE,
    );
    expect(found.map((w) => w.code).sort()).toEqual([
      "engine-contradiction",
      "engine-contradiction",
      "engine-contradiction",
      "recordings-contradict",
      "recordings-contradict",
    ]);
    expect(found.map((w) => w.text).join(" ")).toMatch(/1600 cm3.*1998 cm3/);
  });

  test("that breathe differently at the same speed and pressure are told by how much", () => {
    const [warning] = compareRecordings([one("a", 2e-3), one("b", 2.6e-3)], null);
    expect(warning?.text).toMatch(/"b" shows (29|30|31) % more air than "a"/);
  });
});

test("the drawn volume is displacement times breathing", async () => {
  const { drawnVolume } = await import("./drawn-volume.ts");
  const set = understand(tableOf(engineColumns(2e-3), rows, 0.1));
  const drawn = drawnVolume(set, channel(set, "meterFlow"))!;
  expect(drawn.median).toBeCloseTo(0.85 * 2e-3, 5);
});
