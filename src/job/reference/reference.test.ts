import { expect, it } from "vitest";
import { findOperatingPoints } from "../../channels/index.ts";
import { type Protocol, rpm, simulateFamily } from "../../model-engine/index.ts";
import {
  buildTallyModel,
  defaultAssumptions,
  healthyReference,
  logEvidence,
  posterior,
  prepare,
  type Spreads,
  type TallyModel,
  withReferences,
} from "../../tally/index.ts";
import { parseEngineFile } from "../engine-file/parse-engine-file.ts";
import type { AirtallyResult } from "../result.ts";
import { understand, wholeRecording } from "../understand.ts";
import { readReferences } from "./read-references.ts";
import { referenceText } from "./write-reference.ts";

const SHORT: Protocol = [
  { do: "idle", seconds: 20 },
  { do: "hold", seconds: 15, speed: rpm(2500) },
  { do: "drive", seconds: 12, speed: rpm(1700), load: 0.5 },
  { do: "pull", seconds: 6, from: rpm(1700), to: rpm(5000) },
];

function modelOf(seed: number): TallyModel {
  const { recording, engine } = simulateFamily({ family: "petrol-with-meter", seed, protocol: SHORT });
  const parsed = parseEngineFile(JSON.stringify(engine));
  if (!parsed.ok) throw new Error(parsed.message);
  const bytes = new TextEncoder().encode(recording.text);
  const one = understand(wholeRecording(recording.name, bytes, ""), parsed.value, null);
  if (!one.ok) throw new Error(one.message);
  return buildTallyModel(
    findOperatingPoints(one.value.set, one.value.states, 0, 1),
    parsed.value,
    defaultAssumptions(),
  );
}

const HERE = modelOf(2);
const THERE = modelOf(1);
const REFERENCE = healthyReference(prepare(THERE, null));

/** ln evidence of a meter that reads 8 % low, against healthy */
function factor(model: TallyModel): number {
  const w = model.witnesses.length;
  const witnesses = model.y.map((_, row) => (model.witnesses[row % w] === "meter" ? Math.log(0.92) : 0));
  const prepared = prepare(model, null);
  return logEvidence(prepared, { witnesses, standing: [] }) - logEvidence(prepared, null);
}

function told(spreads: Spreads, references = [REFERENCE]): TallyModel {
  return withReferences(HERE, references, spreads);
}

const scaled = (by: number) =>
  new Map(REFERENCE.values.flatMap((v) => v.quantity.unknowns.map((name) => [name, by * 1e-3] as const)));

it("says nothing where the spread is as wide as among all engines, all where there is none", () => {
  expect(factor(told(scaled(1e9)))).toBeCloseTo(factor(HERE), 9);
  expect(factor(told(new Map()))).toBeCloseTo(factor(HERE), 9);
  expect(factor(told(scaled(1e-6)))).toBeCloseTo(factor(told("the-same-engine")), 3);
  const wide = (model: TallyModel) => posterior(prepare(model, null), null).variance[0]!;
  expect(wide(told("the-same-engine"))).toBeLessThan(wide(HERE));
});

it("counts what a recording said once: heard of the same engine, it weighs as that recording tallied along", () => {
  // Two recordings of one engine with the same knots: the reference of one, heard by the other, is their joint posterior.
  const twice = withReferences(HERE, [healthyReference(prepare(HERE, null))], "the-same-engine");
  const once = healthyReference(prepare(HERE, null));
  const both = healthyReference(prepare(twice, null));
  const n = once.values.length;
  for (let i = 0; i < n; i++) {
    const [before, after, again] = [once.before, once.covariance, both.covariance].map((m) => m[i * n + i]!);
    // Precision gained along one value is at most doubled, and something is gained.
    expect(again!).toBeLessThanOrEqual(after! * (1 + 1e-9));
    expect(1 / again!).toBeLessThanOrEqual((2 / after!) * 1.001);
    expect(after!).toBeLessThanOrEqual(before! * (1 + 1e-9));
  }
});

it("takes two references as what they are: engines of one kind that share the departure of the one at hand", () => {
  const sd = (references: (typeof REFERENCE)[]) =>
    Math.sqrt(healthyReference(prepare(told(scaled(10), references), null)).covariance[0]!);
  const [none, one, two, many] = [[], [REFERENCE], [REFERENCE, REFERENCE], Array(6).fill(REFERENCE)].map(sd);
  expect(one!).toBeLessThan(none!);
  expect(two!).toBeLessThan(one!);
  // However many: an engine's own departure from its kind stays.
  expect(many!).toBeGreaterThan(0.5 * one!);
});

const HEALTHY = {
  answer: "healthy",
  toolVersion: "0.0.0",
  healthyProbability: 0.9,
  findings: [],
  recordings: [{ name: "there.csv", sha256: "1" }],
} as unknown as AirtallyResult;

it("comes back from its file as it went in, without what is each engine's own", () => {
  const text = referenceText(HEALTHY, THERE, (cause) => cause);
  if (!text.ok) throw new Error(text.message);
  const read = readReferences([{ name: "kind.json", text: text.value }], HERE.engine);
  if (!read.ok) throw new Error(read.message);
  const { references, spreads } = read.value;
  expect(references[0]!.values.map((v) => v.quantity.id)).not.toContain("pressure-sensor-offset");
  expect(factor(told(spreads, [...references]))).toBeCloseTo(factor(told(spreads)), 2);
  const file = JSON.parse(text.value);
  const refused = (change: object) =>
    readReferences([{ name: "x", text: JSON.stringify({ ...file, ...change }) }], HERE.engine);
  expect(refused({ engine: { ...file.engine, cylinders: 6 } })).toMatchObject({ ok: false, reason: "another-kind" });
  expect(refused({ covariance: file.covariance.slice(1) })).toMatchObject({ ok: false, reason: "reference-damaged" });
  expect(refused({ covariance: file.before, before: file.covariance })).toMatchObject({ reason: "reference-damaged" });
  expect(refused({ spreds: [] })).toMatchObject({ reason: "not-valid", remedy: expect.stringContaining('"spreads"') });
});
