// Every cause against the catalogue of the design, under both strategies: the sign of each witness's shift at idle, cruise, wide
// open at low speed and full load, and what the trims then do. Limits and sizes stand in signatures.test.ts.
import { describe, expect, it } from "vitest";
import {
  type Change,
  modelOf,
  predictionOf,
  seenByAll,
  shifts,
  WITNESSES,
} from "../../../test/signatures/signature-models.ts";
import type { TallyModel, TallyWitness } from "../../tally/index.ts";
import { CATALOGUE } from "../catalogue.ts";

/** A shift (ln) below this is nothing. */
const NOTHING = 0.01;

type Row = {
  readonly cause: string;
  /** SI */
  readonly size: number;
  readonly shape?: number;
  readonly change?: Change;
  /** signs at idle, cruise, low speed wide open, full load; a witness not named stays true */
  readonly shift: { readonly [witness in TallyWitness]?: string };
  /** trims of a computer that doses by the meter, and of one that doses by pressure */
  readonly trims: readonly [byMeter: string, byPressure: string];
};

const VANE: Change = { engine: { meters: [{ id: "meter", kind: "vane" }] } };
const VORTEX: Change = { engine: { meters: [{ id: "meter", kind: "vortex" }] } };
const BOOSTED: Change = { engine: { induction: "boosted" }, pressures: [35, 60, 140, 180] };
const COMMANDED: Change = { readings: { egrCommanded: [0, 0.4, 0, 0] } };
const all = (sign: string) => ({ fuel: sign, exhaust: sign });
const SAME = "0000";

// The throttle witness is made with pressures and temperature as read: their faults shift it too, the manifold sensor's where the
// throttle is not choked (how much: laws-against-tally.test.ts).
const TABLE: readonly Row[] = [
  { cause: "meter-fouled", size: -0.15, shape: 0, shift: { meter: "0---" }, trims: ["0+++", SAME] },
  { cause: "meter-scaled", size: 0.9, shift: { meter: "----" }, trims: ["++++", SAME] },
  { cause: "meter-offset", size: 0.5e-3, shape: 0, shift: { meter: "+++0" }, trims: ["---0", SAME] },
  { cause: "meter-curve-wrong", size: -0.1, shape: -1.5, shift: { meter: "+++-" }, trims: ["---+", SAME] },
  { cause: "vane-tilted", size: 0.1, change: VANE, shift: { meter: "----" }, trims: ["++++", SAME] },
  { cause: "vane-tilted", size: -0.1, change: VANE, shift: { meter: "++++" }, trims: ["----", SAME] },
  { cause: "meter-pulsation", size: -0.2, shape: 26, shift: { meter: "00-0" }, trims: ["00+0", SAME] },
  { cause: "intake-restricted", size: 8000, shift: { throttle: "00++" }, trims: [SAME, SAME] },
  {
    cause: "intake-restricted",
    size: 8000,
    change: VORTEX,
    shift: { meter: "000+", throttle: "00++" },
    trims: ["000-", SAME],
  },
  { cause: "leak-before-throttle", size: 150e-6, shift: { meter: "----" }, trims: ["++++", SAME] },
  { cause: "boost-leak", size: 25e-6, change: BOOSTED, shift: { meter: "--++" }, trims: ["++--", SAME] },
  { cause: "manifold-leak", size: 3e-6, shift: { meter: "--00", throttle: "--00" }, trims: ["++00", SAME] },
  {
    cause: "manifold-leak",
    size: 25e-6,
    change: BOOSTED,
    shift: { meter: "--++", throttle: "--++" },
    trims: ["++--", SAME],
  },
  { cause: "throttle-area-changed", size: -6e-6, shift: { throttle: "+++0" }, trims: [SAME, SAME] },
  { cause: "throttle-area-changed", size: 6e-6, shift: { throttle: "---0" }, trims: [SAME, SAME] },
  { cause: "map-biased", size: 3000, shift: { pressure: "++++", throttle: "00--" }, trims: [SAME, "----"] },
  { cause: "map-scaled", size: -0.1, shape: 0, shift: { pressure: "++00", throttle: "0---" }, trims: [SAME, "--00"] },
  { cause: "map-scaled", size: 0.08, shape: 1, shift: { pressure: "++++", throttle: "0---" }, trims: [SAME, "----"] },
  {
    cause: "intake-temperature-biased",
    size: 20,
    shape: 0,
    shift: { pressure: "----", throttle: "----" },
    trims: [SAME, "++++"],
  },
  {
    cause: "intake-temperature-biased",
    size: 20,
    shape: 0,
    change: VANE,
    shift: { pressure: "----", meter: "----", throttle: "----" },
    trims: ["++++", "++++"],
  },
  { cause: "baro-biased", size: 5000, shape: 0, shift: { pressure: "-000", throttle: "++++" }, trims: [SAME, "+000"] },
  {
    cause: "baro-biased",
    size: 5000,
    shape: 0,
    change: VORTEX,
    shift: { meter: "++++", pressure: "-000", throttle: "++++" },
    trims: ["----", "+000"],
  },
  { cause: "egr-stuck-open", size: 10e-6, shift: { pressure: "++++" }, trims: [SAME, "----"] },
  { cause: "egr-low-flow", size: 0.2, change: COMMANDED, shift: { pressure: "0-00" }, trims: [SAME, "0+00"] },
  { cause: "breathing-reduced", size: -0.2, shape: 2, shift: { pressure: "0+++" }, trims: [SAME, "0---"] },
  { cause: "valve-timing-shifted", size: 0.21, shape: 65, shift: { pressure: "+++-" }, trims: [SAME, "---+"] },
  { cause: "valve-timing-shifted", size: -0.21, shape: 65, shift: { pressure: "---+" }, trims: [SAME, "+++-"] },
  { cause: "misfire", size: 0.06, shape: 0, shift: all("++++"), trims: ["++++", "++++"] },
  { cause: "misfire", size: 0.06, shape: 1, shift: all("+000"), trims: ["+000", "+000"] },
  { cause: "misfire", size: 0.06, shape: 2, shift: all("00++"), trims: ["00++", "00++"] },
  { cause: "fuel-delivery-scaled", size: 0.88, shift: all("++++"), trims: ["++++", "++++"] },
  { cause: "fuel-supply-limited", size: 0.3, shape: 0.4, shift: all("000+"), trims: ["000+", "000+"] },
  { cause: "fuel-pressure-reference", size: 70e3, shift: all("--00"), trims: ["--00", "--00"] },
  { cause: "fuel-unmetered", size: 0.02e-3, shape: 0, shift: all("---0"), trims: ["---0", "---0"] },
  {
    cause: "fuel-unmetered",
    size: 0.02e-3,
    shape: 1,
    shift: { ...all("---0"), meter: "-000", throttle: "-000" },
    trims: ["---0", "---0"],
  },
  { cause: "fuel-composition", size: 0.93, shift: all("++++"), trims: ["++++", "++++"] },
  { cause: "injector-offset", size: 0.2e-3, shift: all("++++"), trims: ["++++", "++++"] },
  { cause: "exhaust-air-added", size: 0.4e-3, shape: 1, shift: all("+000"), trims: ["+000", "+000"] },
  // A wrong control probe moves the trims; an independent probe sees the true mixture.
  { cause: "lambda-biased", size: 0.05, shift: { fuel: "++++" }, trims: ["++++", "++++"] },
];

function signs(values: readonly number[]): string {
  return values.map((v) => (Math.abs(v) < NOTHING ? "0" : v > 0 ? "+" : "-")).join("");
}

function under(metering: "meter" | "pressure", { change = {} }: Row): TallyModel {
  return seenByAll(modelOf({ ...change, engine: { ...change.engine, metering } }));
}

describe("the sign table of the design", () => {
  it.each(
    TABLE.map(
      (row) => [`${row.cause} of ${row.size}${row.shape === undefined ? "" : `, form ${row.shape}`}`, row] as const,
    ),
  )("%s shifts the witnesses and the trims as told", (_, row) => {
    for (const metering of ["meter", "pressure"] as const) {
      const model = under(metering, row);
      const of = (witness: TallyWitness) => shifts(model, witness, row.cause, row.size, row.shape);
      for (const witness of WITNESSES)
        expect(signs(of(witness)), `${witness}, dosed by ${metering}`).toBe(row.shift[witness] ?? SAME);
      const base = of(metering);
      const trims = of("fuel").map((v, i) => v - base[i]!);
      expect(signs(trims), `trims, dosed by ${metering}`).toBe(row.trims[metering === "meter" ? 0 : 1]);
    }
  });

  it("has a row for every cause of the catalogue, and no cause whose shift is nought everywhere", () => {
    expect(CATALOGUE.map((c) => c.id).filter((id) => !TABLE.some((row) => row.cause === id))).toEqual([]);
    for (const row of TABLE) {
      const { effect, standing } = predictionOf(under("meter", row), row.cause, row.size, row.shape);
      expect(
        [...effect, ...standing].some((v) => v !== 0),
        row.cause,
      ).toBe(true);
    }
  });

  it("holds the causes of the design and no other", () => {
    expect(CATALOGUE.length).toBe(28);
    expect(new Set(CATALOGUE.map((c) => c.id)).size).toBe(28);
  });
});

describe("what the standing engine, a cold start and a full-load pull show", () => {
  const model = seenByAll(modelOf());
  const standing = (cause: string, size: number, shape?: number) => {
    const { standing: values } = predictionOf(model, cause, size, shape);
    return Object.fromEntries(model.standing.map(({ kind }, s) => [kind, values[s]!]).filter(([, v]) => v !== 0));
  };

  it("is moved by the faults of the sensor concerned, in the unit of the observation, and by no other", () => {
    expect(standing("map-biased", 3000)).toEqual({ "pressure-against-barometer": 3, "full-load-pressure-drop": -3 });
    expect(standing("baro-biased", 3000, 0)).toEqual({
      "pressure-against-barometer": -3,
      "full-load-pressure-drop": 3,
    });
    expect(standing("intake-temperature-biased", 20, 0)).toEqual({ "intake-temperature-at-cold-soak": 20 });
    expect(standing("intake-temperature-biased", 20, 1)).toEqual({});
    expect(standing("meter-offset", 0.5e-3, 0)).toEqual({ "meter-at-zero-flow": 0.5 });
    expect(standing("intake-restricted", 8000)).toEqual({ "full-load-pressure-drop": 8 });
    expect(standing("meter-scaled", 0.8)).toEqual({});
    expect(standing("manifold-leak", 3e-6)).toEqual({});
  });

  it("is blind to a leaky hose and sees a sensor of another range", () => {
    const hose = standing("map-scaled", -0.1, 0);
    expect(hose["pressure-against-barometer"]).toBeUndefined();
    expect(Math.abs(hose["full-load-pressure-drop"]!)).toBeLessThan(0.5);
    expect(standing("map-scaled", 0.08, 1)["pressure-against-barometer"]).toBeCloseTo(0.08 * 99, 9);
  });
});
