/**
 * Speed of raw signal to mass flow: a million samples through every kind of curve, on one core, arrays of the caller.
 * Goal: under 60 ms of processor time each, whatever else the machine does; nothing allocated for a sample. Fixed inputs of two shapes: samples that follow each other, and samples
 * in no order. Every run asserts its answer against the reading of single samples.
 *
 * Run by `npm run speed`. Implicit laws (King, film) are tabulated once; the error of the table is printed.
 */
import type { MeterKind, SignalUnit } from "../src/engine/index.ts";
import {
  type CurveForm,
  type FlowCurve,
  meterFlow,
  meterFlows,
  type PreparedMeter,
  prepareMeter,
  tabulateCurve,
} from "../src/meters/index.ts";

const SAMPLES = 1_000_000;
const GOAL_MS = 60;
const ROUNDS = 7;

type Case = {
  readonly name: string;
  readonly kind: MeterKind;
  readonly unit: SignalUnit;
  readonly form: CurveForm;
  readonly domain: readonly [number, number];
};

const CASES: readonly Case[] = [
  {
    name: "vane, 16 points, ratio",
    kind: "vane",
    unit: "ratio",
    form: {
      kind: "points",
      points: Array.from({ length: 16 }, (_, i) => [0.1 + 0.05 * i, 0.002 * Math.exp(0.3 * i)] as const),
    },
    domain: [0.1, 0.85],
  },
  {
    name: "vortex, straight line, Hz",
    kind: "vortex",
    unit: "Hz",
    form: { kind: "polynomial", coefficients: [0.06, 0.058], centre: 1000, halfWidth: 980 },
    domain: [20, 1980],
  },
  {
    name: "hot wire, King's law, V",
    kind: "hot-wire",
    unit: "V",
    form: { kind: "king", still: 0.9, slope: 42, exponent: 0.52 },
    domain: [1, 4.8],
  },
  {
    name: "hot film, film law, V",
    kind: "hot-film",
    unit: "V",
    form: { kind: "film", scaleFlow: 0.09, leak: 0.5, zero: 1, span: 4.2 },
    domain: [0.2, 4.9],
  },
  {
    name: "hot film, points, period",
    kind: "hot-film",
    unit: "ms",
    form: {
      kind: "points",
      points: [
        [2e-4, 0.25],
        [3e-4, 0.1],
        [5e-4, 0.03],
        [8e-4, 0.004],
      ],
    },
    domain: [2e-4, 8e-4],
  },
];

function preparedMeter(one: Case): { readonly meter: PreparedMeter; readonly tableError: number } {
  const curve: FlowCurve = {
    signalUnit: one.unit,
    flow: "mass",
    at: { pressure: 101_325, temperature: 293.15 },
    form: one.form,
    domain: one.domain,
    band: null,
  };
  const table = tabulateCurve(curve);
  if (!table.ok) throw new Error(table.message);
  const meter = prepareMeter({
    id: "meter",
    kind: one.kind,
    bank: null,
    bore: null,
    reference: null,
    curve: table.value.curve,
  });
  if (!meter.ok) throw new Error(meter.message);
  return { meter: meter.value, tableError: table.value.tableError };
}

const SHAPES: { readonly [name: string]: (i: number) => number } = {
  "in order": (i) => 0.5 + 0.49 * Math.sin(i / 500),
  shuffled: (i) => (i * 0.618033988749895) % 1,
};

let failed = false;
for (const one of CASES) {
  const { meter, tableError } = preparedMeter(one);
  for (const [shape, share] of Object.entries(SHAPES)) {
    const [low, high] = one.domain;
    const signal = Float64Array.from({ length: SAMPLES }, (_, i) => low + (high - low) * share(i));
    const pressure = new Float64Array(SAMPLES).fill(97_000);
    const temperature = Float64Array.from({ length: SAMPLES }, (_, i) => 295 + 5 * Math.sin(i / 1e5));
    const out = { massFlow: new Float64Array(SAMPLES), quality: new Uint8Array(SAMPLES) };
    const times: number[] = [];
    for (let round = 0; round < ROUNDS; round++) {
      out.quality.fill(0);
      const start = process.cpuUsage();
      meterFlows(meter, { signal, air: { pressure, temperature, humidityRatio: 0.008 } }, out);
      const used = process.cpuUsage(start);
      times.push((used.user + used.system) / 1000);
    }
    for (let i = 0; i < SAMPLES; i += 9973) {
      const single = meterFlow(meter, signal[i]!, {
        pressure: 97_000,
        temperature: temperature[i]!,
        humidityRatio: 0.008,
      });
      if (Math.abs(single.massFlow - out.massFlow[i]!) > 1e-12) throw new Error(`${one.name}: sample ${i} differs`);
    }
    const median = times.sort((a, b) => a - b)[Math.floor(ROUNDS / 2)]!;
    if (median > GOAL_MS) failed = true;
    const table = tableError === 0 ? "" : `, table error ${tableError.toExponential(1)} of the largest flow`;
    console.log(`${one.name}, ${shape}: ${median.toFixed(1)} ms of processor time for a million samples${table}`);
  }
}
console.log(failed ? `MISSED: goal ${GOAL_MS} ms` : `goal ${GOAL_MS} ms: met`);
process.exitCode = failed ? 1 : 0;
