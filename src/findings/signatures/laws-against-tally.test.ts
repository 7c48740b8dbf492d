// A fault of a reading shifts each witness by what the tally makes of the wrong reading and of the true one, at the same air. Here the
// tally is built of both, and the law must say the difference; that the healthy mean of breathing moves with the reading is in it.
import { describe, expect, it } from "vitest";
import { AMBIENT, type Change, modelOf, predictionOf, STATES } from "../../../test/signatures/signature-models.ts";

const TEMPERATURE = 298;
const THROTTLE = [0.14, 0.25, 0.8, 0.85];
const PRESSURES = STATES.map((s) => s.pressure);

type Readings = NonNullable<Change["readings"]>;
type Case = {
  readonly cause: string;
  readonly size: number;
  readonly shape?: number;
  readonly engine?: Change["engine"];
  /** true readings for those of the model, which are wrong */
  readonly truth: Pick<Change, "pressures" | "readings">;
  /** ln */
  readonly within: number;
};

const VORTEX = {
  meters: [
    {
      id: "meter",
      kind: "vortex",
      curve: {
        signalUnit: "Hz",
        flowUnit: "L/s",
        points: [
          [20, 1],
          [2000, 100],
        ],
      },
    },
  ],
};
const RAW: Readings = { meterFlow: [], meterFrequency: [45, 290, 370, 1180], throttlePosition: THROTTLE };

const CASES: readonly Case[] = [
  { cause: "map-biased", size: 3000, truth: { pressures: PRESSURES.map((p) => p - 3) }, within: 0.003 },
  { cause: "map-scaled", size: 0.06, shape: 1, truth: { pressures: PRESSURES.map((p) => p / 1.06) }, within: 0.003 },
  {
    cause: "map-scaled",
    size: -0.08,
    shape: 0,
    truth: { pressures: PRESSURES.map((p) => AMBIENT + (p - AMBIENT) / 0.92) },
    within: 0.003,
  },
  {
    cause: "intake-temperature-biased",
    size: 15,
    shape: 0,
    truth: { readings: { intakeTemperature: STATES.map(() => TEMPERATURE - 15) } },
    within: 0.003,
  },
  {
    cause: "baro-biased",
    size: 4000,
    shape: 0,
    truth: { readings: { barometer: STATES.map(() => 1000 * (AMBIENT - 4)) } },
    within: 0.002,
  },
  {
    cause: "baro-biased",
    size: 4000,
    shape: 0,
    engine: VORTEX,
    truth: { readings: { ...RAW, barometer: STATES.map(() => 1000 * (AMBIENT - 4)) } },
    within: 0.002,
  },
  {
    cause: "intake-temperature-biased",
    size: 15,
    shape: 0,
    engine: VORTEX,
    truth: { readings: { ...RAW, intakeTemperature: STATES.map(() => TEMPERATURE - 15) } },
    within: 0.003,
  },
];

describe("laws of faulty readings against the tally built of them", () => {
  it.each(CASES.map((c) => [`${c.cause} of ${c.size}${c.engine === undefined ? "" : ", vortex meter"}`, c] as const))(
    "%s",
    (_, { cause, size, shape, engine = {}, truth, within }) => {
      const readings: Readings = engine === VORTEX ? RAW : { throttlePosition: THROTTLE };
      const wrong = modelOf({ engine, readings });
      const right = modelOf({ engine, ...truth, readings: { ...readings, ...truth.readings } });
      const { effect } = predictionOf(wrong, cause, size, shape);
      let compared = 0;
      for (const witness of ["meter", "pressure", "throttle"] as const) {
        const [a, b] = [wrong, right].map((m) => m.witnesses.indexOf(witness)) as [number, number];
        for (let i = 0; i < STATES.length; i++) {
          const [here, there] = [i * wrong.witnesses.length + a, i * right.witnesses.length + b];
          if (wrong.present[here] !== 1 || right.present[there] !== 1) continue;
          const made = wrong.y[here]! - right.y[there]!;
          expect(Math.abs(effect[here]! - made), `${witness} at ${i}: law ${effect[here]}, made ${made}`).toBeLessThan(
            within,
          );
          compared += 1;
        }
      }
      expect(compared).toBeGreaterThan(8);
    },
  );
});
